package sim

import (
	"reflect"

	"stillair/sensors/finding"
)

// Check returns an error about an invalid field of the scenario, with its value
// and the permitted ones.
func (sc *Scenario) Check() error {
	if at := notFinite("Scenario", reflect.ValueOf(*sc)); at != "" {
		return finding.Fail("sim.not_finite", finding.Text("field", at))
	}
	for _, c := range []struct {
		name  string
		value float64
		ok    bool
		must  string
	}{
		{"Bike.Mass", sc.Bike.Mass, sc.Bike.Mass > 0, "> 0"},
		{"Bike.RotatingMass", sc.Bike.RotatingMass, sc.Bike.RotatingMass >= 0, "≥ 0"},
		{"Bike.CdA", sc.Bike.CdA, sc.Bike.CdA >= 0, "≥ 0"},
		{"Bike.Crr", sc.Bike.Crr, sc.Bike.Crr >= 0, "≥ 0"},
		{"Air.Density", sc.Air.Density, sc.Air.Density >= 0, "≥ 0"},
		{"Road.Gravity", sc.Road.Gravity, sc.Road.Gravity > 0, "> 0"},
		{"Road.RoughSD", sc.Road.RoughSD, sc.Road.RoughSD >= 0, "≥ 0"},
		{"Road.RoughLength", sc.Road.RoughLength, sc.Road.RoughLength > 0 || sc.Road.RoughSD == 0, "> 0"},
		{"Wind.GustTau", sc.Wind.GustTau, sc.Wind.GustTau > 0, "> 0"},
		{"Phone.Rate", sc.Phone.Rate, sc.Phone.Rate >= 0 && sc.Phone.Rate <= 1000, "0 … 1000"},
		{"Phone.Shake.RefRPM", sc.Phone.Shake.RefRPM, sc.Phone.Shake.RefRPM > 0, "> 0"},
		{"Phone.Shake.RefSpeed", sc.Phone.Shake.RefSpeed, sc.Phone.Shake.RefSpeed > 0, "> 0"},
		{"Receiver.Rate", sc.Receiver.Rate, sc.Receiver.Rate >= 0 && sc.Receiver.Rate <= 100, "0 … 100"},
		{"Microphone.Rate", sc.Microphone.Rate, sc.Microphone.Rate >= 0 && sc.Microphone.Rate <= 10000, "0 … 10000"},
		{"Microphone.Engine.RefRPM", sc.Microphone.Engine.RefRPM, sc.Microphone.Engine.RefRPM > 0 || sc.Microphone.Rate == 0, "> 0"},
		{"Microphone.Wind.RefSpeed", sc.Microphone.Wind.RefSpeed, sc.Microphone.Wind.RefSpeed > 0 || sc.Microphone.Rate == 0, "> 0"},
		{"Microphone.Tread.RefSpeed", sc.Microphone.Tread.RefSpeed, sc.Microphone.Tread.RefSpeed > 0 || sc.Microphone.Rate == 0, "> 0"},
		{"Rider.Pace", sc.Rider.Pace, sc.Rider.Pace > 0, "> 0"},
		{"Rider.BrakeDecel", sc.Rider.BrakeDecel, sc.Rider.BrakeDecel > 0, "> 0"},
		{"Rider.OpenTime", sc.Rider.OpenTime, sc.Rider.OpenTime > 0, "> 0"},
		{"Rider.ClutchTime", sc.Rider.ClutchTime, sc.Rider.ClutchTime > 0, "> 0"},
		{"Rider.TurnRadius", sc.Rider.TurnRadius, sc.Rider.TurnRadius >= 1, "≥ 1"},
		{"TruthRate", sc.TruthRate, sc.TruthRate > 0, "> 0"},
	} {
		if !c.ok {
			return finding.Fail("sim.outside", finding.Text("field", c.name), finding.Num("value", c.value), finding.Text("must", c.must))
		}
	}
	if err := sc.checkGears(); err != nil {
		return err
	}
	for i, a := range sc.Plan {
		if b, ok := a.(Bend); ok && b.Radius < 1 {
			return finding.Fail("sim.bend_radius", finding.Count("act", i+1), finding.Distance("radius", b.Radius))
		}
		if a == nil {
			return finding.Fail("sim.no_act", finding.Count("act", i+1))
		}
	}
	return nil
}

func (sc *Scenario) checkGears() error {
	if len(sc.Bike.Gears) == 0 {
		return finding.Fail("sim.no_gears")
	}
	if len(sc.Bike.Engine.Torque) == 0 {
		return finding.Fail("sim.no_torque")
	}
	for i := 1; i < len(sc.Bike.Engine.Torque); i++ {
		if sc.Bike.Engine.Torque[i].RPM <= sc.Bike.Engine.Torque[i-1].RPM {
			return finding.Fail("sim.torque_order", finding.Count("point", i+1))
		}
	}
	return nil
}
