package sim

import "math"

// TakeUp is the course of the clutch force from first bite to full force. Only
// the even one has the shape that the analysis of launches fits.
type TakeUp string

// The shapes of a clutch's engagement, or of an electric motor's current.
const (
	EvenTakeUp   TakeUp = ""          // linear
	Exponential  TakeUp = "exp"       // fast at first, then slower and slower
	SShaped      TakeUp = "s"         // slow, quick, slow
	Grab         TakeUp = "grab"      // half of the force at once, the rest evenly
	Electric     TakeUp = "electric"  // full force within a tenth of the time
	SlipAndGrip  TakeUp = "slip-grip" // slips again once in the middle
	settlesAfter        = 3.0         // length of the clutch's time in time constants of the exponential
)

// TakeUps lists all of them.
func TakeUps() []TakeUp {
	return []TakeUp{EvenTakeUp, Exponential, SShaped, Grab, Electric, SlipAndGrip}
}

// grip is the share of the full force after a share u of the time.
func (k TakeUp) grip(u float64) float64 {
	even := min(max(u, 0), 1)
	switch k {
	case Exponential:
		return 1 - math.Exp(-settlesAfter*max(u, 0))
	case SShaped:
		return (1 - math.Cos(math.Pi*even)) / 2
	case Grab:
		return min(10*even, 0.5+even/2)
	case Electric:
		return min(10*even, 1)
	case SlipAndGrip:
		return max(even-0.35*math.Sin(2*math.Pi*even)*math.Sin(2*math.Pi*even), 0)
	}
	return even
}
