package shell

import (
	"errors"
	"fmt"

	"stillair/app/formats"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/work"
	"stillair/export/shown"
)

// edit opens name, notes and what can be done with the open ride.
func (s *Shell) edit() {
	h := &screens.Handing{}
	name, note := s.opened.ses.About.Name, s.opened.ses.About.Note
	on := screens.EditActions{Delete: s.deleteRide, Values: s.editValues, Setups: s.editSetups,
		Name: func(t string) { name = t }, Note: func(t string) { note = t },
		Back: func() {
			name, note := name, note // as they are now
			s.update(s.opened.id, func(a *store.About) { a.Name, a.Note = name, note })
			s.opened.ses.About.Name, s.opened.ses.About.Note = name, note
			s.back()
		},
		ShareAway: s.giving(h, s.fileOf(work.Elsewhere)), ShareRide: s.giving(h, s.fileOf(work.AsRecorded)), Others: s.openFormats}
	if s.opened.res != nil {
		on.ShareResults = s.giving(h, s.fileOf(work.Results))
		on.Report = s.giving(h, s.inFormat(formats.Report))
	}
	s.push(func() *kit.Page { return s.screen.EditRide(name, note, *h, on) })
}

// openFormats lists the formats for other programs.
func (s *Shell) openFormats() {
	h := &screens.Handing{}
	var all []formats.Format
	for _, f := range formats.Formats() {
		if s.opened.res != nil || !f.Computed {
			all = append(all, f)
		}
	}
	s.push(func() *kit.Page {
		return s.screen.Formats(all, *h, func(f formats.Format) {
			s.giving(h, s.inFormat(f.Kind))()
		}, s.goBack)
	})
}

// making makes a file off the drawing goroutine: what it needs of the Shell, it
// holds as values.
type making func() (work.Made, error)

// giving makes a file in the background, says so meanwhile, and passes it to
// whatever the rider chooses.
func (s *Shell) giving(h *screens.Handing, prepare func() making) func() {
	return func() {
		if s.dev.Share == nil {
			h.Trouble = fmt.Sprintf(s.screen.C.Book.Trouble.ShareFailed, errNoShare)
			s.again()
			return
		}
		*h = screens.Handing{Making: s.screen.C.Book.Formats.Making}
		s.again()
		ctx, share, make := s.ctx, s.dev.Share, prepare()
		aside(s, func() error {
			f, err := make()
			if err != nil {
				return err
			}
			return share.Share(ctx, f.Name, f.Media, f.Data)
		}, func(err error) {
			*h = screens.Handing{Trouble: s.whyNotShared(err)}
			s.again()
		})
	}
}

func (s *Shell) whyNotShared(err error) string {
	t := s.screen.C.Book
	switch {
	case err == nil:
		return ""
	case errors.Is(err, formats.ErrNoPlace):
		return t.Formats.NoPlace
	case errors.Is(err, formats.ErrNothingLeft):
		return s.screen.C.Names().NothingLeft()
	}
	return fmt.Sprintf(t.Trouble.ShareFailed, s.screen.C.Error(err))
}

const gzipType = "application/gzip"

// fileOf prepares a file of the open ride.
func (s *Shell) fileOf(form work.Form) func() making { return s.file(work.File{Form: form}) }

// inFormat prepares the open ride in a format.
func (s *Shell) inFormat(format formats.Kind) func() making {
	return s.file(work.File{Form: work.InFormat, Format: format})
}

func (s *Shell) file(f work.File) func() making {
	return func() making {
		f.Started, f.Program = s.opened.ses.About.Started.In(s.cfg.Location), Program
		f.Units, f.Language = s.screen.C.System, shown.Language(s.screen.C.Book.Tag)
		do, ctx, clock := s.work, s.ctx, s.dev.Clock
		ride := s.asked(s.opened.ses)
		ride.ID = s.opened.id
		ask := &work.Ask{Rides: []work.Ride{ride}, RollOns: s.rollOns(), File: &f}
		return func() (work.Made, error) {
			answer, err := do.Do(ctx, ask, breathe(clock))
			if err != nil {
				return work.Made{}, err
			}
			return answer.File, nil
		}
	}
}
