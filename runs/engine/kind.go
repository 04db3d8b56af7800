package engine

// What an engine shakes and sounds at most goes with its firings, which in a
// four-stroke of three cylinders are one and a half a turn, and of four two
// (Heywood, Internal Combustion Engine Fundamentals, from memory; that engines of
// one and two cylinders show orders 1 and 2 is common practice). So a triple
// sounds like a twin that turns half as fast again, and only who knows the
// number of cylinders can tell them apart.

// family is the pair of orders that an engine of so many cylinders shows most.
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

// families are those that an engine may be of; 0 cylinders: that is not known.
func families(cylinders int) [][]float64 {
	if cylinders == 0 {
		return [][]float64{family(2), family(3), family(4)}
	}
	return [][]float64{family(cylinders)}
}

// Kind returns the search for an engine of so many cylinders; 0: that is not
// known, and what could be the ratio of a twin and of a triple is not a lock.
func Kind(cylinders int) Search {
	if cylinders == 0 {
		return Search{Orders: family(2), Alike: []float64{2.0 / 3}}
	}
	return Search{Orders: family(cylinders)}
}
