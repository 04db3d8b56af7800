package plain

import (
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/packed"
	"stillair/sensors/internal/repair"
	"stillair/sensors/nmea"
)

// Read reads a log from a folder or a zip archive of one. The name of a file
// in the folder, such as its motion.csv, stands for the folder.
func Read(name string) (*sensors.Log, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, &sensors.InputError{File: name, What: finding.New("input.cannot_open", sensors.Cause(err)), Remedy: finding.New("input.check_name"), Err: err}
	}
	switch {
	case info.IsDir():
		return ReadFS(os.DirFS(name), name)
	case isWanted(filepath.Base(name)):
		dir := filepath.Dir(name)
		return ReadFS(os.DirFS(dir), dir)
	case strings.EqualFold(filepath.Ext(name), ".csv"):
		return nil, &sensors.InputError{File: name, What: finding.New("plain.no_log_file"),
			Remedy: finding.New("plain.give_folder")}
	case !info.Mode().IsRegular():
		return nil, &sensors.InputError{File: name, What: finding.New("plain.no_regular_file"), Remedy: finding.New("plain.give_folder_or_zip")}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, packed.AsInput(name, 0, err)
	}
	defer f.Close()
	return ReadZip(f, info.Size(), name)
}

// ReadFS reads a log from the top of a file system; name is for people.
func ReadFS(fsys fs.FS, name string) (*sensors.Log, error) {
	b, err := folder(fsys, name)
	if err != nil {
		return nil, err
	}
	return b.read()
}

// ReadZip reads a log from a zip archive of the given size; name is for
// people.
func ReadZip(r io.ReaderAt, size int64, name string) (*sensors.Log, error) {
	b, err := archive(r, size, name)
	if err != nil {
		return nil, err
	}
	return b.read()
}

func (b *bundle) read() (*sensors.Log, error) {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	keep := func(y *tally) { log.Notes = append(log.Notes, y.notes...) }
	clock, order := 1.0, repair.NewClock("input.sample")
	found, err := b.with(motionFile, func(f file) (err error) {
		var y *tally
		log.Motion, clock, y, err = readMotion(f, order)
		keep(y)
		return err
	})
	if err != nil {
		return nil, err
	}
	if !found {
		return nil, b.lacks(motionFile, finding.New("plain.needs_motion"))
	}
	if err := b.readFixes(log, clock, order, keep); err != nil {
		return nil, err
	}
	if _, err := b.with(pressureFile, func(f file) (err error) {
		var y *tally
		log.Pressure, y, err = readPressure(f, clock, order)
		keep(y)
		return err
	}); err != nil {
		return nil, err
	}
	if _, err := b.with(soundFile, func(f file) (err error) {
		var y *tally
		log.Sound, y, err = readSound(f, clock)
		keep(y)
		return err
	}); err != nil {
		return nil, err
	}
	if err := b.readRide(log, clock); err != nil {
		return nil, err
	}
	if err := b.sameClock(log); err != nil {
		return nil, err
	}
	log.Ride.Axes = repair.Settle(log, b.files[motionFile].name, log.Ride.Axes)
	return log, nil
}

func (b *bundle) readFixes(log *sensors.Log, clock float64, order *repair.Clock, keep func(*tally)) error {
	found, err := b.with(gnssFile, func(f file) (err error) {
		var y *tally
		log.Fixes, y, err = readFixes(f, clock, order)
		keep(y)
		if err != nil {
			return err
		}
		_, err = repair.Speed(log, f.name)
		return err
	})
	if found || err != nil {
		return err
	}
	switch names := b.nmeaFiles(); len(names) {
	case 0:
		return b.lacks(gnssFile, finding.New("plain.needs_fixes"))
	case 1:
		_, err := b.with(names[0], func(f file) error {
			span := nmea.Span{From: log.Motion[0].T, To: log.Motion[len(log.Motion)-1].T}
			fixes, notes, err := nmea.ReadBeside(f.in, f.name, span)
			log.Fixes, log.Notes = fixes, append(log.Notes, notes...)
			if err != nil {
				return err
			}
			_, err = repair.Speed(log, f.name)
			return err
		})
		return err
	}
	return b.lacks(gnssFile, finding.New("plain.one_nmea"))
}

func (b *bundle) readRide(log *sensors.Log, clock float64) error {
	const longest = 1 << 20
	_, err := b.with(rideFile, func(f file) error {
		text, err := io.ReadAll(io.LimitReader(f.in, longest+1))
		if err != nil {
			return packed.AsInput(f.name, 0, err)
		}
		if len(text) > longest {
			return &sensors.InputError{File: f.name, What: finding.New("plain.long_file", finding.Size("most", longest)), Remedy: finding.New("plain.keep_known")}
		}
		var notes []sensors.Note
		log.Ride, notes, err = DecodeRide(text, f.name)
		log.Notes = append(log.Notes, notes...)
		return err
	})
	// The setups have times in the same unit as the file.
	if n := len(log.Ride.Setups); n > 0 && clock != 1 && log.Ride.Setups[n-1].From > log.Motion[len(log.Motion)-1].T {
		for i := range log.Ride.Setups {
			log.Ride.Setups[i].From *= clock
		}
	}
	return err
}

// sameClock refuses files whose times do not overlap: they cannot be put
// together.
func (b *bundle) sameClock(log *sensors.Log) error {
	from, to := log.Motion[0].T, log.Motion[len(log.Motion)-1].T
	other := func(file string, first, last float64) error {
		if first <= to+5 && last >= from-5 {
			return nil
		}
		return &sensors.InputError{File: b.name,
			What:   finding.New("plain.other_clock", finding.Text("file", file), finding.Moment("first", first), finding.Moment("last", last), finding.Moment("from", from), finding.Moment("to", to)),
			Remedy: finding.New("plain.one_clock")}
	}
	if n := len(log.Fixes); n > 0 {
		if err := other("gnss", log.Fixes[0].T, log.Fixes[n-1].T); err != nil {
			return err
		}
	}
	if n := len(log.Pressure); n > 0 {
		if err := other(pressureFile, log.Pressure[0].T, log.Pressure[n-1].T); err != nil {
			return err
		}
	}
	if n := len(log.Sound); n > 0 {
		return other(soundFile, log.Sound[0].T, log.Sound[n-1].End())
	}
	return nil
}
