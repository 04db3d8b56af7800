package roadload

// Run is one coast-down for the fit. T and V are parallel.
type Run struct {
	ID    int
	Setup int     // index of the setup, from 0
	Pair  int     // runs with the same number are opposite and close in time; 0: alone
	Dir   float64 // +1 or −1: direction along the road

	T   []float64 // time that a fix describes, lag removed, s
	V   []float64 // speed of the fix, m/s
	Pos []float64 // place along the road, m, counted in direction +1; nil: not known

	// Height is the barometric height at T, in metres above any level, from the
	// pressure by dh = −dp/(ρg); NaN where missing, nil without a barometer. It
	// is used where Pos is known.
	Height []float64

	// Alt is the receiver's altitude at each fix, m; NaN where missing, nil
	// without. It is weak evidence of the road's profile, used where Pos is
	// known and Height is not.
	Alt []float64

	Mass    float64 // m: bike, rider, fuel and luggage, kg
	Inertia float64 // m + m_rot, kg
	Density float64 // ρ, kg/m³
}
