package view

import (
	"fmt"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/compare"
)

// SoFar is the result of the coast-downs while the ride continues.
type SoFar struct {
	Pairs   []string // done with each setup
	Answers []SoFarAnswer
	Load    Reading // CdA of the only setup
	Next    string  // of the only setup: whether one more pair helps
}

// SoFarAnswer is whether two setups differ, and what one more pair would bring.
type SoFarAnswer struct {
	Pair string
	Said
	Next string
}

func (c Context) soFar(res *runs.Result) SoFar {
	v := SoFar{}
	for _, l := range res.RoadLoads {
		v.Pairs = append(v.Pairs, c.setupName(l.Setup)+": "+c.pairs(l.Pairs))
	}
	for _, x := range res.Compared {
		if x.CdA != nil {
			a := SoFarAnswer{Pair: c.pairName(x), Said: c.said(*x.CdA, c.Book.Compare.MoreDrag, c.Book.Compare.LessDrag), Next: c.nextPair(*x.CdA)}
			v.Answers = append(v.Answers, a)
		}
	}
	if len(v.Answers) == 0 && len(res.RoadLoads) > 0 {
		l := res.RoadLoads[len(res.RoadLoads)-1]
		v.Load, v.Next = c.reading(shown.Area, l.CdA.X, (l.CdACI[1]-l.CdACI[0])/2), c.morePairs(l)
	}
	return v
}

// pairChance is the chance from which one more pair is recommended: one in
// four. Below it the rider rides more than one, or waits for a calmer day.
const pairChance = 0.25

// nextPair reports whether one more pair with each setup is recommended.
func (c Context) nextPair(v compare.Verdict) string {
	t := c.Book.Riding
	now, then := c.Number((v.CIPercent[1]-v.CIPercent[0])/2, 1), c.Number(v.Next.Half, 1)
	tenths := int(10*v.Next.Chance + 0.5)
	switch {
	case v.Finding != compare.CannotTell:
		return fmt.Sprintf(t.NextDone, now, then)
	case v.Next.Chance >= pairChance:
		return fmt.Sprintf(t.NextWorth, tenths, now, then)
	case tenths == 0:
		return fmt.Sprintf(t.NextHardly, now, then)
	}
	return fmt.Sprintf(t.NextNot, tenths, now, then)
}
