package pairing

import "math"

// match pairs the runs out with the runs back of one group, in order of time:
// the largest number of pairs within the time limit, with the least time
// between their runs. For points on a line the cheapest matching keeps the
// order, so only the runs to leave out have to be chosen, by dynamic
// programming over (runs out, runs back).
func match(runs []run, group []int) [][2]int {
	var out, back []int
	for _, i := range group {
		if runs[i].dir > 0 {
			out = append(out, i)
		} else {
			back = append(back, i)
		}
	}
	cost := make([][]float64, len(out)+1)
	for i := range cost {
		cost[i] = make([]float64, len(back)+1)
		for j := range cost[i] {
			cost[i][j] = cheapest(cost, i, j, func() float64 { return gap(runs, out[i-1], back[j-1]) })
		}
	}
	var pairs [][2]int
	for i, j := len(out), len(back); i > 0 && j > 0; {
		switch cost[i][j] {
		case cost[i-1][j] + longest:
			i--
		case cost[i][j-1] + longest:
			j--
		default:
			i, j = i-1, j-1
			pairs = append(pairs, [2]int{out[i], back[j]})
		}
	}
	return pairs
}

// cheapest is the least cost for the first i runs out and j runs back: leaving
// one out costs as much as the longest wait.
func cheapest(cost [][]float64, i, j int, pair func() float64) float64 {
	if i == 0 || j == 0 {
		return float64(i+j) * longest
	}
	least := math.Min(cost[i-1][j], cost[i][j-1]) + longest
	return math.Min(least, cost[i-1][j-1]+pair())
}

// gap is the time between two runs, or infinite where it is too long.
func gap(runs []run, i, j int) float64 {
	d := math.Abs(runs[i].MiddleTime() - runs[j].MiddleTime())
	if d > longest {
		return math.Inf(1)
	}
	return d
}
