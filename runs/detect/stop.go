package detect

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

const (
	stopSpeed = 40 * units.KMH // least speed a stop starts from
	stopHard  = 4.0            // least mean deceleration of a stop, m/s²
	stopNear  = 3.7            // from which it may have been intended as one, m/s²
	braking   = 1.2            // deceleration that coasting does not reach for long, m/s²
)

// stops finds braking from speed to standstill.
func stops(s *series) []Found {
	var out []Found
	for i := 1; i < s.len(); i++ {
		if s.v[i] > 0.5 || s.v[i-1] <= 0.5 {
			continue
		}
		from := brakingStart(s, i)
		if s.v[from] < stopSpeed {
			continue
		}
		hard := s.v[from] / s.seconds(from, i)
		if hard < stopNear {
			continue
		}
		f := Found{Kind: Stop, From: s.time(from), To: s.time(i), Breaks: push{from: from, to: i}.breaks(s)}
		if hard < stopHard {
			f.Reasons = append(f.Reasons, finding.New(codeStopWeak, finding.Acceleration("mean", hard), finding.Acceleration("needed", stopHard)))
		}
		out = append(out, f)
	}
	return out
}

// brakingStart searches backward from standstill to where the brakes were
// applied.
func brakingStart(s *series, i int) int {
	from := clamp(i-3, 0, i)
	for from > 0 && s.quick[from-1] < -braking {
		from--
	}
	return from
}
