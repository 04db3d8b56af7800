package roadload

import "stillair/runs/measure"

// Fitted holds the other results of the fit, such as the road's profile.
type Fitted struct {
	Growth  measure.Value // k, s/m
	WarmUp  measure.Value // growth of Crr over an hour, relative; SE 0: held at none
	Feels   measure.Value // share of dynamic pressure that the barometer feels; SE 0: no barometer
	Profile []Knot        // of the road, in direction +1; nil: treated as smooth
	// Curves are CdA (m²) and Crr of each setup that RunFit.Fit was computed
	// with. Loads differ from them by the averaging over roads.
	Curves [][2]float64
}

// Knot is the slope of the road at a place, about the mean of each pair.
// Between knots it changes linearly.
type Knot struct {
	At    float64       // m along the road, counted in direction +1
	Slope measure.Value // 1
}

// fitted collects what all runs have in common.
func (s *system) fitted() Fitted {
	out := Fitted{Growth: measure.Value{X: s.state.slope}}
	if s.lay.slope >= 0 {
		extra := s.valueOf(s.lay.slope)
		out.Growth = measure.Value{X: s.state.slope + extra.X, SE: extra.SE}
	}
	if s.lay.warm >= 0 {
		out.WarmUp = s.valueOf(s.lay.warm)
	}
	if s.lay.press >= 0 {
		out.Feels = s.valueOf(s.lay.press)
	}
	for _, part := range s.lay.road {
		for i := range part.knots {
			out.Profile = append(out.Profile, Knot{part.from + float64(i)*part.spacing, s.valueOf(s.lay.knot + part.first + i)})
		}
	}
	for i := range s.lay.setups {
		out.Curves = append(out.Curves, [2]float64{s.state.beta[cdaAt(i)], s.state.beta[crrAt(i)]})
	}
	return out
}

// roadAt is the slope at each fix of a run, in its direction of travel.
func (s *system) roadAt(c *coast) []float64 {
	out := make([]float64, len(c.t))
	for i := range out {
		slope := s.state.beta[s.lay.grade+c.pairIndex]
		if s.lay.knots > 0 {
			k, f := c.stretch.locate(c.x[i])
			knots := s.state.beta[s.lay.knot:]
			slope += knots[k] + f*(knots[k+1]-knots[k])
		}
		out[i] = c.dir * slope
	}
	return out
}
