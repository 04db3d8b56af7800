package detect

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Whether the clutch was pulled is decided over the whole ride. A dragged engine
// or brake and a rising road slow one run alike; but a road that rises one way
// falls the other way, and an engine does not.
const (
	leftIn   = 0.1     // share of slowings through such speeds with a gear in or a brake on, among those that look like coast-downs (common practice)
	inGear   = 1.0 / 6 // density of their strain: even from 2 to 8 standard deviations, as engines differ
	leastIn  = 2.0     // where that begins
	believed = 0.5     // chance from which on a run does not count
	wayBack  = 120.0   // degrees between courses from which on a run went the other way
)

// dragged is the chance that something else than air and tyres held a run
// back, of which the strain is what it would be one time in a normal
// distribution where the clutch was pulled (Bayes' rule).
func dragged(strain float64) float64 {
	if strain < leastIn {
		return 0
	}
	free := (1 - leftIn) * math.Exp(-strain*strain/2) / math.Sqrt(2*math.Pi)
	return leftIn * inGear / (leftIn*inGear + free)
}

// rolled is a coast-down with how it slowed.
type rolled struct {
	found  *Found
	course float64 // degrees; NaN: not known
	excess float64 // of its deceleration over the usual one, m/s²
	sd     float64 // of that with the road's slope, m/s²
	level  float64 // and without, m/s²
}

// decideClutch refuses the coast-downs that were more likely held back than
// not, all runs of the ride taken together.
func decideClutch(s *series, b bounds, found []Found, fixes []sensors.Fix) {
	var all []rolled
	for i := range found {
		f := &found[i]
		if f.Kind != CoastDown {
			continue
		}
		r := rolled{found: f, course: bearingOf(fixes, (f.From+f.To)/2)}
		r.excess, r.sd, r.level = b.excess(s, piece{s.index(f.From), s.index(f.To)})
		all = append(all, r)
	}
	for _, r := range all {
		if len(r.found.Reasons) > 0 {
			continue
		}
		if chance := dragged(r.strain(all)); chance > believed {
			r.found.Reasons = append(r.found.Reasons, finding.New(codeInGear, finding.Share("chance", chance)))
		}
	}
}

// strain is by how many standard deviations a run slowed more than usual: with
// the mean of those the other way, where the slope of the road cancels, or alone.
func (r rolled) strain(all []rolled) float64 {
	sum, n := 0.0, 0.0
	for _, o := range all {
		if math.Abs(math.Remainder(o.course-r.course, 360)) > wayBack {
			sum, n = sum+o.excess, n+1
		}
	}
	if n == 0 {
		return r.excess / r.sd
	}
	return (r.excess + sum/n) / 2 / r.level
}

// Slowings beside the coast-downs of a ride.
const (
	sameStart = 0.12 // part of the first speed of the others by which that of one of them may differ
	sameSpan  = 0.6  // part of the range of speed of the others that it must cover
	leastSame = 3    // coast-downs that show how they are ridden in this ride
)

// missed are slowings that begin and end as the coast-downs of the ride do and
// were held back too hard to look like one: a gear left in, a brake.
func missed(s *series, found []Found) []Found {
	var from, to []float64
	for _, f := range found {
		if f.Kind == CoastDown && len(f.Reasons) == 0 {
			from, to = append(from, s.v[s.index(f.From)]), append(to, s.v[s.index(f.To)])
		}
	}
	if len(from) < leastSame {
		return nil
	}
	first, last := median(from), median(to)
	var out []Found
	for _, z := range slowings(s) {
		a, b := s.time(z.from), s.time(z.to)
		if math.Abs(s.v[z.from]/first-1) > sameStart || s.v[z.from]-math.Max(s.v[z.to], last) < sameSpan*(first-last) || braked(s, z) || overlaps(found, a, b) {
			continue
		}
		out = append(out, Found{Kind: CoastDown, From: a, To: b, Reasons: []finding.Finding{finding.New(codeUnlike)}})
	}
	return out
}

// braked reports whether the rider clearly used the brake in a piece.
func braked(s *series, p piece) bool { return -meanSlope(s, p) > braking }

func overlaps(found []Found, a, b float64) bool {
	for _, f := range found {
		if f.Kind == CoastDown && f.From < b && f.To > a {
			return true
		}
	}
	return false
}
