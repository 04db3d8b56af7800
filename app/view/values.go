package view

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"stillair/app/store"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors"
)

// SetupMassName is the label of the weight with one setup.
func (c Context) SetupMassName(setup string) string {
	return fmt.Sprintf(c.Book.Parts.SetupMass, setup)
}

// computedWith says with which values a ride was calculated, and whether they
// are the recorded ones.
func (c Context) computedWith(res *runs.Result, changed *store.Values) []string {
	t, r := c.Book.Parts, res.Ride
	if !(r.Mass > 0) {
		return nil
	}
	parts := []string{c.reading(shown.Mass, r.Mass, shown.Normal95*r.MassSD).Spoken()}
	add := func(known float64, words string) {
		if !math.IsNaN(known) {
			parts = append(parts, words)
		}
	}
	for _, s := range r.Setups {
		words := s.Name + " " + c.Mass(s.Mass)
		if s.Mass > 0 && s.Mass != r.Mass && !slices.Contains(parts, words) {
			parts = append(parts, words)
		}
	}
	add(r.RotatingMass, fmt.Sprintf(t.Wheels, c.Mass(r.RotatingMass)))
	q := c.TemperatureQuantity()
	add(r.Air.Temperature, c.Write(&r.Air.Temperature, q)+" "+q.Unit)
	add(r.Air.TemperatureEnd, fmt.Sprintf(t.EndWith, c.Write(&r.Air.TemperatureEnd, q)+" "+q.Unit))
	add(r.Air.Pressure, c.airPressure(r.Air.Pressure))
	add(r.Air.Humidity, fmt.Sprintf(t.Humidity, c.Number(100*r.Air.Humidity, 0)))
	add(r.WindSD, fmt.Sprintf(t.Wind, c.windText(r.WindSD)))
	if st := r.Station; !math.IsNaN(st.FromDeg) {
		add(st.Speed, fmt.Sprintf(t.StationWith, c.windText(st.Speed), c.Number(st.FromDeg, 0)))
	}
	if len(r.Gears) > 0 {
		parts = append(parts, c.gearsWith(r.Gears))
	}
	add(r.LimitRPM, fmt.Sprintf(t.LimitWith, c.Number(r.LimitRPM, 0)))
	out := []string{fmt.Sprintf(t.With, join(", ", parts...))}
	if changed != nil {
		return append(out, t.Changed)
	}
	return append(out, t.AsRecorded)
}

// gearsWith lists gears by the engine speed at the reference speed.
func (c Context) gearsWith(gears []sensors.Gear) string {
	var all []string
	q := c.GearQuantity()
	for _, g := range gears {
		all = append(all, c.gear(g.Name)+" "+c.Write(&g.RPMPerMPS, q))
	}
	return strings.Join(all, ", ") + " " + c.GearLabel()
}

// AirOld says that the air entered then has to be checked.
func (c Context) AirOld(then time.Time) string {
	if then.IsZero() {
		return c.Book.Parts.AirOldUnknown
	}
	return fmt.Sprintf(c.Book.Parts.AirOld, c.Date(then))
}

// airLine states the entered air, or a hint if there is none.
func (c Context) airLine(a store.Air) string {
	var parts []string
	if q := c.TemperatureQuantity(); a.Temperature != nil {
		parts = append(parts, c.Write(a.Temperature, q)+" "+q.Unit)
	}
	if a.Pressure != nil {
		parts = append(parts, c.airPressure(100**a.Pressure))
	}
	if a.Humidity != nil {
		parts = append(parts, fmt.Sprintf(c.Book.Parts.Humidity, c.Number(*a.Humidity, 0)))
	}
	if len(parts) == 0 {
		return c.Book.Parts.AirNone
	}
	return join(", ", parts...)
}
