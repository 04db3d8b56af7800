package season

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// truth is an invented bike: the drag area of its base, and the effects of parts.
type truth struct {
	base  float64
	parts map[string]float64
	with  func(setup string) float64 // additional effect of setups; nil: none
}

func (t truth) cda(setup string) float64 {
	x := t.base
	for _, p := range Parts(setup) {
		x += t.parts[p]
	}
	if t.with != nil {
		x += t.with(setup)
	}
	return x
}

var inventedBike = truth{base: 0.55, parts: map[string]float64{"short screen": 0, "tall screen": 0.045, "panniers": 0.06, "top box": 0.025, "hand guards": 0.008}}

var setupsRidden = []string{"short screen", "tall screen", "short screen + panniers", "tall screen + panniers", "tall screen + panniers + top box",
	"short screen + hand guards", "tall screen + hand guards", "short screen + top box"}

// student draws from Student's t with five degrees of freedom, scaled to a
// variance of 1: noise with longer tails than in the fit's model.
func student(rng *rand.Rand) float64 {
	chi := 0.0
	for range 5 {
		chi += math.Pow(rng.NormFloat64(), 2)
	}
	return rng.NormFloat64() / math.Sqrt(chi/5) * math.Sqrt(3.0/5)
}

// invented makes a season that deviates from the model of this package: days
// differ uniformly rather than normally, noise has long tails, its size is only
// known to a fifth, and assumptions are wrong in all rides in the same way.
func invented(seed uint64, bike truth, rides int) []Ride {
	rng := rand.New(rand.NewPCG(seed, 99))
	const assumed = 0.03
	wrong := assumed * rng.NormFloat64()
	var out []Ride
	for i := range rides {
		r := Ride{Name: fmt.Sprint("ride ", i+1), Bike: "invented"}
		day := 0.015 * math.Sqrt(3) * (2*rng.Float64() - 1) * bike.base
		n := 1 + rng.IntN(3)
		if i < len(setupsRidden) {
			n = 2
		}
		noise := map[string]float64{}
		for k := range n {
			setup := setupsRidden[(i+k*(1+rng.IntN(len(setupsRidden)-1)))%len(setupsRidden)]
			if _, twice := noise[setup]; twice {
				continue
			}
			real := 0.006 * math.Exp(0.3*rng.NormFloat64())
			said := real * (1 + 0.2*(2*rng.Float64()-1))
			noise[setup] = said
			r.Loads = append(r.Loads, Load{Setup: setup, Noise: said, CdA: measure.Value{X: bike.cda(setup) + day + wrong + real*student(rng), SE: math.Hypot(said, assumed)}})
		}
		for a := range r.Loads {
			for b := a + 1; b < len(r.Loads); b++ {
				r.Apart = append(r.Apart, Difference{A: r.Loads[a].Setup, B: r.Loads[b].Setup,
					CdA: measure.Value{X: r.Loads[b].CdA.X - r.Loads[a].CdA.X, SE: math.Hypot(r.Loads[a].Noise, r.Loads[b].Noise)}})
			}
		}
		out = append(out, r)
	}
	return out
}

// TestSeasonRecovers simulates many seasons of 20 rides: the intervals of the
// costs of parts have their nominal coverage.
func TestSeasonRecovers(t *testing.T) {
	seasons := 400
	if testing.Short() {
		seasons = 100
	}
	held, of, widened := 0, 0, 0
	bias := map[string]float64{}
	for seed := range uint64(seasons) {
		b, err := NewBudget(invented(seed, inventedBike, 20), "short screen")
		if err != nil {
			t.Fatal(err)
		}
		if b.Widened > 1 {
			widened++
		}
		if len(b.Effects) != 4 {
			t.Fatalf("season %d: %d effects", seed, len(b.Effects))
		}
		for _, e := range b.Effects {
			want := inventedBike.parts[e.Part]
			of++
			if e.CI[0] <= want && want <= e.CI[1] {
				held++
			}
			bias[e.Part] += (e.CdA.X - want) / float64(seasons)
		}
	}
	share := float64(held) / float64(of)
	t.Logf("%d seasons: %.1f %% of %d intervals hold, %d widened", seasons, 100*share, of, widened)
	if !(share > 0.93 && share < 0.98) {
		t.Errorf("%.1f %% of the intervals hold, want 95 %%", 100*share)
	}
	for part, b := range bias {
		if math.Abs(b) > 0.0015 {
			t.Errorf("%s: bias of %.4f m²", part, b)
		}
	}
}

// TestSeasonNotices simulates two parts with an interaction far above the
// noise: their joint cost is not the sum, and the season must report that.
func TestSeasonNotices(t *testing.T) {
	bike := inventedBike
	bike.with = func(setup string) float64 {
		if setup == "tall screen + panniers" || setup == "tall screen + panniers + top box" {
			return -0.08
		}
		return 0
	}
	b, err := NewBudget(invented(5, bike, 20), "short screen")
	if err != nil {
		t.Fatal(err)
	}
	if b.Widened <= 1 || !finding.Any(b.Notes, codeDisagree) {
		t.Errorf("χ² of %.0f at %d degrees of freedom passes unnoticed", b.Chi2, b.DoF)
	}
}

// TestBudgetByHand compares the fit with calculations by hand.
func TestBudgetByHand(t *testing.T) {
	load := func(setup string, x float64) Load {
		return Load{Setup: setup, CdA: measure.Value{X: x, SE: 0.03}, Noise: 0.004, Day: 0.01}
	}
	ride := func(a, b Load, se float64) Ride {
		return Ride{Loads: []Load{a, b}, Apart: []Difference{{a.Setup, b.Setup, measure.Value{X: b.CdA.X - a.CdA.X, SE: se}}}}
	}
	t.Run("two differences of equal weight", func(t *testing.T) {
		b, err := NewBudget([]Ride{ride(load("stock", 0.50), load("stock + box", 0.52), 0.01), ride(load("stock", 0.50), load("stock + box", 0.54), 0.01)}, "stock")
		if err != nil {
			t.Fatal(err)
		}
		// The mean of 0.02 and 0.04, with 0.01 over the root of two; the days add nothing,
		// since their means contain both setups.
		e := b.Effects[0]
		if len(b.Effects) != 1 || e.Part != "box" || math.Abs(e.CdA.X-0.03) > 1e-9 || math.Abs(e.CdA.SE-0.01/math.Sqrt2) > 1e-6 {
			t.Errorf("%+v", b.Effects)
		}
	})
	t.Run("by way of a third", func(t *testing.T) {
		b, err := NewBudget([]Ride{ride(load("a", 0.50), load("b", 0.53), 0.004), ride(load("b", 0.53), load("c", 0.58), 0.003)}, "a")
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range b.Effects {
			want := map[string]float64{"b": 0.03, "c": 0.08}[e.Part]
			if e.Instead != "a" || math.Abs(e.CdA.X-want) > 2e-3 {
				t.Errorf("%+v, want %v in the place of a", e, want)
			}
		}
		if len(b.Effects) != 2 || !(b.Cov.At(0, 1) > 0) {
			t.Errorf("two effects by way of the same ride do not go together: %+v", b.Effects)
		}
	})
	t.Run("one setup", func(t *testing.T) {
		if _, err := NewBudget([]Ride{{Loads: []Load{load("a", 0.5)}}}, ""); err == nil {
			t.Error("a budget of one setup")
		}
	})
	t.Run("no such base", func(t *testing.T) {
		if _, err := NewBudget([]Ride{ride(load("a", 0.50), load("b", 0.53), 0.004)}, "c"); err == nil {
			t.Error("a budget from a setup that was never ridden")
		}
	})
}
