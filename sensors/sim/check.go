package sim

import (
	"errors"
	"fmt"
	"reflect"
)

// Check says what in the scenario cannot be: a field with its value and what it must be.
func (sc *Scenario) Check() error {
	if at := notFinite("Scenario", reflect.ValueOf(*sc)); at != "" {
		return fmt.Errorf("sim: %s is not a finite number", at)
	}
	for _, c := range []struct {
		name  string
		value float64
		ok    bool
		must  string
	}{
		{"Bike.Mass", sc.Bike.Mass, sc.Bike.Mass > 0, "positive"},
		{"Bike.RotatingMass", sc.Bike.RotatingMass, sc.Bike.RotatingMass >= 0, "zero or more"},
		{"Bike.CdA", sc.Bike.CdA, sc.Bike.CdA >= 0, "zero or more"},
		{"Bike.Crr", sc.Bike.Crr, sc.Bike.Crr >= 0, "zero or more"},
		{"Air.Density", sc.Air.Density, sc.Air.Density >= 0, "zero or more"},
		{"Road.Gravity", sc.Road.Gravity, sc.Road.Gravity > 0, "positive"},
		{"Road.RoughSD", sc.Road.RoughSD, sc.Road.RoughSD >= 0, "zero or more"},
		{"Road.RoughLength", sc.Road.RoughLength, sc.Road.RoughLength > 0 || sc.Road.RoughSD == 0, "positive"},
		{"Wind.GustTau", sc.Wind.GustTau, sc.Wind.GustTau > 0, "positive"},
		{"Phone.Rate", sc.Phone.Rate, sc.Phone.Rate >= 0 && sc.Phone.Rate <= 1000, "0 to 1000"},
		{"Phone.Shake.RefRPM", sc.Phone.Shake.RefRPM, sc.Phone.Shake.RefRPM > 0, "positive"},
		{"Phone.Shake.RefSpeed", sc.Phone.Shake.RefSpeed, sc.Phone.Shake.RefSpeed > 0, "positive"},
		{"Receiver.Rate", sc.Receiver.Rate, sc.Receiver.Rate >= 0 && sc.Receiver.Rate <= 100, "0 to 100"},
		{"Microphone.Rate", sc.Microphone.Rate, sc.Microphone.Rate >= 0 && sc.Microphone.Rate <= 10000, "0 to 10000"},
		{"Microphone.Engine.RefRPM", sc.Microphone.Engine.RefRPM, sc.Microphone.Engine.RefRPM > 0 || sc.Microphone.Rate == 0, "positive"},
		{"Microphone.Wind.RefSpeed", sc.Microphone.Wind.RefSpeed, sc.Microphone.Wind.RefSpeed > 0 || sc.Microphone.Rate == 0, "positive"},
		{"Microphone.Tread.RefSpeed", sc.Microphone.Tread.RefSpeed, sc.Microphone.Tread.RefSpeed > 0 || sc.Microphone.Rate == 0, "positive"},
		{"Rider.Pace", sc.Rider.Pace, sc.Rider.Pace > 0, "positive"},
		{"Rider.BrakeDecel", sc.Rider.BrakeDecel, sc.Rider.BrakeDecel > 0, "positive"},
		{"Rider.OpenTime", sc.Rider.OpenTime, sc.Rider.OpenTime > 0, "positive"},
		{"Rider.ClutchTime", sc.Rider.ClutchTime, sc.Rider.ClutchTime > 0, "positive"},
		{"Rider.TurnRadius", sc.Rider.TurnRadius, sc.Rider.TurnRadius >= 1, "at least 1"},
		{"TruthRate", sc.TruthRate, sc.TruthRate > 0, "positive"},
	} {
		if !c.ok {
			return fmt.Errorf("sim: %s is %g and must be %s", c.name, c.value, c.must)
		}
	}
	if err := sc.checkGears(); err != nil {
		return err
	}
	for i, a := range sc.Plan {
		if b, ok := a.(Bend); ok && b.Radius < 1 {
			return fmt.Errorf("sim: act %d of the plan: a bend's radius is %g m and must be at least 1", i+1, b.Radius)
		}
		if a == nil {
			return fmt.Errorf("sim: act %d of the plan is nil", i+1)
		}
	}
	return nil
}

func (sc *Scenario) checkGears() error {
	if len(sc.Bike.Gears) == 0 {
		return errors.New("sim: the bike has no gears; give at least one in Bike.Gears")
	}
	if len(sc.Bike.Engine.Torque) == 0 {
		return errors.New("sim: the engine has no torque; give its points in Bike.Engine.Torque")
	}
	for i := 1; i < len(sc.Bike.Engine.Torque); i++ {
		if sc.Bike.Engine.Torque[i].RPM <= sc.Bike.Engine.Torque[i-1].RPM {
			return fmt.Errorf("sim: point %d of the torque curve is not above the one before it", i+1)
		}
	}
	return nil
}
