package shell

import (
	"context"

	"stillair/app/recorder"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/trial"
	"stillair/app/work"
)

// trying is the test of a phone that the package has never run on.
type trying struct {
	result *trial.Result
	phase  trial.Phase
	stop   func() // ends a test and waits for its end; nil: none runs
}

// openFirstTrial opens the test at the first start of a trial package.
func (s *Shell) openFirstTrial() {
	if !s.dev.Trial {
		return
	}
	files := s.dev.Files
	aside(s, func() *trial.Result { return trial.Kept(files) }, func(kept *trial.Result) {
		s.trying.result = kept
		switch {
		case s.rec != nil:
		case kept == nil:
			s.openTrial()
		default:
			s.again()
		}
	})
}

func (s *Shell) openTrial() {
	h := &screens.Handing{}
	s.push(func() *kit.Page {
		on := screens.TrialActions{Back: s.goBack}
		if s.trying.stop == nil {
			on.Begin = s.beginTrial
			if s.trying.result != nil {
				on.Share = s.giving(h, s.trialFile)
			}
		}
		return s.screen.Trial(s.screen.C.Trial(s.trying.result, s.trying.phase), *h, on)
	})
}

func (s *Shell) trialFile() making {
	r := *s.trying.result
	return func() (work.Made, error) {
		data, err := r.Data()
		return work.Made{Name: trial.KeptAs, Media: "application/json", Data: data}, err
	}
}

// beginTrial runs the test, which takes the sensors from the screen before the
// ride and gives them back.
func (s *Shell) beginTrial() {
	ctx, cancel := context.WithCancel(s.ctx)
	ended := make(chan struct{})
	watch, d := s.watch, s.dev
	n := s.screen.C.Notification(recorder.Status{Kept: recorder.Kept{Free: -1}}, d.Clock.Wall())
	n.Title = s.screen.C.Book.Trial.Title
	s.watch = nil
	s.trying.stop = func() {
		cancel()
		<-ended
	}
	go func() {
		stopped(watch)()
		r := trial.Run(ctx, d, n, func(p trial.Phase) {
			s.cfg.Do(func() {
				s.trying.phase = p
				s.again()
			})
		})
		whole := ctx.Err() == nil
		close(ended)
		s.cfg.Do(func() { s.trialEnded(r, whole) })
	}()
}

// trialEnded keeps the result of a finished test.
func (s *Shell) trialEnded(r trial.Result, whole bool) {
	s.trying.stop, s.trying.phase = nil, ""
	if whole {
		s.trying.result = &r
		files := s.dev.Files
		aside(s, func() error { return trial.Keep(files, r) }, func(error) {}) // it is on the screen, and can be shared
	}
	s.startWatch()
	s.again()
}
