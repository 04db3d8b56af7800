package engine

// The strongest orders of vibration and sound follow the firing frequency,
// which in a four-stroke of three cylinders is one and a half per turn, and of
// four two (Heywood, Internal Combustion Engine Fundamentals, from memory; that
// engines of one and two cylinders show orders 1 and 2 is common practice). So
// a triple sounds like a twin that turns half as fast again, and only the
// number of cylinders distinguishes them.

// family is the pair of strongest orders of an engine of so many cylinders.
func family(cylinders int) []float64 {
	switch cylinders {
	case 3:
		return []float64{1.5, 3}
	case 4:
		return []float64{2, 4}
	case 6:
		return []float64{3, 6}
	}
	return []float64{1, 2}
}

// families are the possible families of an engine; 0 cylinders: not known.
func families(cylinders int) [][]float64 {
	if cylinders == 0 {
		return [][]float64{family(2), family(3), family(4)}
	}
	return [][]float64{family(cylinders)}
}

// Kind returns the search for an engine of so many cylinders; 0: not known, in
// which case a ratio that fits both a twin and a triple is not a lock.
func Kind(cylinders int) Search {
	if cylinders == 0 {
		return Search{Orders: family(2), Alike: []float64{2.0 / 3}}
	}
	return Search{Orders: family(cylinders)}
}
