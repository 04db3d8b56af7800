package view

import (
	"strings"
	"testing"

	"stillair/app/text"
	"stillair/runs"
	"stillair/runs/compare"
)

// TestSaid checks the text of each verdict: a direction only if a difference is
// shown, the estimate and its band always.
func TestSaid(t *testing.T) {
	verdict := func(f compare.Finding, percent, lo, hi float64) compare.Verdict {
		return compare.Verdict{Finding: f, Percent: percent, CIPercent: [2]float64{lo, hi}, MorePairs: 3}
	}
	one, beyond := verdict(compare.CannotTell, 4, -1, 9), verdict(compare.CannotTell, 4, -1, 9)
	one.MorePairs, beyond.Beyond = 1, true
	for _, tt := range []struct {
		name string
		v    compare.Verdict
		want Said
	}{
		{"more", verdict(compare.Differs, 9, 6.2, 11.8), Said{More, "9.0 % more drag", "Sure (95 %: 6.2 to 11.8 %)"}},
		{"less", verdict(compare.Differs, -9, -11.8, -6.2), Said{Less, "9.0 % less drag", "Sure (95 %: 6.2 to 11.8 %)"}},
		{"none that matters", verdict(compare.NoneShown, -1, -3, 1), Said{NoDirection, "No difference that matters", "Estimate −1.0 % (95 %: −3.0 to +1.0 %)"}},
		{"not clear", verdict(compare.CannotTell, 4, -1, 9), Said{NoDirection, "Not clear yet", "Estimate +4.0 % (95 %: −1.0 to +9.0 %). About 3 more pairs needed."}},
		{"one more pair", one, Said{NoDirection, "Not clear yet", "Estimate +4.0 % (95 %: −1.0 to +9.0 %). About one more pair needed."}},
		{"never clear", beyond, Said{NoDirection, "Not clear", "Estimate +4.0 % (95 %: −1.0 to +9.0 %). A calmer day helps more than more pairs."}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := english()
			if got := c.said(tt.v, c.Book.Compare.MoreDrag, c.Book.Compare.LessDrag); got != tt.want {
				t.Errorf("got  %+v\nwant %+v", got, tt.want)
			}
		})
	}
}

// TestAnswers checks that a ride's answer states the effect of the difference
// at the rider's speed, calculated by hand as in TestEffectsByHand for 80 km/h:
// ½·1.2·0.05·22.2³ = 329 W, which at a third of the heat of petrol, 32 MJ a
// litre, are 0.14 l over 100 km; that the answer is about power if drag was not
// measured; and that a single setup has no answer.
func TestAnswers(t *testing.T) {
	res := invented()
	got := english().Answers(res, CompareAsk{})
	if len(got) != 1 || got[0].Direction != More || len(got[0].Means) != 2 || !strings.HasPrefix(got[0].Means[0], "Power at 80 km/h: +0.33") ||
		!strings.HasPrefix(got[0].Means[1], "Petrol at 80 km/h, about: +0.14") {
		t.Fatalf("got %+v", got)
	}
	res.Compared = []runs.Comparison{{A: "bare", B: "silencer", Power: &compare.Verdict{Finding: compare.Differs, Percent: -5, CIPercent: [2]float64{-7, -3}}}}
	if got := (Context{Book: text.German()}).Answers(res, CompareAsk{}); len(got) != 1 || got[0].Verdict != "5,0 % weniger Leistung" {
		t.Errorf("power gives %+v", got)
	}
	res.Compared = nil
	if got := english().Answers(res, CompareAsk{}); len(got) != 0 {
		t.Errorf("nothing compared gives %+v", got)
	}
}
