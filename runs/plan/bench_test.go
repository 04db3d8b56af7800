package plan

import "testing"

// BenchmarkPlans makes plans that are not sufficient, so that improvements are
// tried as well.
func BenchmarkPlans(b *testing.B) {
	for _, q := range []PushQuestion{
		{Push: Pulls, Setups: 2, Change: 0.005},
		{Push: Launches, Mark: "0-100 km/h", Setups: 2, Change: 0.02},
		{Push: Launches, Mark: "1/4 mile", Setups: 2, Change: 0.02},
		{Push: RollOns, Setups: 2, Change: 0.02},
	} {
		b.Run(string(q.Push)+" "+q.Mark, func(b *testing.B) {
			for b.Loop() {
				if _, err := MakePush(q, DefaultPush(q.Push, naked(), 1.5)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("coast-downs", func(b *testing.B) {
		for b.Loop() {
			if _, err := Make(Question{Setups: 2, CdA: 0.005}, DefaultConditions(naked(), 1.5)); err != nil {
				b.Fatal(err)
			}
		}
	})
}
