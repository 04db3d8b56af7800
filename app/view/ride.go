package view

import (
	"fmt"
	"math"
	"strings"

	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/finding"
)

// Ride is the screen of the results of one recording.
type Ride struct {
	Title, When, Length string
	Saved               string // how the recording ended, just after the ride
	Invented            bool
	Answers             []Answer // whether its setups differ; shown first
	Loads               []LoadCard
	NoPairs             bool // there are coast-downs but no pair
	Runs                []RunRow
	Rejected            []RunRow
	Advice              bool // there were coast-downs, and something to say about them
	Power               bool // there are curves of power
	Stops               []StopRow
	Passes              []PassRow
	Warnings            []string
	Notes               []string
	Sensed              []SenseLine // how the sensors worked
}

// RunRow is one run in the list.
type RunRow struct {
	ID      int
	Kind    runs.Kind
	Title   string
	Reading Reading
	Detail  string
	Reason  string // why it does not count
	X, Y    []float64
	Spoken  string
}

// LoadCard is the road load of one setup, in short.
type LoadCard struct {
	Index    int
	Setup    string
	CdA, Crr Reading
	Pairs    string
}

// Ride makes the screen of the results of a recording; senses is how its
// sensors worked, and may be empty.
func (c Context) Ride(s store.Session, res *runs.Result, senses []recorder.Sense, coarse bool) Ride {
	row := c.RideRow(s)
	r := Ride{Title: row.Title, When: join(" · ", row.When, row.Bike), Length: row.Length}
	for i, l := range res.RoadLoads {
		r.Loads = append(r.Loads, c.loadCard(i, l))
	}
	coasts := 0
	for _, run := range res.Runs {
		if run.Kind == runs.CoastDown {
			coasts++
		}
		if run.Accepted() {
			r.Runs = append(r.Runs, c.runRow(res, run))
			continue
		}
		r.Rejected = append(r.Rejected, c.runRow(res, run))
	}
	r.NoPairs, r.Advice = coasts > 0 && len(res.RoadLoads) == 0, coasts > 0
	for _, w := range res.Warnings {
		r.Warnings = append(r.Warnings, c.sentence(w))
	}
	if s.About.AirOld && (s.About.Values == nil || s.About.Values.Air == (store.Air{})) {
		r.Warnings = append(r.Warnings, c.AirOld(s.About.AirEntered)+" "+c.Book.Parts.AirOldRide)
	}
	if coarse {
		r.Warnings = append(r.Warnings, c.Book.Ride.CoarseTiming)
	}
	r.Sensed = c.Sensed(senses, res.Track)
	r.Notes, r.Power, r.Stops = append(c.computedWith(res, s.About.Values), c.rideNotes(res)...), len(res.Powers) > 0, c.stops(res.Runs)
	r.Passes = c.passes(res.Passes)
	return r
}

func (c Context) rideNotes(res *runs.Result) []string {
	var out []string
	if len(res.Defaults) > 0 {
		var names []string
		for _, d := range res.Defaults {
			names = append(names, c.fieldName(d))
		}
		out = append(out, c.named(nameAssumed)+": "+strings.Join(names, "; "))
	}
	for _, n := range res.Notes {
		out = append(out, c.say().NoteSentence(n))
	}
	return out
}

// fieldName is the name of a field of ride.json on the screens.
func (c Context) fieldName(f string) string {
	t := c.Book
	switch f {
	case "mass_kg":
		return t.Bikes.Mass
	case "mass_sd_kg":
		return t.Bikes.MassSD
	case "rotating_mass_kg":
		return t.Bikes.Rotating
	case "air":
		return t.More.AirTitle
	case "air.temperature_c", "temperature_c":
		return t.More.Temperature
	case "air.pressure_hpa", "pressure_hpa":
		return t.More.Pressure
	case "air.humidity_pct", "humidity_pct":
		return t.More.Humidity
	case "wind_sd_mps":
		return t.More.Wind
	}
	return t.Say(f)
}

func (c Context) runRow(res *runs.Result, r runs.Run) RunRow {
	row := RunRow{ID: r.ID, Kind: r.Kind, Title: c.kindName(r.Kind), Detail: c.runDetail(r)}
	row.X, row.Y = trackSpeed(res, r.Start, r.End, 60)
	if len(r.Reasons) > 0 {
		row.Reason = c.sentence(r.Reasons[0])
	}
	if m, ok := c.headline(r); ok && r.Kind != runs.CoastDown {
		row.Title += ", " + c.markName(m.Name)
		switch {
		case r.Kind == runs.Stop && !math.IsNaN(m.Distance.X):
			row.Reading = c.of(shown.Distance, m.Distance)
		default:
			time, rolledOut := m.Headline()
			row.Reading = c.of(shown.Time, time)
			if rolledOut {
				row.Title += " " + c.Book.Run.AfterFoot
			}
		}
	}
	if r.Kind == runs.CoastDown {
		row.Title += c.pairWords(r)
		row.Reading = Reading{Number: c.Number(r.End-r.Start, 0), Unit: "s"}
	}
	row.Spoken = join(", ", row.Title, row.Reading.Spoken(), row.Detail, row.Reason)
	return row
}

func (c Context) runDetail(r runs.Run) string {
	t := c.Book.Ride
	span := fmt.Sprintf(t.From, c.SpeedText(r.FromMPS), c.SpeedText(r.ToMPS), c.SpeedUnit())
	toward := ""
	if h := c.heading(r.BearingDeg); h != "" {
		toward = fmt.Sprintf(t.Towards, h)
	}
	if r.Kind != runs.CoastDown {
		if r.Kind == runs.Launch {
			return join(" · ", toward, r.Setup)
		}
		return join(" · ", span, r.Setup)
	}
	return join(" · ", span, toward)
}

// pairWords says which pair a coast-down that counts belongs to.
func (c Context) pairWords(r runs.Run) string {
	switch {
	case !r.Accepted():
		return ""
	case r.Pair > 0:
		return ", " + c.say().Say(finding.New(namePair, finding.Count("pair", r.Pair)))
	}
	return ", " + c.Book.Ride.NoPair
}

func (c Context) loadCard(i int, l runs.RoadLoad) LoadCard {
	return LoadCard{Index: i, Setup: l.Setup, Pairs: c.pairs(l.Pairs),
		CdA: c.reading(shown.Area, l.CdA.X, (l.CdACI[1]-l.CdACI[0])/2),
		Crr: c.reading(shown.Plain, l.Crr.X, (l.CrrCI[1]-l.CrrCI[0])/2)}
}

func (c Context) pairs(n int) string {
	if n == 1 {
		return c.Book.Ride.OnePair
	}
	return fmt.Sprintf(c.Book.Ride.Pairs, n)
}

// trackSpeed returns at most n points of the speed between two times, counted
// from the first.
func trackSpeed(res *runs.Result, from, to float64, n int) (t, v []float64) {
	if res.Track == nil {
		return nil, nil
	}
	for i, at := range res.Track.T {
		if at >= from && at <= to {
			t, v = append(t, at-from), append(v, res.Track.V[i])
		}
	}
	return thin(t, v, n)
}
