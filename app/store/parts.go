package store

import (
	"fmt"
	"math"
	"slices"

	"stillair/runs/gearing"
	"stillair/sensors"
)

// Wheels is what a rider can read off tyres and weigh of wheels. Empty sizes
// and nil masses were not entered.
type Wheels struct {
	FrontTyre string   `json:"front_tyre,omitempty"` // size as on the sidewall, such as 120/70 R17
	RearTyre  string   `json:"rear_tyre,omitempty"`
	FrontMass *float64 `json:"front_kg,omitempty"` // wheel with tyre and discs
	RearMass  *float64 `json:"rear_kg,omitempty"`  // wheel with tyre, disc and sprocket
}

// Teeth is one pair of toothed wheels: the driving and the driven one.
type Teeth struct {
	Driving int `json:"driving"`
	Driven  int `json:"driven"`
}

// Box is the way from crank to rear wheel by its teeth.
type Box struct {
	Primary Teeth   `json:"primary"`
	Gears   []Teeth `json:"gears"` // first gear first
	Final   Teeth   `json:"final"`
}

// Fuel is what a rider measured of consumption.
type Fuel struct {
	LitresPer100Km float64 `json:"l_per_100km"`
	SpeedMPS       float64 `json:"at_mps"` // the steady speed it was measured at
	Tank           float64 `json:"tank_l,omitempty"`
}

// rotatingMass is what was entered or, where it was not, what the wheels give; NaN
// where they are not known either.
func (b Bike) rotatingMass() float64 {
	if b.RotatingMass != nil || b.Wheels == nil || b.Wheels.FrontMass == nil || b.Wheels.RearMass == nil {
		return value(b.RotatingMass)
	}
	front, errFront := gearing.ParseTyre(b.Wheels.FrontTyre)
	rear, errRear := gearing.ParseTyre(b.Wheels.RearTyre)
	if errFront != nil || errRear != nil {
		return math.NaN()
	}
	return gearing.RotatingMass(gearing.Wheel{Mass: *b.Wheels.FrontMass, Tyre: front}, gearing.Wheel{Mass: *b.Wheels.RearMass, Tyre: rear}).X
}

// gears are those that were entered or, where none was, those that teeth and rear
// tyre give.
func (b Bike) gears() []Gear {
	if len(b.Gears) > 0 || b.Box == nil || b.Wheels == nil {
		return b.Gears
	}
	gears, err := b.Box.gears(b.Wheels.RearTyre)
	if err != nil {
		return nil
	}
	return gears
}

func (x Box) gears(rearTyre string) ([]Gear, error) {
	tyre, err := gearing.ParseTyre(rearTyre)
	if err != nil {
		return nil, err
	}
	primary, err := gearing.Teeth(x.Primary.Driving, x.Primary.Driven)
	if err != nil {
		return nil, fmt.Errorf("primary drive: %w", err)
	}
	final, err := gearing.Teeth(x.Final.Driving, x.Final.Driven)
	if err != nil {
		return nil, fmt.Errorf("final drive: %w", err)
	}
	var out []Gear
	for i, g := range x.Gears {
		ratio, err := gearing.Teeth(g.Driving, g.Driven)
		if err != nil {
			return nil, fmt.Errorf("gear %d: %w", i+1, err)
		}
		k, err := gearing.RPMPerMPS(gearing.Drive{Primary: primary, Gear: ratio, Final: final}, tyre)
		if err != nil {
			return nil, fmt.Errorf("gear %d: %w", i+1, err)
		}
		out = append(out, Gear{Name: fmt.Sprint(i + 1), RPMPerMPS: k.X})
	}
	return out, nil
}

// checkParts returns the first field of wheels, box, fuel and limits that
// cannot be true.
func (b Bike) checkParts() (field string, err error) {
	if w := b.Wheels; w != nil {
		for _, size := range []string{w.FrontTyre, w.RearTyre} {
			if _, err := gearing.ParseTyre(size); size != "" && err != nil {
				return "wheels", fmt.Errorf("%w: %w", ErrInvalid, err)
			}
		}
		for _, m := range []*float64{w.FrontMass, w.RearMass} {
			if err := within(m, 2, 60); err != nil {
				return "wheels", err
			}
		}
	}
	if b.Box != nil {
		tyre := "180/55 R17" // any will do to check teeth by
		if b.Wheels != nil && b.Wheels.RearTyre != "" {
			tyre = b.Wheels.RearTyre
		}
		if _, err := b.Box.gears(tyre); err != nil {
			return "box", fmt.Errorf("%w: %w", ErrInvalid, err)
		}
	}
	if err := within(b.LimitRPM, 1000, 25000); err != nil {
		return "limit_rpm", err
	}
	if b.Drive != "" && !slices.Contains(sensors.Drives(), sensors.Drive(b.Drive)) {
		return "drive", fmt.Errorf("%w: %q", ErrInvalid, b.Drive)
	}
	if b.Cylinders < 0 || b.Cylinders > 12 {
		return "cylinders", fmt.Errorf("%w: %d cylinders", ErrInvalid, b.Cylinders)
	}
	if f := b.Fuel; f != nil {
		if !(f.LitresPer100Km > 0.5 && f.LitresPer100Km < 30) || !(f.SpeedMPS > 3 && f.SpeedMPS < 100) || f.Tank < 0 || f.Tank > 100 {
			return "fuel", fmt.Errorf("%w: %g l/100 km at %g m/s from a tank of %g l", ErrInvalid, f.LitresPer100Km, f.SpeedMPS, f.Tank)
		}
	}
	if err := within(b.Battery, LeastBattery, MostBattery); err != nil {
		return "battery_kwh", err
	}
	return "", nil
}

// LeastBattery and MostBattery bound a battery, kWh: from the smallest moped's to
// twice that of any motorcycle (common practice).
const (
	LeastBattery = 0.5
	MostBattery  = 60
)
