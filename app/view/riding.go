package view

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors"
)

// Riding is the screen while the recorder runs.
type Riding struct {
	Speed, Unit string
	State       string // "locked while you ride", "standing", …
	Locked      bool   // nothing responds to a touch
	Standing    bool
	Noticed     []Noticed // the latest first
	Recorded    string
	Safe        string
	SafeGood    bool
	Setup       string
	Sensed      string // at a halt: rates, gaps, and the clocks if they are known
	Warnings    []string
	Missing     string // how long nothing could be recorded, and why; empty: no gap
	MissingWhy  string
	Last        []LastResult // measured since the last halt
	SoFar       SoFar        // at a halt: the joint result of all coast-downs; without pairs if there is none yet
}

// Noticed is one event noticed during the ride.
type Noticed struct {
	Kind runs.Kind
	Text string
}

// LastResult is one result of the stretch that just ended.
type LastResult struct {
	Kind    runs.Kind
	Title   string
	Reading Reading
	Spoken  string
}

// unsavedWorry is how much of the ride may be unsaved before the rider is warned, s:
// more than twice the time between syncs, and, with the time to redraw the screen,
// less than the two seconds within which a rider should know.
const unsavedWorry = 1.2

// mostNoticed is the number of events shown: as many as one can take in at a glance.
const mostNoticed = 3

// Riding makes the screen while riding; elapsed is how long ago the last
// sample was synced, s.
func (c Context) Riding(s recorder.Status) Riding {
	t := c.Book.Riding
	r := Riding{Speed: "–", Unit: c.SpeedUnit(), Locked: s.Phase == recorder.Moving, Standing: s.Phase == recorder.Standing, Setup: s.Setup}
	if !math.IsNaN(s.Speed) {
		r.Speed = c.SpeedText(max(0, s.Speed))
	}
	switch s.Phase {
	case recorder.Moving:
		r.State = t.Locked
	case recorder.Standing:
		r.State, r.Speed = t.Standing, "0"
	default:
		r.State = c.whyNoSpeed(s.Senses)
	}
	for i := len(s.Noticed) - 1; i >= 0 && len(r.Noticed) < mostNoticed; i-- {
		r.Noticed = append(r.Noticed, c.noticed(s.Noticed[i]))
	}
	r.Recorded = fmt.Sprintf(t.Recorded, c.Duration(s.Seconds))
	r.Safe, r.SafeGood = t.Safe, true
	if s.Unsaved > unsavedWorry {
		r.Safe, r.SafeGood = fmt.Sprintf(t.Unsafe, c.Number(s.Unsaved, 0)), false
	}
	r.Missing, r.MissingWhy = c.missing(s.Holes)
	r.Warnings = c.rideWarnings(s)
	if r.Standing {
		r.Sensed = c.sensedLive(s.Senses, s.Leg)
	}
	if r.Standing && s.SoFar != nil {
		r.SoFar = c.soFar(s.SoFar)
	}
	if s.Leg != nil {
		r.Last = c.lastResults(s.Leg)
	}
	return r
}

func (c Context) whyNoSpeed(senses []recorder.Sense) string {
	for _, x := range senses {
		if x.Sensor == sensors.SensorFix && x.Count > 0 {
			return c.Book.Riding.NoSpeed
		}
	}
	return c.Book.Riding.Searching
}

func (c Context) noticed(n recorder.Notice) Noticed {
	t, u := c.Book.Riding, c.SpeedUnit()
	from, to := c.SpeedText(n.From), c.SpeedText(n.To)
	text := ""
	switch n.Kind {
	case runs.Launch:
		text = fmt.Sprintf(t.SawLaunch, to, u)
	case runs.RollOn:
		text = fmt.Sprintf(t.SawRollOn, from, to, u)
	case runs.CoastDown:
		text = fmt.Sprintf(t.SawCoast, from, to, u)
	case runs.Stop:
		text = fmt.Sprintf(t.SawStop, from, u)
	}
	return Noticed{Kind: n.Kind, Text: text}
}

// missing says for how long nothing could be recorded in total, and why, by the longest
// gap.
func (c Context) missing(holes []sensors.Hole) (words, why string) {
	sum, longest := 0.0, sensors.Hole{}
	for _, h := range holes {
		sum += h.Seconds()
		if h.Seconds() >= longest.Seconds() {
			longest = h
		}
	}
	if len(holes) == 0 {
		return "", ""
	}
	return fmt.Sprintf(c.Book.Pocket.Missing, c.Duration(sum)), c.sentence(longest.Why)
}

// rideWarnings lists what does not work, each in one sentence with what still
// does.
func (c Context) rideWarnings(s recorder.Status) []string {
	var out []string
	trouble := c.Book.Trouble
	switch {
	case s.Kept.Lost():
		out = append(out, trouble.StorageLost)
	case s.Kept.Err != nil:
		out = append(out, trouble.StorageFails)
	case s.Kept.Trouble() != nil:
		out = append(out, c.Book.Senses.Storage+": "+c.storageLine(s.Kept.Free, s.Senses).Words)
	}
	switch {
	case errors.Is(s.Kept.AwakeErr, platform.ErrBackground):
		out = append(out, c.Book.Background.Refused)
	case s.Kept.AwakeErr != nil:
		out = append(out, trouble.ScreenMayGoOff)
	}
	for _, x := range s.Senses {
		if x.Condition == sensors.Working || x.Condition == "" || x.Condition == sensors.Available {
			continue
		}
		switch x.Sensor {
		case sensors.SensorFix:
			l := c.fixLine(x)
			out = append(out, l.Title+": "+l.Words)
		case sensors.SensorMotion:
			l := c.motionLine(x, false)
			out = append(out, l.Title+": "+l.Words)
		case sensors.SensorSound:
			l := c.soundLine(x)
			out = append(out, l.Title+": "+l.Words)
		}
	}
	return out
}

func (c Context) lastResults(res *runs.Result) []LastResult {
	var out []LastResult
	t := c.Book.Riding
	for _, r := range res.Runs {
		if !r.Accepted() {
			continue
		}
		l := LastResult{Kind: r.Kind, Title: c.kindName(r.Kind)}
		mark, ok := c.headline(r)
		switch {
		case r.Kind == runs.CoastDown:
			from, to := c.SpeedText(r.FromMPS), c.SpeedText(r.ToMPS)
			l.Title = fmt.Sprintf(t.SawCoast, from, to, c.SpeedUnit())
			l.Spoken = fmt.Sprintf(t.SpokenCoast, from, to)
		case ok && (r.Kind == runs.Launch || r.Kind == runs.RollOn):
			time, rolledOut := mark.Headline()
			l.Reading = c.of(shown.Time, time)
			l.Title = c.markName(mark.Name)
			if rolledOut {
				l.Title += " " + c.Book.Run.AfterFoot
			}
			l.Spoken = fmt.Sprintf(t.SpokenLaunch, l.Title, l.Reading.Number)
		default:
			continue
		}
		out = append(out, l)
	}
	return out
}

// Copied says what may happen to a ride that is stored only on this device: in the
// app, or in a browser, which may have promised not to delete it by itself.
func (c Context) Copied(browser bool, obstacles []platform.Obstacle) string {
	t := c.Book.Riding
	switch {
	case !browser:
		return t.CopyApp
	case slices.Contains(obstacles, platform.Clearable):
		return t.CopyClearable
	}
	return t.CopyKept
}

// Ended says how a recording ended.
func (c Context) Ended(s recorder.Status) string {
	t := c.Book.Riding
	if s.Kept.Err != nil {
		return t.ClosedTorn
	}
	switch s.Why {
	case recorder.Stood:
		return t.ClosedStood
	case recorder.NeverMoved:
		return t.ClosedNever
	case recorder.NoRoom:
		return t.ClosedRoom
	case recorder.SourceEnded:
		return t.ClosedSource
	case recorder.SourceFailed:
		return t.ClosedSource + " " + fmt.Sprintf(c.Book.Trouble.SensorsFailed, s.Err)
	}
	return t.Closed
}
