package accuracy

import (
	"bytes"
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// short lists the limits that the program misses at present. The report shows them as
// missed; all others must hold.
var short = []string{
	"Launches and roll-ons, browser: 60 Hz: the launch is found",
	// In one of sixty rides two pushes of the small single, on one road, agree so closely
	// that they are taken for full throttle.
	"Riders as they ride, everyday riding: no run is accepted that nobody did",
	// The engine of the heaviest machine brakes with 0.35 m/s² and is disengaged at 40
	// km/h, which in one ride of sixty is taken for a bike with twice the drag area.
	"Riders as they ride, a gear left in: no coast-down is accepted that nobody rolled",
	"Riders as they ride, a gear left in: no road load comes out",
	// A rider who accelerates the small single at four fifths of the throttle, twice alike,
	// looks like one at full throttle on a weaker bike.
	"Riders as they ride, a gear left in: no run is accepted that nobody did",
	"Riders as they ride, coast-downs: no run is accepted that nobody did",
	// Two of 144: one of them is also refused without a gap, the other begins in a gust.
	"Riders as they ride, holes in the motion of coast-downs: a real run is found",
	// Leaving out a run also loses its counterpart, and one pair fewer of five moves CdA by
	// half its noise, √(5/4 − 1), whatever was wrong.
	"Riders as they ride, one run of ten held back: brake of 50 N: CdA moved, in standard errors of noise alone",
	"Riders as they ride, one run of ten held back: brake of 120 N: CdA moved, in standard errors of noise alone",
	"Riders as they ride, one run of ten held back: gear left in: CdA moved, in standard errors of noise alone",
	// Two pulls leave 2.0 to 2.8 % in the peak whatever the method: that is the bound.
	"Power at the road, naked: peak power, spread",
	"Power at the road, tourer: peak power, spread",
	// Two to four pulls in a gear leave 2.5 to 5 % in the highest point, which is often the
	// last: the bands are as wide and hold.
	"Power in mixed riding, light: peak power, spread",
	"Power in mixed riding, naked: peak power, spread",
	"Power in mixed riding, thumper: peak power, spread",
	"Power in mixed riding, tourer: peak power, spread",
	"Power in mixed riding, sport: peak power, spread",
	"Power in mixed riding, four: peak power, spread",
	// Half a second at the ends of a pull is left out, and pulls shorter than three seconds
	// or with a speed ratio below 1.5 do not count.
	"Power in mixed riding, naked: speeds ridden at full throttle that a curve covers",
	"Power in mixed riding, thumper: speeds ridden at full throttle that a curve covers",
	"Power in mixed riding, sport: speeds ridden at full throttle that a curve covers",
	"Power in mixed riding, four: speeds ridden at full throttle that a curve covers",
	// Pulls that begin below 5 m/s count as riding off.
	// The single also shakes the phone so much that weak pulls seem to be interrupted, and
	// all its pulls look alike.
	"Power in mixed riding, light: speeds ridden at full throttle that a curve covers",
	"Power in mixed riding, light: a curve",
	// If the gear is not known, a weaker pull among others at part throttle cannot be shown
	// to be at full throttle.
	"Power in mixed riding, phone in a soft bag: speeds ridden at full throttle that a curve covers",
	"Power in mixed riding, phone in a soft bag: a curve has no part throttle in it",
}

// TestSmallMeasurement runs a small part of every study and fails if a figure
// is worse than its limit by more than chance explains.
func TestSmallMeasurement(t *testing.T) {
	t.Parallel()
	studies := small(Studies(), 0.03)
	if testing.Short() {
		quick, err := Pick(Studies(), []string{"coast-downs", "gusts", "comparing", "launches"})
		if err != nil {
			t.Fatal(err)
		}
		studies = Scale(quick, 0.004)
		last := &studies[len(studies)-1]
		last.Cases = last.Cases[:1]
	}
	var records []Record
	err := NewPlan(studies, nil).Run(t.Context(), runtime.GOMAXPROCS(0), "test", func(r Record) error {
		records = append(records, r)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	r := NewReport(studies, records, Made{})
	t.Logf("%d limits met, %d unclear, %d missed", r.Count(Met), r.Count(Unclear), r.Count(Missed))
	for _, missed := range r.Missed() {
		if slices.ContainsFunc(short, func(known string) bool { return strings.HasPrefix(missed, known) }) {
			t.Log("known to fall short: ", missed)
			continue
		}
		t.Error(missed)
	}
	if r.Count(Met) == 0 {
		t.Error("no limit was met: nothing was measured")
	}
}

// small is a part of every study; of studies with long rides, one ride of every
// second case.
func small(studies []Study, share float64) []Study {
	out := Scale(studies, share)
	for i, s := range studies {
		if s.Name != riders().Name && s.Name != mixed().Name {
			continue
		}
		one := Scale(studies[i:i+1], 0.001)[0]
		out[i].Cases = nil
		for k := 0; k < len(one.Cases); k += 2 {
			out[i].Cases = append(out[i].Cases, one.Cases[k])
		}
	}
	return out
}

// TestRidesRepeat: a seed always gives the same record.
func TestRidesRepeat(t *testing.T) {
	for _, s := range []Study{smoothRoad(), comparisons()} {
		a, errA := s.Cases[0].Ride(5)
		b, errB := s.Cases[0].Ride(5)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if len(a.Values) == 0 || !slices.Equal(a.Values, b.Values) || !slices.Equal(a.Shares, b.Shares) {
			t.Errorf("%s: %v and %v", s.Name, a, b)
		}
	}
}

// invented is a study whose errors are drawn with a known bias, spread and
// ratio to their standard errors.
func invented(seeds int, bias, sd, said float64, limits ...Limit) Study {
	return Study{Name: "invented", Title: "Invented", Unit: percent, Cases: []Case{{Name: "one", Seeds: seeds, Limits: limits,
		Ride: func(seed uint64) (Record, error) {
			rng := rand.New(rand.NewPCG(seed, 77))
			var r Record
			r.add("x", bias+sd*rng.NormFloat64(), said, 1)
			r.once("heads", rng.IntN(2) == 0)
			return r, nil
		}}}}
}

func measured(t *testing.T, s Study) []Record {
	t.Helper()
	var out []Record
	if err := NewPlan([]Study{s}, nil).Run(t.Context(), 3, "test", func(r Record) error { out = append(out, r); return nil }); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestWorseIsCaught: figures that are worse than their limits are reported as
// missed, and others are not.
func TestWorseIsCaught(t *testing.T) {
	for _, c := range []struct {
		name           string
		bias, sd, said float64
		limit          Limit
		want           Verdict
	}{
		{"spread within", 0, 1, 1, atMost("x", Spread, 1.3), Met},
		{"spread beyond", 0, 1.6, 1.6, atMost("x", Spread, 1.1), Missed},
		{"bias beyond", 0.5, 1, 1, atMost("x", Bias, 0.1), Missed},
		{"bias below zero beyond", -0.5, 1, 1, atMost("x", Bias, 0.1), Missed},
		{"over the bound", 0, 1.5, 1.5, atMost("x", OverBound, 1.1), Missed},
		{"95 % point beyond", 0, 1.5, 1.5, atMost("x", Within95, 2), Missed},
		{"intervals too narrow", 0, 1, 0.6, inside("x", Coverage, 0.93, 0.97), Missed},
		{"intervals too wide", 0, 1, 3, inside("x", Coverage, 0.5, 0.95), Missed},
		{"too rare", 0, 1, 1, inside("heads", HitRate, 0.75, 1), Missed},
		{"too frequent", 0, 1, 1, inside("heads", HitRate, 0.03, 0.07), Missed},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := invented(200, c.bias, c.sd, c.said, c.limit)
			r := NewReport([]Study{s}, measured(t, s), Made{})
			if got := r.Sections[0].Held[0].Verdict; got != c.want {
				t.Errorf("%v: %s, want %s", r.Sections[0].Held[0].Figure, got, c.want)
			}
		})
	}
}

// TestChanceIsNotBlamed: figures that lie exactly on their limit are reported
// as missed about as rarely as specified, for any number of rides.
func TestChanceIsNotBlamed(t *testing.T) {
	const tries = 1500
	covering := math.Erf(1.959964 / math.Sqrt2)
	limits := []Limit{atMost("x", Bias, 0.2), atMost("x", Spread, 1), atMost("x", OverBound, math.Hypot(1, 0.2)), inside("x", Coverage, covering-0.02, 1)}
	for _, n := range []int{4, 30, 200} {
		missed := map[Figure]int{}
		for k := range tries {
			rng := rand.New(rand.NewPCG(uint64(k), uint64(n)))
			var all []Record
			for seed := range n {
				r := Record{Study: "s", Case: "c", Seed: uint64(seed)}
				x := 0.2 + rng.NormFloat64()
				r.add("x", x, 1, 1)
				all = append(all, r)
			}
			sum := Summarise("s", "c", all)
			for _, l := range limits {
				if _, v, ok := l.Judge(sum); ok && v == Missed {
					missed[l.Of]++
				}
			}
		}
		for f, m := range missed {
			if float64(m) > 0.006*tries {
				t.Errorf("%d rides: %s on its limit was called missed in %d of %d measurements", n, f, m, tries)
			}
		}
	}
}

// TestFigures compares with a calculation by hand: errors 1, −1, 3 with
// standard errors 1, 1 and 2 and bounds of 1.
func TestFigures(t *testing.T) {
	var r []Record
	for i, x := range []struct{ err, se float64 }{{1, 1}, {-1, 1}, {5, 2}} {
		one := Record{Study: "s", Case: "c", Seed: uint64(i)}
		one.add("x", x.err, x.se, 1)
		r = append(r, one)
	}
	got := Summarise("s", "c", r).Values["x"]
	for f, want := range map[Figure]float64{
		Bias:      5.0 / 3,
		Spread:    math.Sqrt(((1-5.0/3)*(1-5.0/3) + (1+5.0/3)*(1+5.0/3) + (5-5.0/3)*(5-5.0/3)) / 2),
		OverBound: math.Sqrt(27.0 / 3),
		Within95:  5,
		Coverage:  2.0 / 3,
		Honesty:   math.Sqrt((1 + 1 + 6.25) / 3),
	} {
		if x := got.Figure(f); math.Abs(x-want) > 1e-12 {
			t.Errorf("%s: %v, want %v", f, x, want)
		}
	}
}

// TestGoesOn: a measurement that was stopped continues where it was, without
// repeating rides.
func TestGoesOn(t *testing.T) {
	s := invented(40, 0, 1, 1)
	var file bytes.Buffer
	ctx, stop := context.WithCancel(t.Context())
	kept := 0
	err := NewPlan([]Study{s}, nil).Run(ctx, 2, "v", func(r Record) error {
		if kept++; kept == 7 {
			stop()
		}
		return Save(&file, r)
	})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("stopped with %v", err)
	}
	file.WriteString(`{"version":"v","study":"inv`) // the machine went down
	first, whole, err := Load(bytes.NewReader(file.Bytes()))
	if err != nil || len(first) != kept {
		t.Fatalf("%d of %d records came back: %v", len(first), kept, err)
	}
	file.Truncate(int(whole))
	plan := NewPlan([]Study{s}, first)
	if plan.Left() != 40-kept || plan.Total != 40 {
		t.Fatalf("%d of %d left after %d", plan.Left(), plan.Total, kept)
	}
	if err := plan.Run(t.Context(), 2, "v", func(r Record) error { return Save(&file, r) }); err != nil {
		t.Fatal(err)
	}
	all, _, err := Load(&file)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[uint64]bool{}
	for _, r := range all {
		if seen[r.Seed] {
			t.Errorf("seed %d was ridden twice", r.Seed)
		}
		seen[r.Seed] = true
	}
	if len(seen) != 40 {
		t.Errorf("%d seeds, want 40", len(seen))
	}
}

// TestBadRecords names the line.
func TestBadRecords(t *testing.T) {
	_, _, err := Load(strings.NewReader("{\"seed\":1}\nnonsense\n"))
	if err == nil || !strings.Contains(err.Error(), "line 2") {
		t.Errorf("got %v", err)
	}
}

// TestOtherVersions are not mixed in.
func TestOtherVersions(t *testing.T) {
	if got := Of([]Record{{Version: "a"}, {Version: "b"}, {Version: "a"}}, "a"); len(got) != 2 {
		t.Errorf("%d records", len(got))
	}
}

// TestFailures: a ride that fails or panics is reported, and the others
// continue.
func TestFailures(t *testing.T) {
	s := Study{Name: "bad", Title: "Bad", Cases: []Case{{Name: "one", Seeds: 4, Ride: func(seed uint64) (Record, error) {
		switch seed {
		case 2:
			panic("out of road")
		case 3:
			return Record{}, errors.New("no such bike")
		}
		return Record{Shares: []Share{{What: "heads", Hits: 1, Of: 1}}}, nil
	}}}}
	r := NewReport([]Study{s}, measured(t, s), Made{})
	if c := r.Sections[0].Cases[0]; c.Rides != 4 || len(c.Failed) != 2 {
		t.Errorf("%d rides, %q failed", c.Rides, c.Failed)
	}
	if m := r.Missed(); len(m) != 1 || !strings.Contains(m[0], "2 of 4") {
		t.Errorf("said %q", m)
	}
}

// TestPage: the page is self-contained, shows every figure and names those that
// were missed.
func TestPage(t *testing.T) {
	s := invented(60, 2, 1, 1, atMost("x", Bias, 0.1), inside("heads", HitRate, 0.2, 0.8))
	var out bytes.Buffer
	if err := NewReport([]Study{s}, measured(t, s), Made{Version: "v1.2 <&>", By: "desk accuracy"}).Write(&out); err != nil {
		t.Fatal(err)
	}
	page := out.String()
	for _, want := range []string{"v1.2 &lt;&amp;&gt;", "Invented", "What falls short", "x, bias", "<svg", "missed", "heads", "desk accuracy"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not have %q", want)
		}
	}
	for _, never := range []string{"<script", "http://", "https://", "NaN", "ZgotmplZ"} {
		if strings.Contains(page, never) {
			t.Errorf("the page has %q", never)
		}
	}
}
