package shell

import (
	"context"
	"strings"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/app/work"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors"
)

// Program names the app in the files that it writes.
const Program = "Stillair 1.0"

// Config is what a Shell needs in addition to the device.
type Config struct {
	Device *platform.Device
	// Do runs a function on the drawing goroutine.
	Do func(func())
	// SetTheme gives Fyne's own widgets the app's look.
	SetTheme func(fyne.Theme)
	Location *time.Location // for dates; nil: UTC
}

// Shell is the app.
type Shell struct {
	cfg     Config
	dev     *platform.Device
	library library
	work    work.Doer // measures rides and makes files
	jobs    *jobs
	ctx     context.Context
	ending  sync.Once
	closing context.CancelFunc

	// All below belongs to the drawing goroutine.
	choices store.Choices // as last read or chosen
	lists                 // as last read
	screen  screens.Screens
	root    *fyne.Container
	nav
	notice  screens.NoticeText
	unheard string // why sound could not be switched on
	ride
	behind
	trying   trying
	opened   opened
	compared comparing
	seasonal seasonal
	planned  planning
}

// ride is what the screens before a ride and during it hold.
type ride struct {
	watch    *recorder.Watch
	rec      *recorder.Recording
	starting bool // a recording is being begun
	riding   *screens.Riding
	pocket   pocket
	asking   func() fyne.CanvasObject // a question over the riding screen; nil: none
	spoken   *runs.Result             // the leg whose results were already spoken
	ticked   [6]bool
	last     string        // what the screen before the ride showed
	drawn    time.Duration // when that was
	waited   int           // beats for which drawing has waited for a finger
}

// Open reads what is kept and returns the app. It may take a while and is
// called aside.
func Open(cfg Config) *Shell {
	if cfg.Location == nil {
		cfg.Location = time.UTC
	}
	d := cfg.Device
	s := &Shell{cfg: cfg, dev: d, library: newLibrary(d), jobs: newJobs(), root: container.NewStack(),
		compared: comparing{speed: view.UsualSpeed}}
	s.work = work.For(d)
	s.ctx, s.closing = context.WithCancel(context.Background())
	choices, notRead := store.ReadChoices(d.Files)
	s.choices = choices
	recovered, err := s.library.sessions.RecoverBy(s.lookInto)
	var purged error
	if err == nil {
		purged = s.library.sessions.Purge(store.KeepDeleted)
	}
	s.lists = s.library.read()
	if store.Busy(err) {
		err = nil
	}
	for _, err := range []error{notRead, err, purged} {
		s.problem(err)
	}
	s.look()
	if len(recovered) > 0 {
		s.notice.Title, s.notice.Text = s.screen.C.Recovered(recovered[0])
		if d.LastEnd != nil {
			s.notice.Text = strings.TrimSpace(s.screen.C.Demise(d.LastEnd()) + " " + s.notice.Text)
		}
	}
	go s.jobs.work(s.ctx)
	return s
}

// lookInto reports how much of a recording exists that was cut off.
func (s *Shell) lookInto(id string) (store.Recovered, error) {
	answer, err := s.work.Do(s.ctx, &work.Ask{Rides: []work.Ride{{ID: id}}, Look: true}, func(float64) {})
	if err != nil {
		return store.Recovered{}, err
	}
	return answer.Look, nil
}

// Root is what the window shows.
func (s *Shell) Root() fyne.CanvasObject { return s.root }

// Start shows the first screen and begins to look at the sensors, or continues with
// a recording that the rider started before the app was there. It is called on the
// drawing goroutine.
func (s *Shell) Start() {
	s.listenForBack()
	s.nav.begin(s.ready, s.ridesList, s.bikesList, s.compare, s.more)
	s.show()
	if s.dev.Ahead != nil && s.dev.Ahead() {
		s.record()
	} else {
		s.startWatch()
	}
	go s.tick()
	if s.dev.Background != nil {
		go s.listen()
	}
	s.openFirstTrial()
}

// Close ends what runs; a recording is closed properly.
func (s *Shell) Close() {
	s.ending.Do(func() {
		if s.rec != nil {
			s.rec.Stop()
		}
		if s.watch != nil {
			s.watch.Stop()
		}
		s.closing()
	})
}

// look rebuilds the screens after a change of language, units or look.
func (s *Shell) look() {
	tag := s.choices.Language
	if tag == "" {
		tag = s.dev.Locale
	}
	dark := s.dev.Dark != nil && s.dev.Dark()
	switch s.choices.Look {
	case "light":
		dark = false
	case "dark":
		dark = true
	}
	p := kit.Light()
	if dark {
		p = kit.Dark()
	}
	scale := float32(1)
	if s.dev.TextScale != nil {
		scale = float32(s.dev.TextScale())
	}
	if s.choices.TextSize > 0 {
		scale *= s.choices.TextSize
	}
	c := view.Context{Book: text.For(tag), System: system(s.choices.Units, s.dev.Locale), Machine: s.dev.Machine}
	c.FuelUnit, c.PowerUnit = shown.FuelFor(region(s.dev.Locale), c.System), watts(s.choices.Power, c.System)
	s.screen = screens.Screens{Kit: kit.New(p, scale), C: c.Prepared()}
	s.screen.Kit.Later(s.later)
	if s.dev.Language != nil {
		s.dev.Language(c.Book.Tag)
	}
	if s.cfg.SetTheme != nil {
		s.cfg.SetTheme(s.screen.Kit.Theme())
	}
}

// source gives a new source of the device, with the microphone where the rider
// switched it on.
func (s *Shell) source() sensors.Source {
	if s.choices.Sound && s.dev.Hear != nil {
		return s.dev.Hear()
	}
	return s.dev.Source()
}
