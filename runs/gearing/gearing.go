// Package gearing computes wheel size, engine speed per road speed in a gear,
// and the equivalent mass of the wheels from data marked on the tyres and given
// in the bike's papers.
//
// # Tyres
//
// A tyre marked 180/55 R17 is 180 mm wide, its sidewall is 55 % of that high,
// and its rim is 17 inches across (the size designation of ETRTO and ISO
// 4223-1). Under load it rolls less far per turn than its circumference: the
// effective radius is about 0.97 of the free one, common practice.
//
// # Rotating mass
//
// A wheel of inertia I and rolling radius r resists a change of speed like an
// added mass I/r² (any textbook of mechanics). With most of a wheel's mass in
// tyre and rim, I is about 0.75·m·r², common practice.
package gearing

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// rolling is the effective rolling radius as a part of the free radius, and
// its standard uncertainty: pressure, wear, load and lean.
const rolling, rollingSE = 0.97, 0.01

// Tyre is a tyre's marked size.
type Tyre struct {
	Width  float64 // m
	Aspect float64 // height of the sidewall as a fraction of Width
	Rim    float64 // diameter of the rim, m
}

// What is wrong with a tyre size or a gear as entered.
const (
	codeTyre      finding.Code = "gearing.no_tyre_size"
	codeTyreSize  finding.Code = "gearing.tyre_size"
	codeTeeth     finding.Code = "gearing.teeth"
	codeReduction finding.Code = "gearing.reduction"
)

const marking = `^(\d{2,3})/(\d{2,3})\s*-?\s*[A-Z]{0,2}[RB-]?\s*(\d{2}(?:\.5)?)\b`

// ParseTyre reads a size such as "180/55 ZR17", "120/70R17" or "90/90-21".
func ParseTyre(s string) (Tyre, error) {
	m := regexp.MustCompile(marking).FindStringSubmatch(strings.ToUpper(strings.TrimSpace(s)))
	if m == nil {
		return Tyre{}, finding.Fail(codeTyre, finding.Text("size", s))
	}
	var n [3]float64
	for i := range n {
		n[i], _ = strconv.ParseFloat(m[i+1], 64)
	}
	t := Tyre{Width: n[0] / 1e3, Aspect: n[1] / 100, Rim: n[2] * 0.0254}
	if t.Width < 0.05 || t.Width > 0.4 || t.Aspect < 0.25 || t.Aspect > 1.1 || n[2] < 8 || n[2] > 24 {
		return Tyre{}, finding.Fail(codeTyreSize, finding.Text("size", s))
	}
	return t, nil
}

// Diameter is the free diameter of the tyre, m.
func (t Tyre) Diameter() float64 { return t.Rim + 2*t.Width*t.Aspect }

// Radius is the effective rolling radius, m.
func (t Tyre) Radius() measure.Value {
	return measure.Value{X: t.Diameter() / 2 * rolling, SE: t.Diameter() / 2 * rollingSE}
}

// Drive is the drive train from crank to rear wheel in one gear, as reductions:
// turns in for one turn out.
type Drive struct {
	Primary, Gear, Final float64
}

// Teeth is the reduction of a driving and a driven wheel by their teeth.
func Teeth(driving, driven int) (float64, error) {
	if driving < 1 || driven < 1 {
		return 0, finding.Fail(codeTeeth, finding.Count("driving", driving), finding.Count("driven", driven))
	}
	return float64(driven) / float64(driving), nil
}

// RPMPerMPS is engine speed in 1/min for each m/s of road speed.
func RPMPerMPS(d Drive, rear Tyre) (measure.Value, error) {
	if !(d.Primary > 0 && d.Gear > 0 && d.Final > 0) {
		return measure.Value{}, finding.Fail(codeReduction, finding.Num("primary", d.Primary), finding.Num("gear", d.Gear), finding.Num("final", d.Final))
	}
	r := rear.Radius()
	k := d.Primary * d.Gear * d.Final * 60 / (2 * math.Pi * r.X)
	return measure.Value{X: k, SE: k * r.SE / r.X}, nil
}

// Wheel is one wheel with tyre, discs and sprocket.
type Wheel struct {
	Mass float64 // kg
	Tyre Tyre
}

// shape is I/(m·r²) of a motorcycle's wheel with tyre, and its uncertainty.
const shape, shapeSE = 0.75, 0.08

// RotatingMass is the equivalent mass of the rotating wheels, kg.
func RotatingMass(wheels ...Wheel) measure.Value {
	var v measure.Value
	for _, w := range wheels {
		ratio := 1 / (rolling * rolling) // I counts to the tread, the added mass to the rolling radius
		v.X += shape * w.Mass * ratio
		v.SE += shapeSE * w.Mass * ratio // the error of the shape is common to both wheels
	}
	return v
}

// EngineMass is the equivalent mass of an engine of the given inertia in kg·m²
// in a gear, kg: I·(crank angle per metre of road)².
func EngineMass(inertia, rpmPerMPS float64) float64 {
	perMetre := rpmPerMPS / 60 * 2 * math.Pi
	return inertia * perMetre * perMetre
}
