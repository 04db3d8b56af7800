package sim

import "math"

// TakeUp is how a clutch takes hold over the time from first bite to full
// force. Only the even one has the shape that the measuring of launches fits.
type TakeUp string

// The ways to take up a clutch, or an electric motor's current.
const (
	EvenTakeUp   TakeUp = ""          // rises evenly
	Exponential  TakeUp = "exp"       // quick at first, then slower and slower
	SShaped      TakeUp = "s"         // slow, quick, slow
	Grab         TakeUp = "grab"      // half of the force at once, the rest evenly
	Electric     TakeUp = "electric"  // full force within a tenth of the time
	SlipAndGrip  TakeUp = "slip-grip" // lets go once in the middle
	settlesAfter        = 3.0         // time constants of the exponential in the clutch's time
)

// TakeUps are all of them.
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
