package nmea

import (
	"context"
	"errors"
	"io"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// stream is a receiver that writes its sentences as it measures.
type stream struct {
	in  io.ReadCloser
	now func() float64
}

// New returns a source of fixes from the lines of a receiver, for instance over
// a serial port, Bluetooth or a socket. now is the log's clock, in s, which
// stamps each line on arrival. Run closes in when it returns, which also ends a
// read that waits for a silent receiver.
func New(in io.ReadCloser, now func() float64) sensors.Source { return stream{in: in, now: now} }

// arrival is a sentence with its time, or the error that ended reading.
type arrival struct {
	t   float64
	s   Sentence
	bad bool // the line was not a valid sentence
}

// Run delivers fixes until the receiver ends or ctx does.
func (s stream) Run(ctx context.Context, sink sensors.Sink) error {
	defer s.in.Close()
	if err := ctx.Err(); err != nil {
		return err
	}
	start := s.now()
	for _, absent := range []sensors.Sensor{sensors.SensorMotion, sensors.SensorTurn, sensors.SensorPressure} {
		sink.State(sensors.State{T: start, Sensor: absent, Condition: sensors.Missing,
			Detail: finding.New("sensor.receiver_has_none")})
	}
	r := &receiver{sink: sensors.NewInOrder(sink), joiner: NewJoiner()}
	r.state(start, sensors.Available, "nmea.no_speed_yet")
	lines := make(chan arrival, 64)
	ended := make(chan error, 1)
	stop := make(chan struct{})
	defer close(stop)
	go s.listen(lines, ended, stop)
	for {
		select {
		case a := <-lines:
			if err := ctx.Err(); err != nil {
				return err
			}
			r.take(a)
		case err := <-ended:
			for len(lines) > 0 {
				if err := ctx.Err(); err != nil {
					return err
				}
				r.take(<-lines)
			}
			r.deliver(s.now(), r.joiner.Flush())
			r.sink.End(s.now())
			return err
		case <-ctx.Done():
			return ctx.Err()
		}
	}
}

// listen reads lines until they end or nobody receives them any more.
func (s stream) listen(lines chan<- arrival, ended chan<- error, stop <-chan struct{}) {
	l := newLineReader(s.in)
	for {
		line, err := l.next()
		if err != nil {
			if errors.Is(err, io.EOF) {
				err = nil
			}
			ended <- err
			return
		}
		sentence, err := Parse(line)
		select {
		case lines <- arrival{t: s.now(), s: sentence, bad: err != nil}:
		case <-stop:
			return
		}
	}
}

// receiver is the state of a stream's receiver.
type receiver struct {
	sink      *sensors.InOrder
	joiner    *Joiner
	condition sensors.Condition
	garbled   int // invalid lines since the last valid one
}

func (r *receiver) state(t float64, c sensors.Condition, detail finding.Code) {
	if r.condition != c {
		r.condition = c
		r.sink.State(sensors.State{T: t, Sensor: sensors.SensorFix, Condition: c, Detail: finding.New(detail)})
	}
}

func (r *receiver) take(a arrival) {
	const manyLines = 20 // a second or two of a usual receiver
	if a.bad {
		if r.garbled++; r.garbled == manyLines {
			r.state(a.t, sensors.Silent, "nmea.garbled")
		}
		return
	}
	r.garbled = 0
	void := r.joiner.Void
	r.deliver(a.t, r.joiner.Add(a.t, a.s))
	if r.joiner.Void > void && r.condition == sensors.Working {
		r.state(a.t, sensors.Silent, "nmea.lost")
	}
}

func (r *receiver) deliver(t float64, fixes []sensors.Fix) {
	for _, f := range fixes {
		r.state(t, sensors.Working, "")
		r.sink.Fix(f)
	}
}
