// Package intake opens a recording of any kind that Stillair reads: a session
// file, a plain log as folder or zip, a browser's JSON Lines, a receiver's
// NMEA sentences, the tables of a sensor logger, a track in GPX or FIT. What a
// file is shows in its first bytes, not in its name.
package intake

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/fit"
	"stillair/sensors/gpx"
	"stillair/sensors/nmea"
	"stillair/sensors/plain"
	"stillair/sensors/sheets"
	"stillair/sensors/w3c"
)

// Kind is what a recording was read as.
type Kind string

// The kinds of recording.
const (
	Session   Kind = "session file"
	PlainLog  Kind = "plain log"
	JSONLines Kind = "JSON Lines of a browser"
	NMEA      Kind = "NMEA sentences"
	Tables    Kind = "tables of a sensor logger"
	GPX       Kind = "GPX track"
	FIT       Kind = "FIT activity"
)

// Ride is a recording as read. Session holds what only a session file knows;
// it is nil for all others.
type Ride struct {
	Log     *sensors.Log
	Kind    Kind
	Session *session.Recording
	More    []*session.Recording // further recordings in the same file
}

// All gives every recording of the file as a ride of its own, this one first.
func (r *Ride) All() []*Ride {
	all := []*Ride{r}
	for _, rec := range r.More {
		all = append(all, &Ride{Log: rec.Log, Kind: r.Kind, Session: rec})
	}
	return all
}

// Open reads the recording at path. What is asked is for the columns of tables.
func Open(path string, asked ...sheets.Ask) (*Ride, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, missing(path, err)
	case info.IsDir():
		return folder(path, asked)
	case strings.EqualFold(filepath.Ext(path), ".csv"):
		return table(path, asked)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, missing(path, err)
	}
	defer f.Close()
	head := make([]byte, 4096)
	n, err := io.ReadFull(f, head)
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return nil, missing(path, err)
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return nil, missing(path, err)
	}
	return read(f, info.Size(), head[:n], path, asked)
}

// folder reads a folder: a plain log, or the tables of a logger.
func folder(path string, asked []sheets.Ask) (*Ride, error) {
	if plain.Fits(os.DirFS(path)) || !sheets.Fits(os.DirFS(path)) {
		return asPlain(plain.Read(path))
	}
	return asTables(sheets.Read(path, asked))
}

// table reads one table, or the plain log that it is a file of.
func table(path string, asked []sheets.Ask) (*Ride, error) {
	if plain.IsPart(filepath.Base(path)) && plain.Fits(os.DirFS(filepath.Dir(path))) {
		return asPlain(plain.Read(path))
	}
	return asTables(sheets.Read(path, asked))
}

// Input is a file that can be read from anywhere, as *os.File can.
type Input interface {
	io.Reader
	io.ReaderAt
}

// read reads a file of the given size that begins with head.
func read(f Input, size int64, head []byte, name string, asked []sheets.Ask) (*Ride, error) {
	text := bytes.TrimLeft(head, "\ufeff \t\r\n")
	switch {
	case session.IsSession(head), strings.HasSuffix(strings.ToLower(name), ".jsonl.gz"): // by name where its beginning is spoilt
		return asSession(session.ReadAll(f, name))
	case bytes.HasPrefix(head, []byte("PK")) && !plain.FitsZip(f, size) && sheets.FitsZip(f, size):
		return asTables(sheets.ReadZip(f, size, name, asked))
	case bytes.HasPrefix(head, []byte("PK")):
		return asPlain(plain.ReadZip(f, size, name))
	case bytes.HasPrefix(text, []byte(`{"type":"part"`)), bytes.HasPrefix(text, []byte(`{"type":"header"`)):
		return asSession(session.ReadAllText(f, name))
	case bytes.HasPrefix(text, []byte(`{`)) && isResults(text):
		return nil, &sensors.InputError{File: name, What: finding.Said("these are results, not a recording"), Remedy: finding.Said("give the recording that they were made from")}
	case bytes.HasPrefix(text, []byte(`{`)):
		log, err := w3c.Read(f, name)
		return as(JSONLines, log, err)
	case bytes.HasPrefix(text, []byte("$")):
		log, err := nmea.Read(f, name)
		return as(NMEA, log, err)
	case fit.Is(head):
		log, err := fit.Read(f, name)
		return as(FIT, log, err)
	case bytes.HasPrefix(text, []byte("<")) && bytes.Contains(text, []byte("<gpx")):
		log, err := gpx.Read(f, name)
		return as(GPX, log, err)
	case size == 0:
		return nil, &sensors.InputError{File: name, What: finding.Said("the file is empty"), Remedy: finding.Said("look for another copy of the recording")}
	case looksLikeNMEA(text):
		log, err := nmea.Read(f, name)
		return as(NMEA, log, err)
	}
	if sheets.IsTable(name) && sheets.Begins(head) {
		return asTables(sheets.Read(name, asked))
	}
	return nil, &sensors.InputError{File: name, What: finding.Said("this is no recording that can be read: " + looks(head)),
		Remedy: finding.Said("give a session file (.jsonl.gz), a folder or .zip with motion.csv and gnss.csv, JSON Lines of a browser, NMEA sentences, the tables of a sensor logger (.csv, a folder or .zip of them), GPX, or FIT")}
}

// isResults reports whether text begins as a results document does.
func isResults(text []byte) bool {
	return bytes.Contains(text, []byte(`"version"`)) && bytes.Contains(text, []byte(`"defaults"`))
}

// looksLikeNMEA reports whether the first line is a sentence behind a time.
func looksLikeNMEA(text []byte) bool {
	line, _, _ := bytes.Cut(text, []byte("\n"))
	_, sentence, found := bytes.Cut(line, []byte("$"))
	return found && bytes.Contains(sentence, []byte(","))
}

// looks says in words how an unknown file begins.
func looks(head []byte) string {
	line, _, _ := bytes.Cut(head, []byte("\n"))
	if !utf8.Valid(line) {
		return "its content is not text"
	}
	for _, c := range line {
		if c < ' ' && c != '\t' && c != '\r' {
			return "its content is not text"
		}
	}
	return fmt.Sprintf("it begins with %.40q", bytes.TrimSpace(line))
}

func as(kind Kind, log *sensors.Log, err error) (*Ride, error) {
	if err != nil {
		return nil, err
	}
	return &Ride{Log: log, Kind: kind}, nil
}

func asPlain(log *sensors.Log, err error) (*Ride, error) { return as(PlainLog, log, err) }

func asTables(log *sensors.Log, err error) (*Ride, error) { return as(Tables, log, err) }

func asSession(all []*session.Recording, err error) (*Ride, error) {
	if err != nil {
		return nil, err
	}
	return &Ride{Log: all[0].Log, Kind: Session, Session: all[0], More: all[1:]}, nil
}

// missing says that a file cannot be opened, and why.
func missing(path string, err error) error {
	what, mend := "it cannot be opened: "+err.Error(), "check that the file can be read"
	switch {
	case os.IsNotExist(err):
		what, mend = "there is no such file or folder", "check the path"
	case os.IsPermission(err):
		what, mend = "it may not be read", "give yourself leave to read it, or copy it"
	}
	return &sensors.InputError{File: path, What: finding.Said(what), Remedy: finding.Said(mend), Err: err}
}
