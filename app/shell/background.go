package shell

import (
	"time"

	"stillair/app/platform"
	"stillair/app/recorder"
)

// behind is what the app knows of recording in the background.
type behind struct {
	began     time.Time             // time of day at the start
	shown     platform.Notification // what the phone shows of the recording
	obstacles []platform.Obstacle   // as last read
	looked    time.Duration         // when that was; 0: never
	looking   bool
	hidden    bool // nobody sees the screen
}

// inBackground holds a Background for as long as a recording runs.
type inBackground struct {
	platform.Background
	notification platform.Notification
	sound        bool
}

// Hold implements platform.Awake. A refused microphone affects nothing else.
func (h inBackground) Hold() (release func(), err error) {
	err = h.Begin(h.notification, h.sound)
	if err != nil && h.sound {
		err = h.Begin(h.notification, false)
	}
	if err != nil {
		return nil, err
	}
	return func() { _ = h.End() }, nil // what cannot be ended has ended
}

// awake is what keeps a recording running on this device.
func (s *Shell) awake() platform.Awake {
	if s.dev.Background == nil {
		return s.dev.Awake
	}
	s.began = s.dev.Clock.Wall()
	s.shown = s.screen.C.Notification(recorder.Status{Kept: recorder.Kept{Free: -1}}, s.began)
	return inBackground{s.dev.Background, s.shown, s.choices.Sound && s.dev.Hear != nil}
}

// notify updates the notification from the state of the recorder.
func (s *Shell) notify(st recorder.Status) {
	if s.dev.Background == nil {
		return
	}
	n := s.screen.C.Notification(st, s.began)
	if n == s.shown || st.Kept.AwakeErr != nil {
		return
	}
	s.shown = n
	show := s.dev.Background.Show
	aside(s, func() error { return show(n) }, func(error) {}) // if it cannot be shown, the screen says the same
}

// listen waits for what happens to the recording in the background.
func (s *Shell) listen() {
	for {
		select {
		case <-s.ctx.Done():
			return
		case h := <-s.dev.Background.Happenings():
			s.cfg.Do(func() { s.happened(h) })
		}
	}
}

func (s *Shell) happened(h platform.Happening) {
	if s.rec == nil {
		return
	}
	switch t := s.screen.C.Book.Background; h {
	case platform.EndAsked:
		s.endRide()
	case platform.SwipedUp:
		s.rec.Remark(t.Swiped)
	case platform.CutShort:
		s.rec.Remark(t.CutShort)
		s.rec.Unheld(platform.ErrBackground)
	}
}

// Hidden is called when the app was hidden or shown again. On a device that
// records in the background the sensors would otherwise keep running for
// nothing.
func (s *Shell) Hidden(is bool) {
	if s.dev.Background == nil {
		return
	}
	s.hidden = is
	if !is {
		s.looked = 0 // the rider may come from the settings
		s.startWatch()
		return
	}
	watch := s.watch
	s.watch = nil
	aside(s, stopped(watch), func(none) {})
}

// obstaclesEvery is how often the settings are read before a ride: the rider
// may change them and come back.
const obstaclesEvery = 3 * time.Second

// lookForObstacles reads the settings aside where that is due.
func (s *Shell) lookForObstacles() {
	now := s.dev.Clock.Elapsed()
	if s.dev.Obstacles == nil || s.looking || s.looked != 0 && now-s.looked < obstaclesEvery {
		return
	}
	s.looking, s.looked = true, now
	aside(s, s.dev.Obstacles, func(found []platform.Obstacle) { s.looking, s.obstacles = false, found })
}

// askToNotify puts the phone's question for notifications on the screen.
func (s *Shell) askToNotify() {
	ask := s.dev.AskToNotify
	if ask == nil {
		return
	}
	aside(s, func() none {
		ask()
		return none{}
	}, func(none) { s.looked = 0 })
}
