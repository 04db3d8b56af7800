package engine

// Line is what shakes a phone so many times in every metre, at whatever speed.
type Line struct {
	PerMetre float64 // 1/m
	Clear    float64 // mean of ln(1 + power over noise) of its frames: 0.6 where there is only noise
	Frames   int
}

// Locked finds the clearest line between two numbers of turns per metre that is
// tied to the road: the same turns in every metre while the speed changes. Of
// several axes that felt the same the one that shows it best counts. The zero Line
// stands for a signal too short to tell.
func Locked(sigs []Signal, low, high float64) Line {
	best := Line{}
	for _, sig := range sigs {
		if sig.check() != nil {
			continue
		}
		frames := sig.frames()
		if len(frames) < 4 {
			continue
		}
		sig.X = whiten(sig.X)
		g := evenGrid(sig, frames, low, high, []float64{1})
		all := g.scores(sig, frames).byOrder[0]
		i := peak(all)
		if clear := all[i] / float64(len(frames)); clear > best.Clear {
			best = Line{g.q(i), clear, len(frames)}
		}
	}
	return best
}

// Strength is how far the line stands out of noise, in standard deviations of one
// place of the search.
func (l Line) Strength() float64 {
	return strength(l.Clear*float64(l.Frames), l.Frames)
}
