package store

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"stillair/sensors"
)

// Bike is a motorcycle as the rider described it. Pointers are nil where a
// number was not entered.
type Bike struct {
	Version      int      `json:"version"`
	ID           string   `json:"id"`
	Name         string   `json:"name"`
	Mass         *float64 `json:"mass_kg,omitempty"`          // bike, rider, fuel and luggage as ridden
	MassSD       *float64 `json:"mass_sd_kg,omitempty"`       // standard deviation of Mass
	Weighed      string   `json:"weighed,omitempty"`          // how the mass is known, in the rider's words
	RotatingMass *float64 `json:"rotating_mass_kg,omitempty"` // equivalent mass of the rotating wheels
	Wheels       *Wheels  `json:"wheels,omitempty"`           // to estimate RotatingMass if it was not entered
	Gears        []Gear   `json:"gears,omitempty"`
	Box          *Box     `json:"box,omitempty"`       // to calculate Gears if none was entered
	LimitRPM     *float64 `json:"limit_rpm,omitempty"` // highest engine speed, 1/min
	Cylinders    int      `json:"cylinders,omitempty"` // of the engine; 0: not entered
	Drive        string   `json:"drive,omitempty"`     // as sensors.Drive; empty: not entered
	Fuel         *Fuel    `json:"fuel,omitempty"`
	Battery      *float64 `json:"battery_kwh,omitempty"` // usable energy, of an electric bike
	Setups       []Setup  `json:"setups"`
	Note         string   `json:"note,omitempty"`
}

// Gear is one gear of the bike.
type Gear struct {
	Name      string  `json:"name"`
	RPMPerMPS float64 `json:"rpm_per_mps"` // engine speed in 1/min per m/s
}

// Setup is one way the bike is ridden.
type Setup struct {
	Name      string   `json:"name"`
	Changed   string   `json:"changed,omitempty"`           // the change against the others, in the rider's words
	Mass      *float64 `json:"mass_kg,omitempty"`           // as ridden with this setup; nil: the bike's
	TyreFront *float64 `json:"tyre_front_kpa,omitempty"`    // gauge pressure
	TyreRear  *float64 `json:"tyre_rear_kpa,omitempty"`     // gauge pressure
	Retired   bool     `json:"no_longer_offered,omitempty"` // kept for old sessions only
}

// Ride gives what a recording says about the bike, ridden with the named setup
// from the start.
func (b Bike) Ride(setup string, air sensors.Air) sensors.Ride {
	r := sensors.UnknownRide()
	r.Bike, r.Air = b.Name, air
	r.Mass, r.MassSD, r.RotatingMass = value(b.Mass), value(b.MassSD), b.rotatingMass()
	r.LimitRPM, r.Cylinders, r.Drive = value(b.LimitRPM), b.Cylinders, sensors.Drive(b.Drive)
	for _, g := range b.gears() {
		r.Gears = append(r.Gears, sensors.Gear{Name: g.Name, RPMPerMPS: g.RPMPerMPS})
	}
	if setup != "" {
		r.Setups = []sensors.Setup{b.RideSetup(setup, 0)}
	}
	return r
}

// RideSetup gives the named setup as ridden from a time of the log on.
func (b Bike) RideSetup(name string, from float64) sensors.Setup {
	out := sensors.Setup{From: from, Name: name, Mass: math.NaN()}
	for _, s := range b.Setups {
		if s.Name == name {
			out.Mass, out.Tyres = value(s.Mass), s.tyres()
		}
	}
	return out
}

// tyres lists the pressures that were entered; empty where none was.
func (s Setup) tyres() string {
	var out []string
	if s.TyreFront != nil {
		out = append(out, fmt.Sprintf("front %g kPa", *s.TyreFront))
	}
	if s.TyreRear != nil {
		out = append(out, fmt.Sprintf("rear %g kPa", *s.TyreRear))
	}
	return strings.Join(out, ", ")
}

func value(p *float64) float64 {
	if p == nil {
		return math.NaN()
	}
	return *p
}

// ErrInvalid is wrapped by the errors of Check.
var ErrInvalid = errors.New("this cannot be")

// Limits of what is accepted as a motorcycle, wide on purpose: they catch
// typing errors and wrong units, nothing else.
const (
	minMass, maxMass         = 60, 1500 // kg
	minRPMPerMPS, maxPerMPS  = 20, 2000 // 1/min for each m/s
	maxRotating, maxTyreKilo = 60, 600  // kg, kPa
)

// Check returns the first field with an impossible value, and why.
func (b Bike) Check() (field string, err error) {
	if strings.TrimSpace(b.Name) == "" {
		return "name", fmt.Errorf("%w: no name", ErrInvalid)
	}
	for _, c := range []struct {
		field     string
		p         *float64
		low, high float64
	}{
		{"mass_kg", b.Mass, minMass, maxMass},
		{"mass_sd_kg", b.MassSD, 0, 200},
		{"rotating_mass_kg", b.RotatingMass, 0, maxRotating},
	} {
		if err := within(c.p, c.low, c.high); err != nil {
			return c.field, err
		}
	}
	for _, g := range b.Gears {
		if err := within(&g.RPMPerMPS, minRPMPerMPS, maxPerMPS); err != nil {
			return "gears", fmt.Errorf("gear %s: %w", g.Name, err)
		}
	}
	seen := map[string]bool{}
	for _, s := range b.Setups {
		if seen[s.Name] {
			return "setups", fmt.Errorf("%w: two setups are called %q", ErrInvalid, s.Name)
		}
		seen[s.Name] = true
		if err := s.check(); err != nil {
			return "setups", fmt.Errorf("setup %q: %w", s.Name, err)
		}
	}
	return b.checkParts()
}

func (s Setup) check() error {
	if strings.TrimSpace(s.Name) == "" {
		return fmt.Errorf("%w: no name", ErrInvalid)
	}
	return errors.Join(within(s.Mass, minMass, maxMass),
		within(s.TyreFront, 0, maxTyreKilo), within(s.TyreRear, 0, maxTyreKilo))
}

func within(p *float64, low, high float64) error {
	if p != nil && !(*p >= low && *p <= high) {
		return fmt.Errorf("%w: %g is not between %g and %g", ErrInvalid, *p, low, high)
	}
	return nil
}
