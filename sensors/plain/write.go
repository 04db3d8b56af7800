package plain

import (
	"archive/zip"
	"bufio"
	"errors"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"stillair/sensors"
	"stillair/sensors/internal/repair"
)

// Write writes a log into a folder, which it creates if it is missing. Files of
// an existing log are replaced.
func Write(dir string, log *sensors.Log) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	return eachFile(log, func(name string, write func(io.Writer) error) error {
		return replace(filepath.Join(dir, name), write)
	})
}

// replace writes a whole file. Only regular files are replaced: no link is
// followed.
func replace(path string, write func(io.Writer) error) error {
	if there, err := os.Lstat(path); err == nil && !there.Mode().IsRegular() {
		return &fs.PathError{Op: "replace", Path: path, Err: fs.ErrExist}
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".*.csv")
	if err != nil {
		return err
	}
	if err = errors.Join(write(f), f.Chmod(0o644), f.Close()); err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return nil
}

// WriteZip writes a log as a zip archive.
func WriteZip(w io.Writer, log *sensors.Log) error {
	z := zip.NewWriter(w)
	err := eachFile(log, func(name string, write func(io.Writer) error) error {
		f, err := z.Create(name)
		if err != nil {
			return err
		}
		return write(f)
	})
	return errors.Join(err, z.Close())
}

// eachFile calls put for each file that the log needs.
func eachFile(log *sensors.Log, put func(name string, write func(io.Writer) error) error) error {
	err := put(motionFile, func(w io.Writer) error { return writeMotion(w, log.Motion) })
	if err == nil {
		err = put(gnssFile, func(w io.Writer) error { return writeFixes(w, log.Fixes) })
	}
	if err == nil && len(log.Pressure) > 0 {
		err = put(pressureFile, func(w io.Writer) error { return writePressure(w, log.Pressure) })
	}
	if err == nil && len(log.Sound) > 0 {
		err = put(soundFile, func(w io.Writer) error { return writeSound(w, log.Sound) })
	}
	if err == nil {
		err = put(rideFile, func(w io.Writer) error {
			_, err := w.Write(EncodeRide(log.Ride))
			return err
		})
	}
	return err
}

// sheetWriter writes rows of numbers; the first error is kept by the writer below it.
type sheetWriter struct {
	w    *bufio.Writer
	row  []byte
	open bool // the row has a cell
}

func newSheet(w io.Writer, columns []column) *sheetWriter {
	c := &sheetWriter{w: bufio.NewWriterSize(w, 1<<16)}
	for _, col := range columns {
		c.cell([]byte(col.name))
	}
	c.end()
	return c
}

func (c *sheetWriter) cell(b []byte) {
	if c.open {
		c.row = append(c.row, ',')
	}
	c.open = true
	c.row = append(c.row, b...)
}

// number writes the shortest decimal that reads back as v; nothing for NaN.
func (c *sheetWriter) number(v float64) {
	var b [32]byte
	format := byte('f')
	if a := math.Abs(v); a >= 1e15 || a < 1e-7 && a > 0 {
		format = 'e'
	}
	if math.IsNaN(v) {
		c.cell(nil)
		return
	}
	c.cell(strconv.AppendFloat(b[:0], v, format, -1, 64))
}

// end ends the row according to RFC 4180.
func (c *sheetWriter) end() {
	c.row = append(c.row, '\r', '\n')
	c.w.Write(c.row) // bufio keeps the error for Flush
	c.row, c.open = c.row[:0], false
}

func writeMotion(w io.Writer, motion []sensors.Motion) error {
	columns, turns := motionColumns, repair.HasTurn(motion)
	if !turns {
		columns = columns[:4]
	}
	c := newSheet(w, columns)
	for _, m := range motion {
		for _, v := range [...]float64{m.T, m.Force.X, m.Force.Y, m.Force.Z} {
			c.number(v)
		}
		if turns {
			c.number(m.Turn.X)
			c.number(m.Turn.Y)
			c.number(m.Turn.Z)
		}
		c.end()
	}
	return c.w.Flush()
}

func writeFixes(w io.Writer, fixes []sensors.Fix) error {
	c := newSheet(w, gnssColumns)
	for _, f := range fixes {
		for _, v := range [...]float64{f.T, f.Speed, f.LatDeg, f.LonDeg} {
			c.number(v)
		}
		c.cell(millis(f.UTC))
		for _, v := range [...]float64{f.Alt, f.BearingDeg, f.SpeedSD, f.HSD} {
			c.number(v)
		}
		c.end()
	}
	return c.w.Flush()
}

// millis writes a time in milliseconds since 1970, to the nanosecond.
func millis(t time.Time) []byte {
	if t.IsZero() {
		return nil
	}
	b := strconv.AppendInt(nil, t.UnixMilli(), 10)
	if ns := t.Nanosecond() % 1e6; ns != 0 {
		digits := strconv.Itoa(1e6 + ns)[1:]
		b = append(append(b, '.'), strings.TrimRight(digits, "0")...)
	}
	return b
}

func writePressure(w io.Writer, pressure []sensors.Pressure) error {
	c := newSheet(w, pressureColumns)
	for _, p := range pressure {
		c.number(p.T)
		c.number(p.Pa)
		c.end()
	}
	return c.w.Flush()
}
