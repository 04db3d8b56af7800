package roadload

// measured completes the rows of jac: the residuals of the speeds, and the rows
// of the heights.
func (c *coast) measured(l layout, s *state, m *motion) {
	for i := range c.t {
		c.obs[i*channels].seen = seesSpeed
		c.residualColumn(s, c.rowOf(c.jac, i, 0), c.z[i]-c.v[i])
		if c.channels > 1 {
			c.heightRow(l, s, m, i)
		}
	}
}

// leftover writes the last column of a row: the residual plus the current
// contribution of the random effects, so that the normal equations solve for
// their full values, to which the prior applies.
func (c *coast) residualColumn(s *state, row []float64, above float64) {
	for j := 2; j < len(c.cols); j++ {
		above += row[c.own+j] * s.beta[c.cols[j]]
	}
	row[len(row)-1] = above
}

// pressSD is the prior standard deviation of the fraction of dynamic pressure
// ½ρu² that a barometer on a bike senses: small in a pocket, large in the wind,
// of either sign.
const pressSD = 0.3

// heightRow writes the row of a height. The barometer shows
//
//	h₀ + ∫ slope dx − κ·u²/(2g) + its own error,
//
// with κ the fraction of dynamic pressure that it senses; the full pressure at
// 30 m/s is equivalent to 46 m. Through u it responds to gusts too. The
// receiver's altitude has the same form without κ.
func (c *coast) heightRow(l layout, s *state, m *motion, i int) {
	row := c.rowOf(c.jac, i, 1)
	fit := c.pressRow(l, s, m, i)
	row[c.own-1] = 1
	along := c.x[i] - c.x[0]
	fit += along * m.meanSlope
	row[c.own+3] += along
	for k := range c.span[1] {
		rise := c.stretch.rise(c.span[0]+k, c.x[i])
		row[c.own+c.at.knots+k] += rise
		fit += rise * s.beta[l.knot+c.span[0]+k]
	}
	c.residualColumn(s, row, c.height[i]-fit)
}

// pressRow begins the row with the effect of dynamic pressure on a height, and
// returns it.
func (c *coast) pressRow(l layout, s *state, m *motion, i int) float64 {
	row, seen := c.rowOf(c.jac, i, 1), &c.obs[i*channels+1].seen
	if c.at.press < 0 {
		clear(row)
		*seen = vector{0, 0, 0, 1}
		return 0
	}
	kappa := s.beta[l.press]
	u := c.v[i] + m.wind
	felt := -kappa * u / s.gravity
	*seen = vector{felt, felt, 0, 1}
	for j, d := range c.rowOf(c.jac, i, 0) {
		row[j] = felt * d
	}
	row[c.own+2] += felt * c.dir
	if c.at.shift >= 0 {
		row[c.own+c.at.shift] += felt * c.dir * c.part
	}
	row[c.own+c.at.press] = -u * u / (2 * s.gravity)
	return -kappa * u * u / (2 * s.gravity)
}
