package view

import (
	"errors"
	"fmt"
	"math"
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/store"
	"stillair/sensors"
)

// Grade is how well something works; it is always shown by a symbol and in words.
type Grade int

// The grades.
const (
	Waiting Grade = iota
	Fine
	Doubtful
	Absent // missing, and not needed
	Bad
)

// SenseLine is one line about a sensor or the storage.
type SenseLine struct {
	Sensor sensors.Sensor // empty: the storage
	Title  string
	Words  string
	Detail string // more, in small type; may be empty
	Way    string // how to fix what keeps it from working; may be empty
	Grade  Grade
}

// Check is one thing to check before the ride.
type Check struct {
	Title, Why string
	Done       bool
}

// Ready is the screen before the ride.
type Ready struct {
	Bike, Setup string
	Air         string // today's air as entered
	AirOld      string // why it has to be checked; empty: it has not
	HasBike     bool
	Senses      []SenseLine
	Checks      []Check
	Checked     string // "4 of 6"
	Hint        string // under the start button
	CanStart    bool
	AskPermit   bool
	FirstTime   bool
	Obstacles   []ObstacleLine
}

// ReadyState is what the screen before the ride is made from.
type ReadyState struct {
	Bike       *store.Bike
	Setup      string
	Air        store.Air
	AirOld     bool      // it has to be checked
	AirEntered time.Time // when it was entered; zero: not known
	Senses     []recorder.Sense
	Free       int64 // bytes; −1: unknown
	Ticked     [6]bool
	Coarse     bool
	Permit     bool // the rider has to tap to be asked for permission
	NoGuide    bool // the guide has been read

	Obstacles []platform.Obstacle
}

// Size of a recording per hour, bytes, from recordings of the simulated ride:
// without sound at 100 motion samples a second, and of sound.
const (
	BytesPerHour      = 12 << 20
	SoundBytesPerHour = 11 << 20
)

// perHour is the size of a recording with these sensors, bytes per hour.
func perHour(senses []recorder.Sense) float64 {
	for _, x := range senses {
		if x.Sensor == sensors.SensorSound && x.Condition == sensors.Working {
			return BytesPerHour + SoundBytesPerHour
		}
	}
	return BytesPerHour
}

// Ready makes the screen before the ride.
func (c Context) Ready(s ReadyState) Ready {
	t := c.Book.Ready
	r := Ready{Bike: t.BikeNone, Setup: t.BikeNoneHint, FirstTime: !s.NoGuide, AskPermit: s.Permit,
		Obstacles: c.Obstacles(s.Obstacles)}
	if s.Bike != nil {
		r.HasBike, r.Bike, r.Setup = true, s.Bike.Name, c.setupLine(*s.Bike, s.Setup)
	}
	r.Air = c.airLine(s.Air)
	if s.AirOld {
		r.AirOld = c.AirOld(s.AirEntered)
	}
	done := 0
	for i, x := range [...]Check{{Title: t.Place, Why: t.PlaceWhy}, {Title: t.Law, Why: t.LawWhy}, {Title: t.Traffic, Why: t.TrafficWhy},
		{Title: t.Weather, Why: t.WeatherWhy}, {Title: t.Tyres, Why: t.TyresWhy}, {Title: t.Fixed, Why: t.FixedWhy}} {
		if x.Done = s.Ticked[i]; x.Done {
			done++
		}
		r.Checks = append(r.Checks, x)
	}
	r.Checked = fmt.Sprintf(t.CheckCount, done, len(r.Checks))
	r.Senses = c.senseLines(s)
	r.CanStart, r.Hint = c.start(r.Senses)
	return r
}

func (c Context) setupLine(b store.Bike, setup string) string {
	name := setup
	if name == "" {
		name = c.Book.Ready.SetupNone
	}
	mass := c.Book.Bikes.NoMass
	if kg := b.RideSetup(setup, 0).Mass; !math.IsNaN(kg) {
		mass = c.Mass(kg)
	} else if b.Mass != nil {
		mass = c.Mass(*b.Mass)
	}
	return name + " · " + mass
}

func (c Context) start(lines []SenseLine) (can bool, hint string) {
	t := c.Book.Ready
	can, hint = true, t.StartGood
	for _, l := range lines {
		switch {
		case l.Grade == Bad && (l.Sensor == sensors.SensorFix || l.Sensor == ""):
			return false, l.Title + ": " + l.Words
		case l.Grade == Waiting || l.Grade == Doubtful && l.Sensor == sensors.SensorFix:
			hint = t.StartRough
		}
	}
	return can, hint
}

func (c Context) senseLines(s ReadyState) []SenseLine {
	by := map[sensors.Sensor]recorder.Sense{}
	for _, x := range s.Senses {
		by[x.Sensor] = x
	}
	lines := []SenseLine{c.fixLine(by[sensors.SensorFix]), c.motionLine(by[sensors.SensorMotion], s.Coarse)}
	if x := by[sensors.SensorTurn]; x.Condition == sensors.Missing {
		lines = append(lines, SenseLine{Sensor: x.Sensor, Title: c.Book.Senses.Turn, Words: c.Book.Senses.MissingTurn, Grade: Absent})
	}
	for _, l := range []SenseLine{c.pressureLine(by[sensors.SensorPressure]), c.soundLine(by[sensors.SensorSound]), c.storageLine(s.Free, s.Senses)} {
		if l.Grade != Absent && !(l.Grade == Fine && l.Sensor == "") {
			lines = append(lines, l) // lines about what is not needed, or works anyway, have no detail
		}
	}
	return lines
}

func (c Context) pressureLine(x recorder.Sense) SenseLine {
	t := c.Book.Senses
	l := SenseLine{Sensor: sensors.SensorPressure, Title: c.named(nameBarometer), Words: t.PressureNone, Grade: Absent}
	if x.Condition == sensors.Working {
		l.Words, l.Grade, l.Detail = t.PressureGood, Fine, c.senseDetail(x)
	}
	return l
}

func (c Context) storageLine(free int64, senses []recorder.Sense) SenseLine {
	t := c.Book.Senses
	l := SenseLine{Title: t.Storage, Grade: Fine}
	hours := float64(free) / perHour(senses)
	room := c.Duration(hours * 3600)
	switch {
	case free < 0:
		l.Words, l.Grade = t.StorageUnknown, Absent
	case free < recorder.MinRoom:
		l.Words, l.Grade = t.StorageFull, Bad
	case free < 4*recorder.MinRoom:
		l.Words, l.Grade = fmt.Sprintf(t.StorageLow, room), Doubtful
	case hours > 100:
		l.Words = t.StoragePlenty
	default:
		l.Words = fmt.Sprintf(t.StorageGood, room)
	}
	return l
}

func (c Context) senseDetail(x recorder.Sense) string {
	if x.Count < 2 || x.Gaps == 0 {
		return ""
	}
	return c.gaps(x)
}

// StartTrouble says why a recording could not be started.
func (c Context) StartTrouble(err error) string {
	t := c.Book.Trouble
	switch {
	case errors.Is(err, platform.ErrBusy):
		return t.Busy
	case errors.Is(err, recorder.ErrNoRoom), errors.Is(err, platform.ErrFull):
		return t.NoRoom
	}
	return fmt.Sprintf(t.CannotRecord, c.Error(err))
}

// Recovered says what was recovered after a crash.
func (c Context) Recovered(r store.Recovered) (title, hint string) {
	t := c.Book.Trouble
	title, hint = fmt.Sprintf(t.Recovered, c.Duration(r.Seconds)), t.RecoveredHint
	if r.Damaged >= 1 {
		hint = fmt.Sprintf(t.RecoveredDamaged, c.Number(r.Damaged, 0)) + " " + hint
	}
	return title, hint
}
