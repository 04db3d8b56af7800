package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"
	"time"

	"stillair/app/platform"
	"stillair/export/session"
)

// Endings of the two files of a session, beside which there may be its results.
const (
	sessionEnding = ".jsonl.gz"
	aboutEnding   = ".about.json"
)

// Stage says how far a session has come.
type Stage string

// The stages of a session.
const (
	Recording Stage = "recording" // being written, or left open by a crash
	Closed    Stage = "closed"    // ended normally
	CutOff    Stage = "cut off"   // a crash or an empty battery ended it; what was synced is there
)

// About is what the store knows of a session beside the recording itself.
type About struct {
	Version    int       `json:"version"`
	Started    time.Time `json:"started"` // wall clock
	Stage      Stage     `json:"stage"`
	Name       string    `json:"name,omitempty"` // the rider's; empty: none given
	Note       string    `json:"note,omitempty"`
	Bike       string    `json:"bike,omitempty"`
	Setup      string    `json:"setup,omitempty"` // the one it began with
	Seconds    float64   `json:"seconds,omitempty"`
	Metres     float64   `json:"metres,omitempty"`
	Found      Found     `json:"found"`
	AirEntered time.Time `json:"air_told,omitzero"`       // when the oldest value of its air was typed in; zero: not known, or none was
	AirOld     bool      `json:"air_old,omitempty"`       // it was out of date when the ride began
	Values     *Values   `json:"computed_with,omitempty"` // changed after the ride; nil: as recorded
	Measured   time.Time `json:"measured,omitzero"`       // when Found was counted; zero: never
	Deleted    time.Time `json:"deleted,omitzero"`        // zero: not deleted
}

// Found counts what an analysis found; it may be out of date and is only for
// the list.
type Found struct {
	Launches   int `json:"launches,omitempty"`
	RollOns    int `json:"roll_ons,omitempty"`
	CoastDowns int `json:"coast_downs,omitempty"`
	Pairs      int `json:"pairs,omitempty"`
	Passes     int `json:"passes,omitempty"`
	Rejected   int `json:"rejected,omitempty"`
}

// Session is one recorded ride in the list.
type Session struct {
	ID    string
	About About
	Bytes int64
}

// Sessions is the list of recorded rides.
type Sessions struct {
	files platform.Files
	clock platform.Clock
}

// NewSessions keeps sessions in files.
func NewSessions(files platform.Files, clock platform.Clock) *Sessions {
	return &Sessions{files: files, clock: clock}
}

// Files gives the storage underneath.
func (s *Sessions) Files() platform.Files { return s.files }

// Begin makes the files of a new session. The name comes from the wall clock;
// where a clock that was set back makes it collide, a number is added.
func (s *Sessions) Begin(about About) (id string, f platform.File, err error) {
	about.Version, about.Stage = Version, Recording
	about.Started = s.clock.Wall().UTC().Truncate(time.Second)
	stem := "ride-" + about.Started.Format("20060102-150405")
	for n := 1; n < 1000; n++ {
		id = stem
		if n > 1 {
			id = fmt.Sprintf("%s-%d", stem, n)
		}
		f, err = s.files.Create(id + sessionEnding)
		if !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	if err != nil {
		return "", nil, err
	}
	if err := s.put(id, about); err != nil {
		return "", nil, errors.Join(err, f.Close(), s.files.Remove(id+sessionEnding))
	}
	return id, f, nil
}

// Discard removes a session that was begun and holds nothing.
func (s *Sessions) Discard(id string) error {
	err := s.files.Remove(id + aboutEnding)
	if errors.Is(err, fs.ErrNotExist) { // killed before it was written
		err = nil
	}
	return errors.Join(s.files.Remove(id+sessionEnding), err)
}

func (s *Sessions) put(id string, about About) error {
	about.Version = Version
	return writeJSON(s.files, id+aboutEnding, about)
}

// Update changes what is known of a session.
func (s *Sessions) Update(id string, change func(*About)) error {
	about, err := s.about(id)
	if err != nil {
		return err
	}
	change(&about)
	return s.put(id, about)
}

// about reads what is known of a session; a session file that came without it
// is one that ended somewhere else.
func (s *Sessions) about(id string) (About, error) {
	about := About{Version: Version, Stage: Closed}
	err := readJSON(s.files, id+aboutEnding, &about)
	if errors.Is(err, fs.ErrNotExist) {
		err = nil
	}
	return about, err
}

// List gives the sessions that are not deleted, the latest first. Problems
// name the files that could not be read; their sessions are listed all the
// same, with what the file system knows.
func (s *Sessions) List() (list []Session, problems []error) {
	all, problems := s.all()
	for _, x := range all {
		if x.About.Deleted.IsZero() {
			list = append(list, x)
		}
	}
	slices.SortStableFunc(list, func(a, b Session) int { return b.About.Started.Compare(a.About.Started) })
	return list, problems
}

func (s *Sessions) all() (list []Session, problems []error) {
	infos, err := s.files.List()
	if err != nil {
		return nil, []error{err}
	}
	for _, info := range infos {
		id, ok := strings.CutSuffix(info.Name, sessionEnding)
		if !ok {
			continue
		}
		about, err := s.about(id)
		if err != nil {
			problems = append(problems, err)
		}
		if about.Started.IsZero() {
			about.Started = info.Modified
		}
		list = append(list, Session{ID: id, About: about, Bytes: info.Size})
	}
	return list, problems
}

// Get gives one session.
func (s *Sessions) Get(id string) (Session, error) {
	about, err := s.about(id)
	return Session{ID: id, About: about}, err
}

// Bytes gives a session's file as it is, and its name.
func (s *Sessions) Bytes(id string) (name string, data []byte, err error) {
	name = id + sessionEnding
	r, err := s.files.Open(name)
	if err != nil {
		return name, nil, err
	}
	data, err = io.ReadAll(r)
	return name, data, errors.Join(err, r.Close())
}

// Read reads the recording of a session.
func (s *Sessions) Read(id string) (*session.Recording, error) {
	r, err := s.files.Open(id + sessionEnding)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	return session.Read(r, id+sessionEnding)
}
