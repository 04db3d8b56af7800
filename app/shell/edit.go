package shell

import (
	"bytes"
	"fmt"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
)

// edit opens name, notes and what can be done with the open ride.
func (s *Shell) edit() {
	trouble := ""
	name, note := s.opened.ses.About.Name, s.opened.ses.About.Note
	leave := func() {
		s.update(s.opened.id, func(a *store.About) { a.Name, a.Note = name, note })
		s.opened.ses.About.Name, s.opened.ses.About.Note = name, note
		s.back()
	}
	give := func(make func() (string, string, []byte, error)) func() {
		return func() {
			s.give(make, func(err error) {
				trouble = fmt.Sprintf(s.screen.C.Book.Trouble.ShareFailed, err)
				s.again()
			})
		}
	}
	s.push(func() *kit.Page {
		return s.screen.EditRide(name, note, trouble, screens.EditActions{Back: leave, Delete: s.deleteRide, Values: s.editValues,
			Name: func(t string) { name = t }, Note: func(t string) { note = t },
			ShareAway: give(s.awayFile), ShareRide: give(s.rideFile), ShareResults: give(s.resultsFile)})
	})
}

// give hands a file to whatever the rider chooses.
func (s *Shell) give(make func() (name, kind string, data []byte, err error), failed func(error)) {
	if s.dev.Share == nil {
		failed(errNoShare)
		return
	}
	var err error
	s.aside(func() {
		var name, kind string
		var data []byte
		if name, kind, data, err = make(); err == nil {
			err = s.dev.Share.Share(s.ctx, name, kind, data)
		}
	}, func() {
		if err != nil {
			failed(err)
		}
	})
}

const gzipType = "application/gzip"

func (s *Shell) rideFile() (name, kind string, data []byte, err error) {
	name, data, err = s.sessions.Bytes(s.opened.id)
	return name, gzipType, data, err
}

// awayFile is the recording moved elsewhere on Earth and without its ends.
func (s *Shell) awayFile() (name, kind string, data []byte, err error) {
	rec, err := s.sessions.Read(s.opened.id)
	if err != nil {
		return "", "", nil, err
	}
	log := share.Apply(rec.Log, share.Choice{Places: share.Moved, EndsCut: share.Default().EndsCut, Clock: true})
	var b bytes.Buffer
	w, err := session.NewWriter(session.ToFile(memory{&b}), rec.Header, log.Ride)
	if err != nil {
		return "", "", nil, err
	}
	if err := writeLog(s.ctx, log, w); err != nil {
		return "", "", nil, err
	}
	return s.opened.id + "-elsewhere.jsonl.gz", gzipType, b.Bytes(), nil
}

func (s *Shell) resultsFile() (name, kind string, data []byte, err error) {
	var b bytes.Buffer
	err = results.Write(&b, results.From(s.opened.res))
	return s.opened.id + ".results.json", "application/json", b.Bytes(), err
}
