package shell

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"time"

	"stillair/app/formats"
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/export/shown"
)

// made is a file to hand over.
type made struct {
	name, media string
	data        []byte
}

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
		ShareAway: s.giving(h, s.awayFile), ShareRide: s.giving(h, s.rideFile), Others: s.openFormats}
	if s.opened.res != nil {
		on.ShareResults = s.giving(h, s.resultsFile)
		on.Report = s.giving(h, func() making { return s.fileOf(formatOf(formats.Report)) })
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
			s.giving(h, func() making { return s.fileOf(f) })()
		}, s.goBack)
	})
}

func formatOf(k formats.Kind) formats.Format {
	for _, f := range formats.Formats() {
		if f.Kind == k {
			return f
		}
	}
	return formats.Format{}
}

// making makes a file off the drawing goroutine: what it needs of the Shell, it
// holds as values.
type making func() (made, error)

// giving makes a file aside, says so meanwhile, and hands it to whatever the
// rider chooses.
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
			return share.Share(ctx, f.name, f.media, f.data)
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
		return t.Formats.NothingLeft
	}
	return fmt.Sprintf(t.Trouble.ShareFailed, s.screen.C.Error(err))
}

const gzipType = "application/gzip"

func (s *Shell) rideFile() making {
	l, id, random := s.library, s.opened.id, s.dev.Random
	return func() (made, error) {
		name, data, err := l.sessions.Bytes(id)
		if err != nil {
			return made{}, err
		}
		rec, err := l.sessions.Read(id)
		if err != nil {
			return made{name, gzipType, data}, nil // spoilt: whoever gets it may save more of it
		}
		data, err = silent(data, rec, random)
		return made{name, gzipType, data}, err
	}
}

// fileOf is the open ride in a format.
func (s *Shell) fileOf(f formats.Format) making {
	l, ses := s.library, s.opened.ses
	ride := formats.Ride{Title: s.screen.C.RideRow(ses).Title, Started: ses.About.Started.In(s.cfg.Location),
		Result: s.opened.res, Units: s.screen.C.System, Language: shown.Language(s.screen.C.Book.Tag), Program: Program}
	return func() (made, error) {
		log, err := l.log(ses)
		if err != nil {
			return made{}, err
		}
		ride.Log = log
		data, began, err := f.Make(ride)
		return made{shareName(began) + f.Ending, f.Media, data}, err
	}
}

// awayFile is the recording moved elsewhere on Earth and without its ends.
func (s *Shell) awayFile() making {
	l, id, ctx, random := s.library, s.opened.id, s.ctx, s.dev.Random
	return func() (made, error) {
		rec, err := l.sessions.Read(id)
		if err != nil {
			return made{}, err
		}
		choice := share.Default()
		choice.Places = share.Moved
		log := share.Apply(rec.Log, choice)
		var b bytes.Buffer
		header := rec.Header
		header.Start, header.Started = share.WindowOf(rec.Log, choice).Began(beginning(rec), header.Started, choice.Date)
		if header.ID, err = session.NewID(random); err != nil {
			return made{}, err
		}
		w, err := session.NewWriter(session.ToFile(memory{&b}), header, log.Ride)
		if err != nil {
			return made{}, err
		}
		if err := writeLog(ctx, log, w); err != nil {
			return made{}, err
		}
		return made{shareName(header.Started) + "-elsewhere.jsonl.gz", gzipType, b.Bytes()}, nil
	}
}

func (s *Shell) resultsFile() making {
	l, ses, res := s.library, s.opened.ses, s.opened.res
	return func() (made, error) {
		rec, err := l.recording(ses)
		if err != nil {
			return made{}, err
		}
		choice := share.Default()
		d := results.From(share.Result(res, rec.Log, choice))
		_, began := share.WindowOf(rec.Log, choice).Began(beginning(rec), rec.Header.Started, choice.Date)
		d.Began(began)
		var b bytes.Buffer
		err = results.Write(&b, d)
		return made{shareName(began) + ".results.json", "application/json", b.Bytes()}, err
	}
}

// beginning is when on its clock a recording was at the date of its header.
func beginning(rec *session.Recording) float64 {
	if math.IsNaN(rec.Header.Start) {
		return rec.Log.Begin()
	}
	return rec.Header.Start
}

// shareName is the name of a file that is given away without the ends of its
// ride: the name under which the ride is kept would tell when it began.
func shareName(began time.Time) string {
	if began.IsZero() {
		return "ride"
	}
	return "ride-" + began.Format("20060102-1504")
}
