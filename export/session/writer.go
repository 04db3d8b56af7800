package session

import (
	"bytes"
	"compress/gzip"
	"errors"
	"math"
	"slices"
	"strconv"

	"stillair/sensors"
)

// Store is where a session goes: a file, or what a browser has in its place.
type Store interface {
	// Append adds p at the end. After an error any part of p may be there.
	Append(p []byte) error
	// Sync returns once all that was appended will survive a loss of power.
	Sync() error
}

// Limits of a writer's memory.
const (
	partSeconds  = 1.0     // a part is closed once its samples span this long
	partSamples  = 4096    // or this many samples
	repeatEvery  = 60      // parts between repetitions of header and ride, which are also in part 2 and in the last
	backlogBytes = 8 << 20 // parts kept while the store fails: an hour or so
)

// ErrBacklog is wrapped by a Writer's error once the store failed for so long
// that parts had to be given up.
var ErrBacklog = errors.New("the storage failed for too long and some of the ride is lost")

// ErrClosed is returned for anything written after Close.
var ErrClosed = errors.New("the session file is closed")

// Writer writes one session. It is a sensors.Sink: samples are collected for
// about a second, then appended as one part and synced. Its memory does not
// grow with the length of the ride. It must be used by one goroutine only.
//
// A failing store loses nothing at first: the parts wait and are tried again
// with each later one. Err returns the current state.
type Writer struct {
	store  Store
	header Header
	ride   sensors.Ride
	name   string

	motion   []sensors.Motion
	pressure []sensors.Pressure
	lines    []byte // complete lines of the open part, other than the columns
	from, to float64
	samples  int

	parts   int // number of the last part made
	kept    int // number up to which the parts are known to be in the store
	backlog row // parts that are not yet in the store
	written int64
	lost    int
	err     error
	closed  bool

	unsynced row  // parts that were appended since the last good sync
	doubted  bool // a sync of them failed

	text  []byte
	gz    *gzip.Writer
	packd bytes.Buffer
}

// ErrNoID is returned where a session is to be written without an identity.
var ErrNoID = errors.New("a recording needs an identity")

// NewWriter begins a session and appends its first part, the header, whose
// identity must be one of NewID that no other recording has.
func NewWriter(store Store, header Header, ride sensors.Ride) (*Writer, error) {
	if header.ID == (ID{}) {
		return nil, ErrNoID
	}
	w := &Writer{store: store, header: header, ride: ride}
	w.reset()
	w.lines = appendRide(appendHeader(w.lines, header), ride)
	return w, w.Flush()
}

func (w *Writer) reset() {
	w.motion, w.pressure, w.lines = w.motion[:0], w.pressure[:0], w.lines[:0]
	w.from, w.to, w.samples = math.Inf(1), math.Inf(-1), 0
}

// Motion takes a reading of accelerometer and gyroscope.
func (w *Writer) Motion(m sensors.Motion) {
	w.motion = append(w.motion, m)
	w.took(m.T)
}

// Pressure takes a reading of the barometer.
func (w *Writer) Pressure(p sensors.Pressure) {
	w.pressure = append(w.pressure, p)
	w.took(p.T)
}

// Fix takes a fix.
func (w *Writer) Fix(f sensors.Fix) {
	w.lines = appendFix(w.lines, f)
	w.took(f.T)
}

// Sound takes a stretch of sound.
func (w *Writer) Sound(s sensors.Sound) {
	w.lines = appendSound(w.lines, s)
	w.took(s.T)
}

// State takes a sensor's change of condition.
func (w *Writer) State(s sensors.State) {
	w.lines = appendState(w.lines, s)
	w.took(s.T)
}

// Remark records a rider's remark about a moment.
func (w *Writer) Remark(r Remark) {
	w.lines = appendRemark(w.lines, r)
	w.took(r.T)
}

// SetRide replaces what was entered about the ride, from the next part on and for the whole
// session: a reader takes the last.
func (w *Writer) SetRide(ride sensors.Ride) {
	w.ride = ride
	w.lines = appendRide(w.lines, ride)
}

// SetName gives the session a name; the last one counts.
func (w *Writer) SetName(name string) {
	w.name = name
	w.lines = appendName(w.lines, name)
}

// took notes a sample's time and closes the part once it is full.
func (w *Writer) took(t float64) {
	if t < w.from {
		w.from = t
	}
	if t > w.to {
		w.to = t
	}
	w.samples++
	if w.to-w.from >= partSeconds || w.samples >= partSamples {
		_ = w.Flush() // kept in w.err
	}
}

// Flush closes the open part now, appends and syncs it. A recorder calls it
// when samples stop coming. Its error is that of the store; what could not be
// stored waits for the next call.
func (w *Writer) Flush() error {
	if w.closed {
		return ErrClosed
	}
	if w.samples > 0 || len(w.lines) > 0 {
		w.lost += w.backlog.add(w.part())
		w.reset()
	}
	w.err = w.drain()
	return w.err
}

// Close writes the end line and what is still waiting. A session that was not
// closed can be read too; a reader notes it. If the store fails the session
// stays open, and Close may be tried again.
func (w *Writer) Close() error {
	if w.closed {
		return ErrClosed
	}
	w.lines = append(w.aboutRide(w.lines), `{"type":"end"}`+"\n"...)
	err := w.Flush()
	w.closed = len(w.backlog.parts)+len(w.unsynced.parts) == 0
	return err
}

// Err returns the store's error for the last part, nil if it was appended and
// synced.
func (w *Writer) Err() error { return w.err }

// Stored returns how many bytes are in the store from this writer, and how
// many wait for a store that fails.
func (w *Writer) Stored() (written, waiting int64) { return w.written, int64(w.backlog.bytes) }

// aboutRide appends header, ride and name as they are now.
func (w *Writer) aboutRide(dst []byte) []byte {
	dst = appendRide(appendHeader(dst, w.header), w.ride)
	if w.name != "" {
		dst = appendName(dst, w.name)
	}
	return dst
}

// Unstored returns the parts that the store has not confirmed: those that wait
// and those of which no sync is known. They are whole and carry the recording's
// identity, so that they can be joined to the file later, in any order.
func (w *Writer) Unstored() []byte {
	if parts := slices.Concat(w.unsynced.parts, w.backlog.parts); len(parts) > 0 {
		return bytes.Join(parts, nil)
	}
	return nil
}

// part returns the open part as a gzip member.
func (w *Writer) part() []byte {
	w.parts++
	b := append(append(w.text[:0], `{"type":"part","id":"`...), w.header.ID.String()...)
	b = strconv.AppendInt(append(b, `","n":`...), int64(w.parts), 10)
	b = strconv.AppendInt(append(b, `,"kept":`...), int64(w.kept), 10)
	if w.samples > 0 {
		b = appendField(b, "from_s", w.from, timeDecimals)
		b = appendField(b, "to_s", w.to, timeDecimals)
	}
	b = append(b, "}\n"...)
	if w.parts == 2 || w.parts%repeatEvery == 0 {
		b = w.aboutRide(b)
	}
	b = append(b, w.lines...)
	if len(w.motion) > 0 {
		b = appendMotion(b, w.motion)
	}
	if len(w.pressure) > 0 {
		b = appendPressure(b, w.pressure)
	}
	w.text = b
	return w.pack(b)
}
