package sheets

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/packed"
	"stillair/sensors/internal/repair"
)

// Read reads a recording: a folder, a zip archive or a single table.
func Read(name string, asked []Ask) (*sensors.Log, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, &sensors.InputError{File: name, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.check_name"), Err: err}
	}
	if info.IsDir() {
		return ReadFS(os.DirFS(name), name, asked)
	}
	if strings.EqualFold(filepath.Ext(name), ".zip") {
		f, err := os.Open(name)
		if err != nil {
			return nil, packed.AsInput(name, 0, err)
		}
		defer f.Close()
		return ReadZip(f, info.Size(), name, asked)
	}
	return read(name, []packed.Entry{{Name: name, Bare: filepath.Base(name), Size: info.Size(),
		Open: func() (io.ReadCloser, error) { return os.Open(name) }}}, asked)
}

// ReadFS reads the tables at the top of a file system; name is for people.
func ReadFS(fsys fs.FS, name string, asked []Ask) (*sensors.Log, error) {
	all, err := packed.Folder(fsys, name, IsTable)
	if err != nil {
		return nil, err
	}
	return read(name, all, asked)
}

// ReadZip reads the tables of a zip archive of the given size; name is for
// people.
func ReadZip(r io.ReaderAt, size int64, name string, asked []Ask) (*sensors.Log, error) {
	all, err := packed.Archive(r, size, name, IsTable)
	if err != nil {
		return nil, err
	}
	return read(name, all, asked)
}

// Fits reports whether a folder contains tables.
func Fits(fsys fs.FS) bool {
	all, err := packed.Folder(fsys, "", IsTable)
	return err == nil && len(all) > 0
}

// FitsZip is Fits for a zip archive of the given size.
func FitsZip(r io.ReaderAt, size int64) bool {
	all, err := packed.Archive(r, size, "", IsTable)
	return err == nil && len(all) > 0
}

// Begins reports whether a file that begins with head is a table.
func Begins(head []byte) bool {
	lines := bytes.Split(head, []byte{'\n'})
	_, ok := sniff(lines[:max(len(lines)-1, 1)]) // the last may be cut
	return ok
}

// mostFiles is the maximum number of files read; no logger has as many sensors.
const mostFiles = 200

// IsTable reports whether a file with that name may be a table.
func IsTable(bare string) bool {
	switch strings.ToLower(filepath.Ext(bare)) {
	case ".csv", ".tsv", ".txt", ".tab", ".dat", ".log":
		return !strings.HasPrefix(bare, ".")
	}
	return false
}

func read(name string, all []packed.Entry, asked []Ask) (*sensors.Log, error) {
	if len(all) > mostFiles {
		return nil, &sensors.InputError{File: name, What: finding.New("archive.many_files"), Remedy: finding.New("archive.one_ride")}
	}
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	var sheets []*sheet
	for _, e := range all {
		some, notes, err := readSheets(e, asked)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, some...)
		log.Notes = append(log.Notes, notes...)
	}
	m := &making{name: name, log: log, sheets: sheets}
	if err := m.make(); err != nil {
		return nil, err
	}
	return log, nil
}

// making is a log being made.
type making struct {
	name   string
	log    *sensors.Log
	sheets []*sheet
	track  *track
	main   *triple // of the accelerometer; nil if it cannot be used
}

func (m *making) say(file string, count int, what finding.Finding) {
	m.log.Notes = append(m.log.Notes, sensors.Note{File: file, Count: count, What: what})
}

func (m *making) make() error {
	found := tracks(m.sheets)
	if len(found) == 0 {
		return &sensors.InputError{File: m.name, What: finding.New("sheets.no_track"), Remedy: finding.New("sheets.name_track")}
	}
	m.track = found[0]
	r := m.recipe()
	if !m.clocks(r) {
		return &sensors.InputError{File: m.track.sheet.file, What: finding.New("sheets.no_clock"), Remedy: finding.New("sheets.name_clock")}
	}
	if m.main != nil {
		m.motion(r)
	}
	if err := m.fixes(); err != nil {
		return err
	}
	m.pressure()
	if m.main != nil {
		m.log.Ride.Axes = repair.Settle(m.log, m.main.sheet.file, "")
	}
	m.fromZero()
	return nil
}

// recipe finds the accelerometer, and notes if it cannot be used.
func (m *making) recipe() recipe {
	r, bare, ok := chosen(m.sheets)
	switch {
	case ok:
		m.main = r.main
	case bare:
		m.say(m.name, 1, finding.New("sheets.without_gravity"))
	default:
		m.say(m.name, 1, finding.New("sheets.no_motion"))
	}
	return r
}

// clocks chooses the columns of time on which the sheets agree.
func (m *making) clocks(r recipe) bool {
	t := m.track
	own := t.sheet.timings(clock, leastFixStep, mostFixStep, t.has)
	if len(own) == 0 {
		own = t.sheet.timings(fixClock, leastFixStep, mostFixStep, t.has)
	}
	if m.main == nil {
		t.wide = true
		if t.clock = best(own); t.clock == nil {
			t.clock = best(t.sheet.timings(clock, leastStep, mostStep, t.has))
		}
		return t.clock != nil
	}
	one := m.main.timings(clock)
	if m.main.sheet == t.sheet {
		t.wide = true
		own = t.sheet.timings(clock, leastFixStep, mostFixStep, rowsOf(t.arrivals()))
		m.main.clock = common(one, own)
		t.clock = m.main.clock
	} else {
		m.main.clock, t.clock = agree(one, own)
	}
	if m.main.clock == nil {
		what := finding.New("sheets.other_clock", finding.Text("file", m.track.sheet.file))
		if m.main.sheet == t.sheet {
			what = finding.New("sheets.slow_motion")
		}
		m.say(m.main.sheet.file, 1, what)
		m.main, t.wide = nil, true
		t.clock = best(own)
		return t.clock != nil
	}
	if g := r.gravity; g != nil && g.settle(m.main) == nil {
		m.say(g.sheet.file, 1, finding.New("sheets.without_gravity"))
		m.main = nil
	}
	return true
}

// rowsOf reports whether a row is one of a list.
func rowsOf(list []int) func(row int) bool {
	in := make(map[int]bool, len(list))
	for _, row := range list {
		in[row] = true
	}
	return func(row int) bool { return in[row] }
}

// settle finds the clock of another sensor that overlaps with the accelerometer's.
func (t *triple) settle(main *triple) *timing {
	if t.sheet == main.sheet {
		t.clock = main.clock
		return t.clock
	}
	_, t.clock = agree([]*timing{main.clock}, append(t.timings(clock), t.timings(turnClock)...))
	return t.clock
}

// motion makes the readings of the accelerometer and the gyroscope.
func (m *making) motion(r recipe) {
	file := m.main.sheet.file
	motion := r.motion()
	m.sayClock(file, m.main.clock)
	first, u := force, m.main.unitOfGravity()
	if r.gravity != nil {
		first, u = linear, m.main.axes[0].unit
		m.log.Notes = append(m.log.Notes, r.gravity.note(gravity, r.gravity.unitOfGravity(), "sheets.numbers_show"))
	}
	m.log.Notes = append(m.log.Notes, m.main.note(first, u, m.main.axes[0].why()))
	note, err := repair.Force(file, motion)
	var input *sensors.InputError
	if errors.As(err, &input) {
		m.say(file, 1, input.What)
		m.main = nil
		return
	}
	if note != nil && m.main.axes[0].unit.si != u.si {
		m.log.Notes = append(m.log.Notes, *note)
	}
	var spikes int
	if motion, spikes = repair.DropSpikes(motion); spikes > 0 {
		m.log.Notes = append(m.log.Notes, repair.SpikesDropped(file, spikes))
	}
	for _, t := range triples(m.sheets, turn) {
		if t.sheet == m.main.sheet {
			if own := best(t.timings(turnClock)); own != nil && overlap(own, m.main.clock) > 0.5 {
				t.clock = own
			}
		}
		if t.clock != nil || t.settle(m.main) != nil {
			addTurn(motion, t)
			m.log.Notes = append(m.log.Notes, t.note(turn, t.axes[0].unit, t.axes[0].why()))
			break
		}
	}
	m.log.Motion = motion
}

// why is the source of a unit.
func (c *column) why() finding.Code {
	switch {
	case c.asked && c.unit.known():
		return "sheets.asked"
	case c.unit.known():
		return "sheets.header_says"
	}
	return "sheets.numbers_show"
}

// sayClock notes how a column of time was read, and how many of its times were not.
func (m *making) sayClock(file string, t *timing) {
	m.say(file, 1, t.note())
	if t.wild > 0 {
		m.say(file, t.wild, finding.New("sheets.wild_time"))
	}
}

func (t *timing) note() finding.Finding {
	why := finding.Code("sheets.numbers_show")
	if t.said {
		why = t.column.why()
	}
	return readAs(clock, t.column.name, "", t.unit, why).What
}

// fixes makes the fixes and converts their speeds.
func (m *making) fixes() error {
	t := m.track
	var utc *timing
	for _, r := range []role{fixClock, clock} {
		if r == clock && m.main != nil && t.sheet == m.main.sheet {
			continue // the time of the row is that of its motion
		}
		for _, c := range t.sheet.timings(r, leastFixStep, mostFixStep, t.has) {
			if c.epoch && (!c.column.words || c.column.zoned) && utc == nil {
				utc = c
			}
		}
	}
	fixes, lost := t.fixes(utc)
	file := t.sheet.file
	if lost > 0 {
		m.say(file, lost, finding.New("sheets.no_speed"))
	}
	var d repair.Disorder
	m.log.Fixes, d = repair.Order(fixes, repair.FixTime)
	m.log.Notes = append(m.log.Notes, d.Notes(file, "input.fix")...)
	if len(m.log.Fixes) == 0 {
		return &sensors.InputError{File: file, What: finding.New("sheets.no_track"), Remedy: finding.New("sheets.name_track")}
	}
	if m.main == nil || t.sheet != m.main.sheet {
		m.sayClock(file, t.clock)
	}
	if t.lat != nil && t.lon != nil {
		m.log.Notes = append(m.log.Notes, readAs(latitude, t.lat.name+", "+t.lon.name, file, unit{}, ""))
	}
	return m.speed(file)
}

// speed converts the speeds to m/s and notes the source of the unit.
func (m *making) speed(file string) error {
	c := m.track.speed
	if c == nil {
		m.say(file, len(m.log.Fixes), finding.New("sheets.speed_from_way"))
		return nil
	}
	if c.asked && c.unit.known() {
		m.log.Notes = append(m.log.Notes, readAs(speed, c.name, file, c.unit, "sheets.asked"))
		return repair.SpeedAsked(m.log, file)
	}
	scale, err := repair.Speed(m.log, file)
	switch u := c.unit; {
	case err != nil:
		return err
	case u.known():
		m.log.Notes = append(m.log.Notes, readAs(speed, c.name, file, u, "sheets.header_says"))
	case scale == 1:
		m.log.Notes = append(m.log.Notes, readAs(speed, c.name, file, unit{"m/s", 1}, "sheets.usual"))
	default:
		m.log.Notes = append(m.log.Notes, readAs(speed, c.name, file, unit{}, ""))
	}
	return nil
}

// fromZero shifts the log's clock to begin at its first sample.
func (m *making) fromZero() {
	zero := m.log.Begin()
	for i := range m.log.Motion {
		m.log.Motion[i].T -= zero
	}
	for i := range m.log.Fixes {
		m.log.Fixes[i].T -= zero
	}
	for i := range m.log.Pressure {
		m.log.Pressure[i].T -= zero
	}
}
