package detect

import "math"

// feeling is whether the vibration of a deceleration shows the engine turning with the
// wheels.
type feeling int

const (
	notHeard feeling = iota // nobody listened
	notFelt
	feltTurning
)

// How often an engine is felt turning with the wheels. With a gear in, most phones feel
// it, in a share of the decelerations that may be any; in soft padding none do. With the
// clutch in hardly any do, but a phone whose holder rings may show a line in several:
// of 2,000 free coast-downs of package foreign (seeds 6001 to 6040, 6101 to 6250 and 7001
// to 7060) five did, of three of 250 rides.
const (
	phonesFeel  = 0.6    // phones that feel an engine
	mistakenFor = 0.0005 // share of free decelerations with a line, of most phones
	ringing     = 0.01
	ringingBeta = 4.0 // the share of a ringing phone is distributed as Beta(1, ringingBeta)
)

// logFelt is the log likelihood of what was felt, if exactly these decelerations have a
// gear in. The share of decelerations with a line is integrated out, so that the many
// lines of one ride are not taken for independent evidence.
func logFelt(felt []feeling, in []bool) float64 {
	var free, held, freeLines, heldLines float64
	for i, f := range felt {
		line := 0.0
		if f == feltTurning {
			line = 1
		}
		switch {
		case f == notHeard:
		case in[i]:
			held, heldLines = held+1, heldLines+line
		default:
			free, freeLines = free+1, freeLines+line
		}
	}
	return math.Log((1-ringing)*bernoulli(mistakenFor, freeLines, free)+ringing*betaBernoulli(ringingBeta, freeLines, free)) +
		math.Log((1-phonesFeel)*bernoulli(mistakenFor, heldLines, held)+phonesFeel*betaBernoulli(1, heldLines, held))
}

// bernoulli is the probability of k given events in n trials.
func bernoulli(p, k, n float64) float64 { return math.Pow(p, k) * math.Pow(1-p, n-k) }

// betaBernoulli is the same where p is distributed as Beta(1, b).
func betaBernoulli(b, k, n float64) float64 {
	return math.Exp(logBeta(1+k, b+n-k) - logBeta(1, b))
}

func logBeta(a, b float64) float64 {
	x, _ := math.Lgamma(a)
	y, _ := math.Lgamma(b)
	z, _ := math.Lgamma(a + b)
	return x + y - z
}
