// Package input opens a recording of any kind that Stillair reads: a session
// file, a plain log as folder or zip, a browser's JSON Lines, a receiver's
// NMEA sentences, the tables of a sensor logger, a track in GPX or FIT. What a
// file is shows in its first bytes, not in its name.
package input

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

// Ride is a recording as read. Session holds what only a session file contains;
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
	case session.IsSession(head), strings.HasSuffix(strings.ToLower(name), ".jsonl.gz"): // by name if its beginning is damaged
		return asSession(session.ReadAll(f, name))
	case bytes.HasPrefix(head, []byte("PK")) && !plain.FitsZip(f, size) && sheets.FitsZip(f, size):
		return asTables(sheets.ReadZip(f, size, name, asked))
	case bytes.HasPrefix(head, []byte("PK")):
		return asPlain(plain.ReadZip(f, size, name))
	case bytes.HasPrefix(text, []byte(`{"type":"part"`)), bytes.HasPrefix(text, []byte(`{"type":"header"`)):
		return asSession(session.ReadAllText(f, name))
	case bytes.HasPrefix(text, []byte(`{`)) && isResults(text):
		return nil, &sensors.InputError{File: name, What: finding.New("input.results"), Remedy: finding.New("input.give_source")}
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
		return nil, &sensors.InputError{File: name, What: finding.New("plain.empty_file"), Remedy: finding.New("session.another_copy")}
	case looksLikeNMEA(text):
		log, err := nmea.Read(f, name)
		return as(NMEA, log, err)
	}
	if sheets.IsTable(name) && sheets.Begins(head) {
		return asTables(sheets.Read(name, asked))
	}
	return nil, &sensors.InputError{File: name, What: finding.New("input.no_recording", finding.Of("why", looks(head))), Remedy: finding.New("input.kinds")}
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

// looks describes the beginning of an unknown file.
func looks(head []byte) finding.Finding {
	line, _, _ := bytes.Cut(head, []byte("\n"))
	if !utf8.Valid(line) {
		return finding.New("input.not_text")
	}
	for _, c := range line {
		if c < ' ' && c != '\t' && c != '\r' {
			return finding.New("input.not_text")
		}
	}
	return finding.New("input.begins_with", finding.Text("text", fmt.Sprintf("%.40s", bytes.TrimSpace(line))))
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

// missing is the error for a file that cannot be opened.
func missing(path string, err error) error {
	what, remedy := finding.New("input.cannot_open", sensors.Cause(err)), finding.Code("input.check_file")
	switch {
	case os.IsNotExist(err):
		what, remedy = finding.New("input.no_such_file"), "input.check_name"
	case os.IsPermission(err):
		what, remedy = finding.New("input.not_allowed"), "input.permission"
	}
	return &sensors.InputError{File: path, What: what, Remedy: finding.New(remedy), Err: err}
}
