package shell

import (
	"context"
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
	"stillair/runs"
	"stillair/sensors"
)

// Program names the app in the files that it writes.
const Program = "Stillair 1.0"

// Config is what a Shell needs besides the device.
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
	cfg      Config
	dev      *platform.Device
	sessions *store.Sessions
	bikes    *store.Bikes
	jobs     chan func() // for the storage, one after another

	// What is kept, as last read or written.
	choices  store.Choices
	garage   []store.Bike
	rides    []store.Session
	deleted  []store.Session // that can be brought back
	problems []error
	free     int64

	root   *fyne.Container
	screen screens.Screens
	place  screens.Place
	// Each place has a pile of screens; the last is shown.
	piles [5][]showing
	page  *kit.Page // what is shown, where it scrolls
	undo  func()    // what the bar above the tabs takes back; nil: no bar

	notice  screens.NoticeText
	unheard string // why sound could not be switched on
	ticked  [6]bool
	watch   *recorder.Watch
	rec     *recorder.Recording
	riding  *screens.Riding
	asking  func() fyne.CanvasObject // a question over the riding screen; nil: none
	spoken  *runs.Result             // the leg that was said aloud already
	last    string                   // what the screen before the ride showed
	drawn   time.Duration            // when that was
	waited  int                      // beats that drawing has waited for a finger
	opened  opened
	ctx     context.Context
	ending  sync.Once
	closing context.CancelFunc

	compared comparing
	planned  planning
}

// showing makes one screen.
type showing func() *kit.Page

// Open reads what is kept and returns the app. It may take a while and is
// called aside.
func Open(cfg Config) *Shell {
	if cfg.Location == nil {
		cfg.Location = time.UTC
	}
	d := cfg.Device
	s := &Shell{cfg: cfg, dev: d, sessions: store.NewSessions(d.Files, d.Clock), bikes: store.NewBikes(d.Files, d.Clock),
		jobs: make(chan func(), 64), root: container.NewStack()}
	s.ctx, s.closing = context.WithCancel(context.Background())
	var err error
	if s.choices, err = store.ReadChoices(d.Files); err != nil {
		s.problems = append(s.problems, err)
	}
	recovered, err := s.sessions.Recover()
	if err != nil && !store.Busy(err) {
		s.problems = append(s.problems, err)
	}
	if err == nil {
		if err := s.sessions.Purge(store.KeepDeleted); err != nil {
			s.problems = append(s.problems, err)
		}
	}
	s.reread()
	s.look()
	if len(recovered) > 0 {
		s.notice.Title, s.notice.Text = s.screen.C.Recovered(recovered[0])
	}
	go s.work()
	return s
}

// reread reads the lists. It is called aside or before the app is shown.
func (s *Shell) reread() {
	var p1, p2 []error
	s.garage, p1 = s.bikes.List()
	s.rides, p2 = s.sessions.List()
	s.deleted = s.sessions.Deleted()
	s.problems = append(append(s.problems[:0:0], p1...), p2...)
	free, err := s.dev.Files.Free()
	if err != nil {
		free = -1
	}
	s.free = free
}

// work does the jobs for the storage in their order.
func (s *Shell) work() {
	for {
		select {
		case job := <-s.jobs:
			job()
		case <-s.ctx.Done():
			return
		}
	}
}

// aside runs work off the drawing goroutine and then back on it.
func (s *Shell) aside(work func(), then func()) {
	s.jobs <- func() {
		work()
		s.cfg.Do(then)
	}
}

// Root is what the window shows.
func (s *Shell) Root() fyne.CanvasObject { return s.root }

// Start shows the first screen and begins to look at the sensors. It is called
// on the drawing goroutine.
func (s *Shell) Start() {
	for i, first := range []showing{s.ready, s.ridesList, s.bikesList, s.compare, s.more} {
		s.piles[i] = []showing{first}
	}
	s.show()
	s.startWatch()
	go s.tick()
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

// look makes the screens anew after a change of language, units or look.
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
	c := view.Context{Book: text.For(tag), System: system(s.choices.Units, s.dev.Locale)}
	c.FuelUnit, c.PowerUnit = view.FuelFor(region(s.dev.Locale), c.System), watts(s.choices.Power, c.System)
	s.screen = screens.Screens{Kit: kit.New(p, scale), C: c}
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
