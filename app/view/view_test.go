package view

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/app/text"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/measure"
	"stillair/sensors"
	"stillair/sensors/finding"
)

func english() Context  { return Context{Book: text.English()} }
func german() Context   { return Context{Book: text.German()} }
func imperial() Context { return Context{Book: text.English(), System: shown.Imperial} }

func TestNumbersWithUnits(t *testing.T) {
	// Exact by definition: a mile is 1609.344 m, a pound 0.45359237 kg (NIST SP 811, appendix B).
	for _, c := range []struct{ name, got, want string }{
		{"km/h", english().SpeedText(27.7778), "100"},
		{"mph", imperial().SpeedText(26.8224), "60"},
		{"kg", english().Mass(290), "290 kg"},
		{"lb", imperial().Mass(45.359237), "100 lb"},
		{"unknown mass", english().Mass(math.NaN()), "unknown"},
		{"metres", english().Length(66), "66 m"},
		{"kilometres", english().Length(38_200), "38.2 km"},
		{"feet", imperial().Length(30.48), "100 ft"},
		{"miles", imperial().Length(1609.344), "1.0 mi"},
		{"seconds", english().Duration(12), "12 s"},
		{"minutes", english().Duration(2520), "42 min"},
		{"hours", english().Duration(3*3600 + 5*60), "3 h 05 min"},
		{"decimal comma", german().Number(0.551, 3), "0,551"},
		{"minus", english().Number(-1.2, 1), "−1.2"},
		{"no minus at zero", english().Number(-0.04, 1), "0.0"},
		{"not a number", english().Number(math.NaN(), 1), "–"},
		{"date", german().Date(time.Date(2026, 3, 1, 9, 5, 0, 0, time.UTC)), "So 1. Mär, 09:05"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// TestReadingsAreRounded follows JCGM 100:2008, 7.2.6: no more digits than the
// uncertainty supports. Its own example: 10,057 62 Ω with 27 mΩ becomes 10,058
// Ω.
func TestReadingsAreRounded(t *testing.T) {
	for _, c := range []struct {
		name         string
		x, half      float64
		number, plus string
	}{
		{"the guide's example", 10.05762, 0.027, "10.058", "0.027"},
		{"one digit, to the nearest", 4.3123, 0.0804, "4.31", "0.08"},
		{"fine", 4.3123, 0.0004, "4.3123", "0.0004"},
		{"coarse", 51.4, 4.2, "51", "4"},
		{"none known", 4.3123, 0, "4.31", ""},
		{"infinite", 4.3123, math.Inf(1), "4.31", ""},
	} {
		r := english().reading(shown.Time, c.x, c.half)
		if r.Number != c.number || r.Spread != c.plus {
			t.Errorf("%s: %q ± %q, want %q ± %q", c.name, r.Number, r.Spread, c.number, c.plus)
		}
	}
}

func TestReadTakesWhatRidersType(t *testing.T) {
	for _, c := range []struct {
		name, typed string
		c           Context
		q           Quantity
		want        float64
		err         error
	}{
		{"kilograms", "290", english(), english().MassQuantity(60, 1500), 290, nil},
		{"decimal comma", "290,5", english(), english().MassQuantity(60, 1500), 290.5, nil},
		{"pounds", "640", imperial(), imperial().MassQuantity(60, 1500), 640 * 0.45359237, nil},
		{"bar", "2,5", german(), german().TyreQuantity(), 250, nil},
		{"psi", "36", imperial(), imperial().TyreQuantity(), 36 * 6.894757, nil},
		{"Fahrenheit", "68", imperial(), imperial().TemperatureQuantity(), 20, nil},
		{"rpm at 100 km/h", "4500", english(), english().GearQuantity(), 162, nil},
		{"words", "heavy", english(), english().MassQuantity(60, 1500), 0, ErrNotNumber},
		{"grams", "290000", english(), english().MassQuantity(60, 1500), 0, ErrOutOfRange},
		{"NaN", "NaN", english(), english().MassQuantity(60, 1500), 0, ErrNotNumber},
	} {
		p, err := c.c.Read(c.typed, c.q)
		if !errors.Is(err, c.err) {
			t.Errorf("%s: err = %v, want %v", c.name, err, c.err)
			continue
		}
		if err == nil && math.Abs(*p-c.want) > 1e-4*math.Abs(c.want) {
			t.Errorf("%s: %g, want %g", c.name, *p, c.want)
		}
		if err == nil {
			back, err := c.c.Read(c.c.Write(p, c.q), c.q)
			if err != nil || math.Abs(*back-*p) > 0.01*math.Abs(*p) {
				t.Errorf("%s: written and read again it is %v, %v", c.name, back, err)
			}
		}
	}
	if p, err := english().Read("  ", english().MassQuantity(60, 1500)); p != nil || err != nil {
		t.Errorf("nothing typed gives %v, %v", p, err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add("290")
	f.Add("1e309")
	f.Add("2,5,5")
	f.Fuzz(func(t *testing.T, typed string) {
		c, q := german(), german().MassQuantity(60, 1500)
		p, err := c.Read(typed, q)
		if err == nil && p != nil && !(*p >= q.Low && *p <= q.High) {
			t.Errorf("%q was taken as %g", typed, *p)
		}
	})
}

// load is a road load of n pairs whose half width is t/√n times a spread in
// percent between pairs.
func load(n int, percent float64) runs.RoadLoad {
	dof := float64(n - 1)
	h := 0.55 * percent / 100 / math.Sqrt(float64(n)) * measure.Quantile(0.95, dof)
	return runs.RoadLoad{Pairs: n, CdA: measure.Value{X: 0.55}, DoF: dof, CdACI: [2]float64{0.55 - h, 0.55 + h}}
}

// TestMorePairs compares the advice with Student's table: with three pairs
// t(0.975; 2) = 4.303, with four 3.182, with five 2.776 (any table of t).
func TestMorePairs(t *testing.T) {
	now, more, then := english().gain(load(3, 3))
	if math.Abs(now-3*4.303/math.Sqrt(3)) > 0.01 {
		t.Errorf("now ± %.3f %%", now)
	}
	want := map[int]float64{1: 3 * 3.182 / 2, 2: 3 * 2.776 / math.Sqrt(5), 3: 3 * 2.571 / math.Sqrt(6), 4: 3 * 2.447 / math.Sqrt(7)}[more]
	if more == 0 || math.Abs(then-want) > 0.01 {
		t.Errorf("with %d more ± %.3f %%, want %.3f", more, then, want)
	}
	if _, more, _ := english().gain(load(12, 1)); more != 0 {
		t.Errorf("twelve calm pairs are advised %d more", more)
	}
	if s := english().morePairs(load(1, 3)); s != text.English().Load.OnlyOne {
		t.Errorf("one pair reads %q", s)
	}
}

func TestReasonsInOtherUnits(t *testing.T) {
	braked := finding.New("coast.braked", finding.Speed("at", 100/3.6))
	for _, c := range []struct {
		name, want string
		c          Context
	}{
		{"km/h", "at 100 km/h", english()}, {"mph", "at 62 mph", imperial()}, {"German", "bei 100 km/h", german()},
	} {
		if got := c.c.tell(braked); !strings.Contains(strings.ToLower(got), c.want) {
			t.Errorf("%s: %q, want %q in it", c.name, got, c.want)
		}
	}
}

// TestEverySensorStateIsSaid goes through all conditions of all sensors: each
// has a text, and what cannot work is never called fine.
func TestEverySensorStateIsSaid(t *testing.T) {
	nan := math.NaN()
	for _, cond := range []sensors.Condition{"", sensors.Working, sensors.Asking, sensors.Denied, sensors.Missing, sensors.Silent, sensors.Available} {
		for _, name := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorFix} {
			sense := recorder.Sense{Sensor: name, Condition: cond, Rate: nan, HSD: nan, SpeedSD: nan}
			for _, l := range english().Ready(ReadyState{Senses: []recorder.Sense{sense}, Free: 1 << 40}).Senses {
				if l.Title == "" || l.Words == "" || strings.Contains(l.Words, "%!") {
					t.Errorf("%s %q: says %q", name, cond, l.Words)
				}
				if l.Sensor == name && l.Grade == Fine && cond != sensors.Working {
					t.Errorf("%s %q counts as fine", name, cond)
				}
			}
		}
	}
}

func TestStartNeedsSatellitesAndRoom(t *testing.T) {
	fix := func(c sensors.Condition) []recorder.Sense {
		return []recorder.Sense{{Sensor: sensors.SensorFix, Condition: c, Rate: 1, HSD: 3}}
	}
	for _, c := range []struct {
		name string
		s    ReadyState
		can  bool
	}{
		{"all well", ReadyState{Senses: fix(sensors.Working), Free: 1 << 40}, true},
		{"still searching", ReadyState{Senses: fix(""), Free: 1 << 40}, true},
		{"denied", ReadyState{Senses: fix(sensors.Denied), Free: 1 << 40}, false},
		{"missing", ReadyState{Senses: fix(sensors.Missing), Free: 1 << 40}, false},
		{"full", ReadyState{Senses: fix(sensors.Working), Free: 1 << 20}, false},
		{"room unknown", ReadyState{Senses: fix(sensors.Working), Free: -1}, true},
	} {
		if got := english().Ready(c.s); got.CanStart != c.can || got.Hint == "" {
			t.Errorf("%s: can start %v, says %q", c.name, got.CanStart, got.Hint)
		}
	}
}

func TestAxes(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		first  string
		last   string
	}{{0, 163, "0", "200"}, {0, 1, "0.0", "1.0"}, {-0.3, 0.3, "−0.4", "0.4"}, {0, 47, "0", "50"}} {
		a := english().axisOf("", c.lo, c.hi, 5)
		if a.Min > c.lo || a.Max < c.hi || a.Ticks[0].Text != c.first || a.Ticks[len(a.Ticks)-1].Text != c.last {
			t.Errorf("%g to %g: axis %g to %g, ticks %v", c.lo, c.hi, a.Min, a.Max, a.Ticks)
		}
	}
}

// TestGuideCurve checks the textbook roll of the guide's picture: the time from
// one speed to another has the closed form (atan(v₁√(c/a)) − atan(v₂√(c/a)))/√(ac)
// (e.g. 40 CFR 1066.301's equation of motion, integrated).
func TestGuideCurve(t *testing.T) {
	const a, c, v1, v2 = 0.18, 0.00115, 27.0, 12.0
	k := math.Sqrt(c / a)
	dt := (math.Atan(v1*k) - math.Atan(v2*k)) / math.Sqrt(a*c)
	if v := exactRoll(v1, a, c, dt); math.Abs(v-v2) > 1e-9 {
		t.Errorf("after %.2f s the speed is %.4f m/s, want %g", dt, v, v2)
	}
}

func TestFoundInTheList(t *testing.T) {
	a := store.About{Started: time.Unix(0, 0), Measured: time.Unix(1, 0), Found: store.Found{Launches: 1, CoastDowns: 4, Pairs: 2}}
	if got := english().RideRow(store.Session{About: a}).Found; got != "1 launch · 4 coast-downs · 2 pairs" {
		t.Errorf("found %q", got)
	}
	a.Found = store.Found{}
	if got := english().RideRow(store.Session{About: a}).Found; got != "nothing found" {
		t.Errorf("found %q", got)
	}
}

// TestOneFigureForSteadySpeed checks that the screen of a setup and the one of
// compared setups tell the same power at a steady speed.
func TestOneFigureForSteadySpeed(t *testing.T) {
	c, res := english(), invented()
	res.RoadLoads[0].Crr.X, res.RoadLoads[0].CdACI, res.RoadLoads[0].CrrCI = 0.018, [2]float64{0.48, 0.52}, [2]float64{0.017, 0.019}
	at := res.AtSpeed(c.reference())[0]
	if got, want := c.Load(res, res.RoadLoads[0]).Power, c.of(shown.Power, at.Power).Spoken(); !strings.Contains(got, want) {
		t.Errorf("%q does not say %s", got, want)
	}
}

// TestParagraphsAreSentences: what stands on a screen as a paragraph begins with a
// capital letter and ends with a full stop.
func TestParagraphsAreSentences(t *testing.T) {
	why := finding.New("coast.braked", finding.Speed("at", 62/3.6))
	for _, c := range []Context{english(), german()} {
		r := runs.Run{ID: 1, Kind: runs.CoastDown, Reasons: []finding.Finding{why}, Cautions: []finding.Finding{finding.New("pair.no_counterpart")}}
		res := &runs.Result{Runs: []runs.Run{r}}
		load := runs.RoadLoad{Notes: []finding.Finding{finding.New("load.pairs_disagree", finding.Count("pairs", 1))}}
		v := c.Run(res, r)
		for _, s := range append(append(v.Reasons, v.Cautions...), c.Load(res, load).Notes...) {
			if !strings.HasSuffix(s, ".") || strings.HasSuffix(s, "..") || strings.ToUpper(s[:1]) != s[:1] {
				t.Errorf("%s: %q is no sentence", c.Book.Tag, s)
			}
		}
	}
}

// TestCautionsFitTheTest: what a full-throttle test warns of happens in one. Nothing
// is ridden with the clutch in there.
func TestCautionsFitTheTest(t *testing.T) {
	for _, c := range []struct {
		ctx    Context
		clutch string
	}{{english(), "clutch"}, {german(), "Kupplung"}} {
		for _, what := range []Matter{DragMatters, TopMatters, PowerMatters, TimeMatters} {
			all := strings.Join(c.ctx.PlanCautions(Asked{What: what}), " ")
			if got := strings.Contains(all, c.clutch); got == what.Pushes() {
				t.Errorf("%s, matter %d: %q", c.ctx.Book.Tag, what, all)
			}
		}
	}
}
