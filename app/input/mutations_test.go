package input

import (
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// mutation changes a log in a way that a phone, a receiver, a logger or a person
// with an editor might.
type mutation struct {
	name string
	do   func(m *mutator)
}

// mutator is a log being mutated, the same for the same seed.
type mutator struct {
	rng   *rand.Rand
	log   *sensors.Log
	other *sensors.Log // another ride
}

func mutations() []mutation {
	return []mutation{
		{"another rate of motion", (*mutator).rate},
		{"another rate of fixes", func(m *mutator) { m.log.Fixes = every(m.log.Fixes, 1+m.rng.IntN(12)) }},
		{"the clock steps", (*mutator).step},
		{"the clock of one sensor steps", (*mutator).stepOne},
		{"wild stamps", (*mutator).wild},
		{"another unit of time", (*mutator).timeUnit},
		{"another recording joined", (*mutator).join},
		{"a stretch repeated", (*mutator).repeat},
		{"stretches swapped", (*mutator).swap},
		{"a huge gap", (*mutator).gap},
		{"a stretch gone", (*mutator).hole},
		{"bursts", (*mutator).bursts},
		{"no numbers", (*mutator).noNumbers},
		{"another scale", (*mutator).scale},
		{"a column constant", (*mutator).constant},
		{"wild values", (*mutator).wildValues},
		{"a sensor absent", (*mutator).absent},
		{"few samples", (*mutator).few},
	}
}

// log10 draws a value between two powers of ten, of either sign.
func (m *mutator) log10(low, high float64) float64 {
	x := math.Pow(10, low+(high-low)*m.rng.Float64())
	if m.rng.IntN(2) == 0 {
		return -x
	}
	return x
}

func every[S any](all []S, n int) (out []S) {
	for i := 0; i < len(all); i += n {
		out = append(out, all[i])
	}
	return out
}

// rate gives the motion another rate, from 1 Hz to 1 kHz.
func (m *mutator) rate() {
	all := m.log.Motion
	hz := math.Pow(10, 3*m.rng.Float64())
	if len(all) < 2 || !(all[len(all)-1].T-all[0].T < 1000) {
		return
	}
	var out []sensors.Motion
	k := 0
	for t := all[0].T; t < all[len(all)-1].T && len(out) < 200_000; t += 1 / hz {
		for k+1 < len(all) && all[k+1].T <= t {
			k++
		}
		x := all[k]
		x.T = t
		out = append(out, x)
	}
	m.log.Motion = out
}

func (m *mutator) begin() (from, to float64) {
	from = m.log.Begin()
	to = from
	if n := len(m.log.Motion); n > 0 {
		to = math.Max(to, m.log.Motion[n-1].T)
	}
	if n := len(m.log.Fixes); n > 0 {
		to = math.Max(to, m.log.Fixes[n-1].T)
	}
	return from, to
}

func (m *mutator) some() float64 {
	from, to := m.begin()
	return from + (to-from)*m.rng.Float64()
}

func (m *mutator) move(from, by float64, motion, fixes bool) {
	for i := range m.log.Motion {
		if x := &m.log.Motion[i]; motion && x.T >= from {
			x.T += by
		}
	}
	for i := range m.log.Fixes {
		if x := &m.log.Fixes[i]; fixes && x.T >= from {
			x.T += by
		}
	}
	for i := range m.log.Pressure {
		if x := &m.log.Pressure[i]; motion && x.T >= from {
			x.T += by
		}
	}
}

func (m *mutator) step()    { m.move(m.some(), m.log10(-3, 6), true, true) }
func (m *mutator) gap()     { m.move(m.some(), math.Abs(m.log10(1, 10)), true, true) }
func (m *mutator) stepOne() { one := m.rng.IntN(2) == 0; m.move(m.some(), m.log10(-3, 5), one, !one) }

func (m *mutator) wild() {
	odd := []float64{1.7e9, 1e15, 1e300, -1e9, math.NaN(), math.Inf(1), math.Inf(-1), 0, 1e-300}
	draw := func(t float64) float64 {
		if m.rng.IntN(2) == 0 {
			return odd[m.rng.IntN(len(odd))]
		}
		return t + m.log10(-2, 6)
	}
	for range 1 + m.rng.IntN(20) {
		if n := len(m.log.Motion); n > 0 && m.rng.IntN(2) == 0 {
			x := &m.log.Motion[m.rng.IntN(n)]
			x.T = draw(x.T)
		} else if n := len(m.log.Fixes); n > 0 {
			x := &m.log.Fixes[m.rng.IntN(n)]
			x.T = draw(x.T)
		}
	}
}

func (m *mutator) timeUnit() {
	by := []float64{1e3, 1e6, 1e9, 1e-3, 0.5, 60}[m.rng.IntN(6)]
	which := m.rng.IntN(3)
	for i := range m.log.Motion {
		if which != 0 {
			m.log.Motion[i].T *= by
		}
	}
	for i := range m.log.Fixes {
		if which != 1 {
			m.log.Fixes[i].T *= by
		}
	}
}

// join appends another ride, on its own clock or on this one.
func (m *mutator) join() {
	_, end := m.begin()
	by := []float64{0, end - m.other.Begin(), end - m.other.Begin() + math.Abs(m.log10(-2, 4)), -1e5}[m.rng.IntN(4)]
	for _, x := range m.other.Motion {
		x.T += by
		m.log.Motion = append(m.log.Motion, x)
	}
	for _, x := range m.other.Fixes {
		x.T += by
		m.log.Fixes = append(m.log.Fixes, x)
	}
}

// stretch draws two indices, in order, that enclose a part.
func (m *mutator) stretch(n int) (i, j int) {
	i = m.rng.IntN(n)
	return i, min(n, i+1+int(float64(n)*math.Pow(m.rng.Float64(), 3)))
}

// repeat delivers a stretch a second time, with its old stamps or on a continuous
// clock.
func (m *mutator) repeat() {
	if n := len(m.log.Motion); n > 0 {
		i, j := m.stretch(n)
		m.log.Motion = slices.Insert(m.log.Motion, j, slices.Clone(m.log.Motion[i:j])...)
	}
	if n := len(m.log.Fixes); n > 0 {
		i, j := m.stretch(n)
		m.log.Fixes = slices.Insert(m.log.Fixes, j, slices.Clone(m.log.Fixes[i:j])...)
	}
}

// swap exchanges what was measured in two stretches and leaves the stamps, or moves
// the samples as they are.
func (m *mutator) swap() {
	stamps := m.rng.IntN(2) == 0
	if n := len(m.log.Motion) / 3; n > 0 {
		for k := range n {
			a, b := &m.log.Motion[k], &m.log.Motion[len(m.log.Motion)-n+k]
			*a, *b = *b, *a
			if stamps {
				a.T, b.T = b.T, a.T
			}
		}
	}
	if n := len(m.log.Fixes) / 3; n > 0 && m.rng.IntN(2) == 0 {
		for k := range n {
			a, b := &m.log.Fixes[k], &m.log.Fixes[len(m.log.Fixes)-n+k]
			*a, *b = *b, *a
			if stamps {
				a.T, b.T = b.T, a.T
			}
		}
	}
}

func (m *mutator) hole() {
	if n := len(m.log.Motion); n > 0 && m.rng.IntN(3) > 0 {
		i, j := m.stretch(n)
		m.log.Motion = slices.Delete(m.log.Motion, i, j)
	}
	if n := len(m.log.Fixes); n > 0 && m.rng.IntN(3) > 0 {
		i, j := m.stretch(n)
		m.log.Fixes = slices.Delete(m.log.Fixes, i, j)
	}
}

func (m *mutator) bursts() {
	n := 2 + m.rng.IntN(60)
	all := m.log.Motion
	for i := 0; i < len(all); i += n {
		end := min(i+n, len(all))
		last := all[end-1].T
		for k := i; k < end; k++ {
			all[k].T = last + 1e-4*float64(k-end+1)
		}
	}
}

// values are the numbers of a log except for its stamps.
func (m *mutator) values() (columns []func(i int) *float64, lengths []int) {
	add := func(n int, at func(i int) *float64) { columns, lengths = append(columns, at), append(lengths, n) }
	mo, fi, pr := m.log.Motion, m.log.Fixes, m.log.Pressure
	add(len(mo), func(i int) *float64 { return &mo[i].Force.X })
	add(len(mo), func(i int) *float64 { return &mo[i].Force.Y })
	add(len(mo), func(i int) *float64 { return &mo[i].Force.Z })
	add(len(mo), func(i int) *float64 { return &mo[i].Turn.X })
	add(len(mo), func(i int) *float64 { return &mo[i].Turn.Z })
	add(len(fi), func(i int) *float64 { return &fi[i].Speed })
	add(len(fi), func(i int) *float64 { return &fi[i].SpeedSD })
	add(len(fi), func(i int) *float64 { return &fi[i].LatDeg })
	add(len(fi), func(i int) *float64 { return &fi[i].LonDeg })
	add(len(fi), func(i int) *float64 { return &fi[i].Alt })
	add(len(fi), func(i int) *float64 { return &fi[i].BearingDeg })
	add(len(fi), func(i int) *float64 { return &fi[i].HSD })
	add(len(pr), func(i int) *float64 { return &pr[i].Pa })
	return columns, lengths
}

// column draws a column that is not empty, and a part of it.
func (m *mutator) column() (at func(i int) *float64, from, to int) {
	all, n := m.values()
	for range 20 {
		if k := m.rng.IntN(len(all)); n[k] > 0 {
			if m.rng.IntN(2) == 0 {
				return all[k], 0, n[k]
			}
			i, j := m.stretch(n[k])
			return all[k], i, j
		}
	}
	return nil, 0, 0
}

func (m *mutator) noNumbers() {
	at, from, to := m.column()
	x := []float64{math.NaN(), math.Inf(1), math.Inf(-1)}[m.rng.IntN(3)]
	often := 1 + m.rng.IntN(50)
	for i := from; i < to; i += often {
		*at(i) = x
	}
}

func (m *mutator) constant() {
	at, from, to := m.column()
	x := []float64{0, 1, -1, 9.81, 1e-12, 1e5}[m.rng.IntN(6)]
	for i := from; i < to; i++ {
		if m.rng.IntN(1000) == 0 && i > from {
			x = *at(i)
		}
		*at(i) = x
	}
}

func (m *mutator) wildValues() {
	for range 1 + m.rng.IntN(10) {
		at, from, to := m.column()
		if from < to {
			*at(from + m.rng.IntN(to-from)) = m.log10(-3, 12)
		}
	}
}

// scale changes the unit of a sensor, over the whole ride or from one point on.
func (m *mutator) scale() {
	by := []float64{-1, 3.6, 1 / 3.6, 9.80665, 1 / 9.80665, 57.3, 1 / 57.3, 1000, 100, 0.01, 0.9, 1.1, 2.237, 1.944, 0}[m.rng.IntN(15)]
	from := 0.0
	if m.rng.IntN(2) == 0 {
		from = m.rng.Float64()
	}
	switch m.rng.IntN(4) {
	case 0:
		for i := int(from * float64(len(m.log.Motion))); i < len(m.log.Motion); i++ {
			m.log.Motion[i].Force = r3.Scale(by, m.log.Motion[i].Force)
		}
	case 1:
		for i := int(from * float64(len(m.log.Motion))); i < len(m.log.Motion); i++ {
			m.log.Motion[i].Turn = r3.Scale(by, m.log.Motion[i].Turn)
		}
	case 2:
		for i := int(from * float64(len(m.log.Fixes))); i < len(m.log.Fixes); i++ {
			m.log.Fixes[i].Speed *= by
		}
	case 3:
		for i := int(from * float64(len(m.log.Pressure))); i < len(m.log.Pressure); i++ {
			m.log.Pressure[i].Pa *= by
		}
	}
}

func (m *mutator) absent() {
	switch m.rng.IntN(4) {
	case 0:
		m.log.Motion = nil
	case 1:
		m.log.Fixes = nil
	case 2:
		m.log.Pressure = nil
	case 3:
		for i := range m.log.Motion {
			m.log.Motion[i].Turn = r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
		}
	}
}

func (m *mutator) few() {
	m.log.Motion = m.log.Motion[:min(len(m.log.Motion), m.rng.IntN(3000))]
	if m.rng.IntN(2) == 0 {
		m.log.Fixes = m.log.Fixes[:min(len(m.log.Fixes), m.rng.IntN(30))]
	}
}
