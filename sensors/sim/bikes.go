package sim

// Naked is a simulated middle-weight bike without a fairing.
func Naked() Bike {
	return Bike{
		Name: "invented naked", Mass: 290, RotatingMass: 11.6, CdA: 0.55, Crr: 0.018, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{1000, 38}, {2500, 52}, {4000, 63}, {6500, 68}, {8000, 64}, {9300, 54}, {10000, 0}},
			Efficiency: 0.93, Inertia: 0.012, DragTorque: 16, IdleRPM: 1300, ShiftRPM: 9000,
		},
		Cylinders: 2,
		Gears:     []float64{417, 300, 234, 193, 165, 146},
		LiftAccel: 8.4,
		Pitch:     Pitch{PerAccel: 0.0042, Hz: 1.9, Damping: 0.35},
	}
}

// Tourer is an invented heavy bike with panniers and a passenger.
func Tourer() Bike {
	return Bike{
		Name: "invented tourer", Mass: 460, RotatingMass: 17, CdA: 0.75, Crr: 0.018, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{900, 85}, {2000, 112}, {3500, 130}, {5500, 126}, {7000, 108}, {7800, 84}, {8400, 0}},
			Efficiency: 0.90, Inertia: 0.030, DragTorque: 28, IdleRPM: 1050, ShiftRPM: 7400,
		},
		Cylinders: 2,
		Gears:     []float64{318, 221, 170, 140, 119, 101},
		LiftAccel: 9.2,
		Pitch:     Pitch{PerAccel: 0.0035, Hz: 1.6, Damping: 0.4},
	}
}

// Sport is an invented faired bike, the rider lying on the tank.
func Sport() Bike {
	return Bike{
		Name: "invented sport", Mass: 280, RotatingMass: 11, CdA: 0.36, Crr: 0.018, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{1200, 40}, {4000, 66}, {7000, 92}, {10500, 108}, {12500, 100}, {13600, 84}, {14300, 0}},
			Efficiency: 0.93, Inertia: 0.009, DragTorque: 22, IdleRPM: 1400, ShiftRPM: 13200,
		},
		Cylinders: 2,
		Gears:     []float64{388, 300, 250, 218, 196, 181},
		LiftAccel: 9.0,
		Pitch:     Pitch{PerAccel: 0.0048, Hz: 2.2, Damping: 0.4},
	}
}

// Scooter is an invented small scooter of 9 kW with a belt drive: one ratio,
// and a torque that falls at nearly constant power.
func Scooter() Bike {
	return Bike{
		Name: "invented scooter", Mass: 200, RotatingMass: 7, CdA: 0.6, Crr: 0.020, CrrSlope: 0.004,
		Engine: Engine{
			Torque:     []TorquePoint{{800, 15}, {5800, 15}, {7500, 11.5}, {9000, 9.5}, {9600, 0}},
			Efficiency: 0.9, Inertia: 0.004, DragTorque: 4, IdleRPM: 800, ShiftRPM: 9500,
		},
		Cylinders: 1,
		Gears:     []float64{300},
		LiftAccel: 8,
		Pitch:     Pitch{PerAccel: 0.004, Hz: 1.8, Damping: 0.4},
	}
}

// Bikes are the three invented bikes.
func Bikes() []Bike { return []Bike{Naked(), Tourer(), Sport()} }
