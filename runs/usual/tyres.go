package usual

// Rolling resistance at standstill with all that turns along: tyres, bearings and
// chain. The spread is the root mean square, about the mean that most motorcycles
// have, of what sources say: 0.02 (Cossalter, Motorcycle Dynamics), 0.0136 and
// 0.0169 (radial and bias-ply truck tyres) and 0.006 (all three in Wong, Theory of
// Ground Vehicles, from memory), 0.009 (0.005 + 0.01/p at 2.5 bar, textbook
// formula) and 0.0058 (A over the weight at 290 kg, 40 CFR 86.529-98, figure F98-9,
// where all growth counts as air).
const (
	Crr   = 0.018
	CrrSD = 0.008
)

// The range for a single deceleration before the ride is evaluated as a whole.
// This is a limit rather than a prior: 3.3 standard deviations of it and of
// SlowingGrade reach 0.049, and a dragged engine adds 0.04 to 0.1. So it is
// narrower than Crr ± CrrSD, about what tyres alone have (common practice).
const (
	TyresCrr   = 0.016
	TyresCrrSD = 0.006
)

// Growth of rolling resistance with speed, s/m: Crr·(1 + Growth·v) (common
// practice for motorcycle tyres). What it may be beyond that is among the
// assumptions of package roadload.
const (
	Growth   = 0.004
	GrowthSD = 0.001
)
