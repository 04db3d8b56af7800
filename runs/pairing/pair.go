package pairing

import (
	"math"
	"sort"

	"stillair/sensors/finding"
)

// Limits for runs of one road and pair.
const (
	parallel   = 25.0      // degrees between the lines of two runs
	width      = 60.0      // m between two runs on one road, both carriageways and the receiver's error
	overlap    = 0.25      // share of the shorter run that both must cover
	longest    = 30 * 60.0 // s between the two runs of a pair
	roadsApart = 1e5       // m between the places of different roads, so that no place is on two
)

// Placed is the result of pairing for one coast-down.
type Placed struct {
	Pair int             // from 1; 0: no counterpart
	Dir  float64         // +1 or −1 along its road; 0: the direction is not known
	Pos  []float64       // place of each fix along the road, m, counted in direction +1; nil: not known
	Why  finding.Finding // for Pair 0
}

// run is a coast-down with its geometry.
type run struct {
	Coast
	bearing float64
	points  []point
	road    int // number of the road, from 0
	dir     float64
}

// Pair finds the counterparts. The answer has one element for each coast-down,
// in the same order.
func Pair(coasts []Coast) []Placed {
	runs := survey(coasts)
	placed := make([]Placed, len(runs))
	roads := assignRoads(runs)
	for k := range roads {
		place(runs, roads[k], k, placed)
	}
	number := 0
	for _, group := range bySetup(runs) {
		for _, pair := range match(runs, group) {
			number++
			placed[pair[0]].Pair, placed[pair[1]].Pair = number, number
		}
	}
	renumber(runs, placed)
	for i := range placed {
		if placed[i].Pair == 0 {
			placed[i].Why = why(runs, i)
		}
	}
	return placed
}

// survey computes the geometry of each coast-down.
func survey(coasts []Coast) []run {
	var ground plane
	for _, c := range coasts {
		if ground == (plane{}) {
			ground = newPlane(c.Fixes)
		}
	}
	runs := make([]run, len(coasts))
	for i, c := range coasts {
		runs[i] = run{Coast: c, bearing: c.BearingDeg(), points: ground.points(c.Fixes), road: -1}
	}
	return runs
}

// sameRoad reports whether two runs lie on one line and overlap. Runs without
// positions are compared by their course alone.
func sameRoad(a, b run) bool {
	if d := apart(a.bearing, b.bearing); math.IsNaN(d) || math.Min(d, 180-d) > parallel {
		return false
	}
	if len(a.points) < 2 || len(b.points) < 2 {
		return len(a.points) == len(b.points)
	}
	line := newAxis(a.points, a.bearing)
	aLow, aHigh := extent(line, a.points)
	bLow, bHigh := extent(line, b.points)
	common := math.Min(aHigh, bHigh) - math.Max(aLow, bLow)
	if common < overlap*math.Min(aHigh-aLow, bHigh-bLow) {
		return false
	}
	beside := 0.0
	n := 0
	for _, p := range b.points {
		if x := line.along(p); x >= aLow && x <= aHigh {
			beside += math.Abs(line.beside(p))
			n++
		}
	}
	return n == 0 || beside/float64(n) < width
}

func extent(a axis, pts []point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range pts {
		x := a.along(p)
		low, high = math.Min(low, x), math.Max(high, x)
	}
	return low, high
}

// assignRoads numbers the roads and returns the runs of each.
func assignRoads(runs []run) [][]int {
	var roads [][]int
	for i := range runs {
		if runs[i].road >= 0 || math.IsNaN(runs[i].bearing) {
			continue
		}
		runs[i].road = len(roads)
		members := []int{i}
		for k := 0; k < len(members); k++ {
			for j := range runs {
				if runs[j].road < 0 && sameRoad(runs[members[k]], runs[j]) {
					runs[j].road = len(roads)
					members = append(members, j)
				}
			}
		}
		sort.Ints(members)
		roads = append(roads, members)
	}
	return roads
}

// place computes direction and places of the runs of one road.
func place(runs []run, members []int, road int, placed []Placed) {
	first := runs[members[0]].bearing
	var all []point
	for _, i := range members {
		all = append(all, runs[i].points...)
	}
	line := newAxis(all, first)
	for _, i := range members {
		runs[i].dir = 1
		if apart(runs[i].bearing, first) > 90 {
			runs[i].dir = -1
		}
		placed[i].Dir = runs[i].dir
		if len(runs[i].points) < len(runs[i].Fixes) {
			continue // some fix has no position: better no position than a wrong one
		}
		for _, p := range runs[i].points {
			placed[i].Pos = append(placed[i].Pos, line.along(p)+float64(road)*roadsApart)
		}
	}
}

// bySetup groups the runs of one road and setup, in order of time.
func bySetup(runs []run) [][]int {
	type key struct {
		road  int
		setup string
	}
	groups := map[key][]int{}
	var keys []key
	for i, r := range runs {
		if r.road < 0 {
			continue
		}
		k := key{r.road, r.Setup}
		if groups[k] == nil {
			keys = append(keys, k)
		}
		groups[k] = append(groups[k], i)
	}
	var out [][]int
	for _, k := range keys {
		g := groups[k]
		sort.SliceStable(g, func(a, b int) bool { return runs[g[a]].Start < runs[g[b]].Start })
		out = append(out, g)
	}
	return out
}

// renumber gives the pairs numbers in order of time.
func renumber(runs []run, placed []Placed) {
	order := make([]int, len(runs))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return runs[order[a]].Start < runs[order[b]].Start })
	number := map[int]int{}
	for _, i := range order {
		if old := placed[i].Pair; old > 0 {
			if number[old] == 0 {
				number[old] = len(number) + 1
			}
			placed[i].Pair = number[old]
		}
	}
}

// why is the reason why a run has no counterpart.
func why(runs []run, i int) finding.Finding {
	r := runs[i]
	if math.IsNaN(r.bearing) {
		return finding.New(codeNoDirection)
	}
	otherSetup, otherTime := false, math.Inf(1)
	for j, o := range runs {
		if j == i || o.road != r.road || o.dir == r.dir {
			continue
		}
		if o.Setup != r.Setup {
			otherSetup = true
			continue
		}
		otherTime = math.Min(otherTime, math.Abs(o.MiddleTime()-r.MiddleTime()))
	}
	switch {
	case otherTime > longest && !math.IsInf(otherTime, 1):
		return finding.New(codeTooLong, finding.Time("after", otherTime))
	case !math.IsInf(otherTime, 1):
		return finding.New(codeAllTaken)
	case otherSetup:
		return finding.New(codeOtherSetup)
	}
	return finding.New(codeNoCounterpart)
}
