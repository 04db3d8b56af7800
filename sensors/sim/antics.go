package sim

import "math"

// Antic is a disturbance of a launch.
type Antic struct {
	Kind    AnticKind
	At      float64 // s after the push begins
	Seconds float64
	Size    float64 // Wheelie: pitch, rad; Spin and Hop: share of the drive that is lost; Sit: share of CdA that is added
}

// AnticKind is the kind of disturbance.
type AnticKind string

// Kinds of antic.
const (
	Wheelie AnticKind = "wheelie" // the front comes up and down again
	Spin    AnticKind = "spin"    // the rear wheel spins and loses part of the drive
	Hop     AnticKind = "hop"     // the clutch or the tyre judders
	Sit     AnticKind = "sit"     // the rider sits up
)

// hopHz is how often a rear wheel hops, 1/s (7 to 12, common practice).
const hopHz = 8.0

// act returns the remaining share of the drive, the pitch of a wheelie and the
// added CdA at a share u of the antic's time.
func (a Antic) act(u float64) (lost, up, body float64) {
	if u <= 0 || u >= 1 {
		return 0, 0, 0
	}
	swell := math.Sin(math.Pi*u) * math.Sin(math.Pi*u)
	switch a.Kind {
	case Wheelie:
		return 0, a.Size * swell, 0
	case Spin:
		return a.Size * min(1, 6*u, 6*(1-u)), 0, 0
	case Hop:
		return a.Size * swell * (1 + math.Sin(2*math.Pi*hopHz*u*a.Seconds)) / 2, 0, 0
	case Sit:
		return 0, 0, a.Size
	}
	return 0, 0, 0
}

// perform applies the current antics to this step.
func (p *player) perform() {
	if len(p.antics) == 0 {
		return
	}
	p.cmd.lost, p.cmd.up, p.cmd.body = 0, 0, 0
	for _, a := range p.antics {
		lost, up, body := a.act((p.time() - p.pushed - a.At) / a.Seconds)
		p.cmd.lost, p.cmd.up, p.cmd.body = p.cmd.lost+lost, p.cmd.up+up, p.cmd.body+body
	}
}
