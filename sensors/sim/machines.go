package sim

// Light is an invented small bike: one cylinder, 125 cm³ and 10 kW at the crank.
func Light() Bike {
	return Bike{
		Name: "invented light", Mass: 205, RotatingMass: 8, CdA: 0.52, Crr: 0.019, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{1500, 7}, {4000, 9.5}, {7000, 11}, {8500, 10.8}, {9500, 9.5}, {10200, 0}},
			Efficiency: 0.92, Inertia: 0.004, DragTorque: 3.5, IdleRPM: 1500, ShiftRPM: 9600,
		},
		Cylinders: 1,
		Gears:     []float64{1000, 700, 540, 440, 370, 320},
		LiftAccel: 8,
		Pitch:     Pitch{PerAccel: 0.0045, Hz: 2, Damping: 0.35},
	}
}

// Thumper is an invented big single of 42 kW.
func Thumper() Bike {
	return Bike{
		Name: "invented thumper", Mass: 240, RotatingMass: 10, CdA: 0.58, Crr: 0.019, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{1500, 35}, {3000, 52}, {5000, 62}, {6500, 60}, {7500, 54}, {8200, 0}},
			Efficiency: 0.92, Inertia: 0.014, DragTorque: 15, IdleRPM: 1400, ShiftRPM: 7600,
		},
		Cylinders: 1,
		Gears:     []float64{400, 280, 222, 186, 165, 150},
		LiftAccel: 8,
		Pitch:     Pitch{PerAccel: 0.005, Hz: 1.8, Damping: 0.3},
	}
}

// Four is an invented fast bike of 145 kW with four cylinders in line.
func Four() Bike {
	return Bike{
		Name: "invented four", Mass: 290, RotatingMass: 12, CdA: 0.42, Crr: 0.017, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{1500, 65}, {4000, 85}, {7000, 102}, {9000, 113}, {11500, 120}, {12200, 105}, {12900, 0}},
			Efficiency: 0.93, Inertia: 0.010, DragTorque: 24, IdleRPM: 1250, ShiftRPM: 12000,
		},
		Cylinders: 4,
		Gears:     []float64{345, 265, 220, 190, 170, 156},
		LiftAccel: 9,
		Pitch:     Pitch{PerAccel: 0.0045, Hz: 2.1, Damping: 0.4},
	}
}

// Volt is an invented electric bike: one ratio, full torque from rest, 35 kW
// from 65 km/h on, and a motor that brakes when the throttle is closed.
func Volt() Bike {
	return Bike{
		Name: "invented electric", Mass: 300, RotatingMass: 11, CdA: 0.5, Crr: 0.018, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{100, 60}, {5500, 60}, {7000, 47}, {9000, 36.7}, {12000, 27.5}, {13500, 0}},
			Efficiency: 0.93, Inertia: 0.003, DragTorque: 12, IdleRPM: 50, ShiftRPM: 12500,
		},
		Gears:     []float64{300},
		NoClutch:  true,
		LiftAccel: 8.5,
		Pitch:     Pitch{PerAccel: 0.004, Hz: 2, Damping: 0.4},
	}
}

// Machines are invented machines from 9 to 145 kW. Only the naked bike, the
// tourer and the sport bike existed when the thresholds of package runs were
// chosen.
func Machines() []Bike {
	return []Bike{Scooter(), Light(), Naked(), Volt(), Thumper(), Tourer(), Sport(), Four()}
}

// FiringOrders are the vibration orders of an engine with a number of
// cylinders: a four-stroke single fires at half its engine speed; an inline
// four fires at twice its speed and is balanced at the first order (Taylor, The
// Internal Combustion Engine, volume 2, from memory). An electric motor has
// hardly any.
func FiringOrders(cylinders int) []Order {
	switch cylinders {
	case 0:
		return []Order{{Multiple: 6, Weight: 1}}
	case 1:
		return []Order{{Multiple: 0.5, Weight: 0.6}, {Multiple: 1, Weight: 1}, {Multiple: 1.5, Weight: 0.3}, {Multiple: 2, Weight: 0.4}}
	case 2:
		return []Order{{Multiple: 0.5, Weight: 0.3}, {Multiple: 1, Weight: 1}, {Multiple: 2, Weight: 0.6}}
	}
	return []Order{{Multiple: 1, Weight: 0.15}, {Multiple: 2, Weight: 1}, {Multiple: 4, Weight: 0.4}}
}

// TankBagPhone is DefaultPhone in a soft bag: little of the engine comes
// through, and the bag nods.
func TankBagPhone() Phone {
	p := DefaultPhone()
	p.Shake.RMS, p.Shake.BounceRMS, p.Shake.BounceHz = 2.5, 1.2, 3.5
	p.Accel.CutOffHz = 25
	return p
}
