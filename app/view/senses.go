package view

import (
	"fmt"
	"math"

	"stillair/app/recorder"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// goodHSD is the horizontal standard deviation up to which satellites count as
// good, and fairHSD as fair, m. Common practice: an open sky gives 3 to 5 m.
const (
	goodHSD = 8.0
	fairHSD = 25.0
)

// leastFix is the rate of fixes below which a rider is warned, 1/s: receivers in
// phones deliver one a second (common practice), and something is wrong with one
// that misses every fifth.
const leastFix = 0.8

// goodMotion is the rate from which motion counts as good, 1/s, and leastMotion
// the rate from which it is enough: the beginning of a step of acceleration is
// known to within half an interval, and at 20 a second that is 25 ms, half of the
// ± 0.05 s that launches are to be timed to.
const (
	goodMotion  = 90.0
	leastMotion = 20.0
)

func (c Context) fixLine(x recorder.Sense) SenseLine {
	t := c.Book.Senses
	l := SenseLine{Sensor: sensors.SensorFix, Title: t.Satellites, Detail: c.senseDetail(x)}
	switch x.Condition {
	case sensors.Denied:
		l.Words, l.Grade, l.Way = t.DeniedFix, Bad, c.Book.Ways.Location[c.Machine]
	case sensors.Missing:
		l.Words, l.Grade = c.because(x.Detail, t.NoFix, t.MissingFix), Bad
	case sensors.Asking:
		l.Words = c.because(x.Detail, "", t.Asking)
	case sensors.Silent:
		l.Words, l.Grade = c.because(x.Detail, "", t.FixSilent), Doubtful
	case sensors.Working:
		c.fixWorks(&l, x)
	default:
		l.Words = t.FixWait
	}
	return l
}

func (c Context) fixWorks(l *SenseLine, x recorder.Sense) {
	t := c.Book.Senses
	switch {
	case x.HSD > fairHSD:
		l.Words = t.FixWait
	case x.Rate < leastFix:
		l.Words, l.Grade = fmt.Sprintf(t.FixFew, c.Number(1/x.Rate, 0)), Doubtful
	case x.HSD > goodHSD:
		l.Words, l.Grade = fmt.Sprintf(t.FixFair, c.Length(x.HSD)), Doubtful
	case math.IsNaN(x.Rate):
		l.Words = t.FixWait // one fix alone has no rate
	default:
		l.Words, l.Grade = fmt.Sprintf(t.FixGood, c.Length(orZero(x.HSD)), c.rate(x.Rate)), Fine
	}
}

func (c Context) motionLine(x recorder.Sense, coarse bool) SenseLine {
	t := c.Book.Senses
	l := SenseLine{Sensor: sensors.SensorMotion, Title: t.Motion, Detail: c.senseDetail(x)}
	switch x.Condition {
	case sensors.Denied:
		l.Words, l.Grade, l.Way = t.DeniedMotion, Doubtful, c.Book.Ways.Motion[c.Machine]
	case sensors.Missing:
		l.Words, l.Grade = c.because(x.Detail, t.NoMotion, t.MissingMotion), Doubtful
	case sensors.Asking:
		l.Words = c.because(x.Detail, "", t.Asking)
	case sensors.Silent:
		l.Words, l.Grade = c.because(x.Detail, "", t.MotionSilent), Doubtful
	case sensors.Working:
		c.motionWorks(&l, x, coarse)
	default:
		l.Words = t.MotionWait
	}
	return l
}

func (c Context) motionWorks(l *SenseLine, x recorder.Sense, coarse bool) {
	t := c.Book.Senses
	switch {
	case math.IsNaN(x.Rate):
		l.Words = t.MotionWait
	case x.Rate < leastMotion:
		l.Words, l.Grade = fmt.Sprintf(t.MotionFew, c.rate(x.Rate)), Doubtful
	case coarse || x.Rate < goodMotion:
		l.Words, l.Grade = fmt.Sprintf(t.MotionCoarse, c.rate(x.Rate)), Fine
	default:
		l.Words, l.Grade = fmt.Sprintf(t.MotionGood, c.rate(x.Rate)), Fine
	}
}

// because returns the source's own reason and what is lost by it, or, if it
// gave none, other words.
func (c Context) because(why finding.Finding, lost, otherwise string) string {
	if why.IsZero() {
		return otherwise
	}
	return join(". ", c.say().Say(why), lost)
}

func orZero(x float64) float64 {
	if math.IsNaN(x) {
		return 0
	}
	return x
}

// rate is a rate in whole samples a second, or in tens if it is high, so that
// the screen need not be redrawn for each sample; a rate that rounds to zero is
// shown as less than one.
func (c Context) rate(x float64) string {
	switch {
	case x < 0.5:
		return "< 1"
	case x < leastMotion:
		return c.Number(math.Round(x), 0)
	}
	return c.Number(math.Round(x/10)*10, 0)
}
