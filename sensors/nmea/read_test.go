package nmea

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
	"stillair/sensors/spoil"
)

// invented writes n seconds of an invented receiver: RMC, VTG and GGA each
// second, 20 m/s north, arriving 0.15 s late on a clock that began at noon.
func invented(n int, prefix bool) string {
	var b strings.Builder
	for i := range n {
		at := fmt.Sprintf("%02d%02d%02d.00", 12+i/3600, i/60%60, i%60)
		lat := 4800 + float64(i)*20/1852
		for _, body := range []string{
			fmt.Sprintf("GNRMC,%s,A,%09.4f,N,01131.0000,E,38.877,0.0,140626,,,A", at, lat),
			"GNVTG,0.0,T,,M,38.877,N,72.0,K,A",
			fmt.Sprintf("GNGGA,%s,%09.4f,N,01131.0000,E,1,12,0.7,545.4,M,46.9,M,,", at, lat),
		} {
			if prefix {
				fmt.Fprintf(&b, "%.3f,", 100+float64(i)+0.15)
			}
			b.Write(line(body))
		}
	}
	return b.String()
}

func TestJoinsTheSentencesOfAFix(t *testing.T) {
	log, err := Read(strings.NewReader(invented(60, true)), "ride.nmea")
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Fixes) != 60 || len(log.Notes) != 0 {
		t.Fatalf("%d fixes, notes %v; want 60 and none", len(log.Fixes), log.Notes)
	}
	f := log.Fixes[7]
	if math.Abs(f.T-107.15) > 1e-9 || math.Abs(f.Speed-38.877*1852/3600) > 1e-9 || f.BearingDeg != 0 || f.Alt != 545.4 ||
		math.Abs(f.LatDeg-(48+7*20.0/1852/60)) > 1e-6 || !f.UTC.Equal(time.Date(2026, 6, 14, 12, 0, 7, 0, time.UTC)) {
		t.Errorf("fix 7 is %+v", f)
	}
}

// TestPromptOnceTheOrderIsKnown: from the second fix on, a fix is returned with
// its last sentence, not with the first of the next.
func TestPromptOnceTheOrderIsKnown(t *testing.T) {
	j := NewJoiner()
	at, fixes := 0.0, 0
	var when []float64
	for _, l := range strings.SplitAfter(invented(4, false), "\n") {
		s, err := Parse([]byte(l))
		if err != nil {
			continue
		}
		at += 0.01
		for range j.Add(at, s) {
			fixes++
			when = append(when, at)
		}
	}
	if fmt.Sprintf("%.2f", when) != "[0.04 0.06 0.09 0.12]" {
		t.Errorf("fixes were handed out at %.2f", when)
	}
	if got := j.Flush(); got != nil {
		t.Errorf("the last fix came twice: %v", got)
	}
}

func TestVoidFixesAreLeftOut(t *testing.T) {
	text := invented(5, true)
	text = strings.Replace(text, string(line("GNVTG,0.0,T,,M,38.877,N,72.0,K,A")), string(line("GNVTG,,T,,M,,N,,K,N")), 2)
	log, err := Read(strings.NewReader(text), "ride.nmea")
	if err != nil {
		t.Fatal(err)
	}
	if len(log.Fixes) != 3 || !strings.Contains(fmt.Sprint(log.Notes), "nmea.void (2 times)") {
		t.Errorf("%d fixes, notes %v; want 3 and a note on two void ones", len(log.Fixes), log.Notes)
	}
}

func TestSpeedFromVTGWhereRMCIsMissing(t *testing.T) {
	text := "1.0 " + string(line("GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,")) +
		"1.1 " + string(line("GPVTG,054.7,T,,M,,N,36.0,K"))
	log, err := Read(strings.NewReader(text), "ride.nmea")
	if err != nil {
		t.Fatal(err)
	}
	if f := log.Fixes[0]; f.Speed != 10 || f.T != 1 || !f.UTC.IsZero() {
		t.Errorf("fix %+v, want 10 m/s at 1 s without a date", f)
	}
}

func TestReadBesideMotion(t *testing.T) {
	unix := float64(time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC).Unix())
	for _, c := range []struct {
		name   string
		text   string
		motion Span
		first  float64 // NaN: refused
	}{
		{"stamped", invented(20, true), Span{100, 120}, 100.15},
		{"motion in Unix time", invented(20, false), Span{unix - 5, unix + 30}, unix},
		{"no way to tell", invented(20, false), Span{100, 120}, nan},
		{"no date", strings.Repeat(string(line("GPVTG,054.7,T,,M,5,N,36.0,K")), 20), Span{unix, unix + 20}, nan},
	} {
		fixes, _, err := ReadBeside(strings.NewReader(c.text), "ride.nmea", c.motion)
		var input *sensors.InputError
		switch {
		case math.IsNaN(c.first):
			if !errors.As(err, &input) || input.Remedy.IsZero() || input.File != "ride.nmea" {
				t.Errorf("%s: error %v, want one that names file and remedy", c.name, err)
			}
		case err != nil:
			t.Errorf("%s: %v", c.name, err)
		case math.Abs(fixes[0].T-c.first) > 1e-9:
			t.Errorf("%s: first fix at %.3f, want %.3f", c.name, fixes[0].T, c.first)
		}
	}
}

func TestDamage(t *testing.T) {
	good := invented(30, true)
	garbled := strings.Replace(good, "GNGGA", "GNGGB", 3)
	for _, c := range []struct {
		name string
		in   io.Reader
		want string // in the error or the notes
	}{
		{"three garbled lines", strings.NewReader(garbled), "ride.nmea:3: input.line_left_out why=(nmea.checksum)"},
		{"all garbled", strings.NewReader(strings.ReplaceAll(good, "*", "*Z")), "nmea.bad_lines bad=90 of=90 first=(input.line_left_out why=(nmea.checksum))"},
		{"empty", strings.NewReader(""), "nmea.no_fix"},
		{"binary", strings.NewReader(strings.Repeat("\x00\xff\n", 999)), "nmea.bad_lines"},
		{"one endless line", strings.NewReader(good + strings.Repeat("x", 1<<22)), "nmea.long_line most=1024"},
		{"breaks off", io.MultiReader(strings.NewReader(good), iotest.ErrReader(errors.New("bad sector"))), `input.damaged why="bad sector"`},
		{"shuffled", strings.NewReader(good[len(good)/2:] + good[:len(good)/2]), "input.sorted"},
		{"doubled", strings.NewReader(good + good), "input.doubled"},
	} {
		log, err := Read(c.in, "ride.nmea")
		said := fmt.Sprint(err)
		if log != nil {
			said += fmt.Sprint(log.Notes)
		}
		if !strings.Contains(said, c.want) {
			t.Errorf("%s: said %q, want something with %q", c.name, said, c.want)
		}
	}
}

// ticking is a clock that advances by a third of a second each time it is read,
// as it does between the three lines of a receiver's second.
func ticking() func() float64 {
	t := 50.0
	return func() float64 { t += 1.0 / 3; return t }
}

func TestStreamIsASource(t *testing.T) {
	text := invented(200, false)
	sourcetest.Contract(t, func() sensors.Source {
		return New(io.NopCloser(strings.NewReader(text)), ticking())
	})
}

// silentReceiver blocks until it is closed.
type silentReceiver struct{ closed chan struct{} }

func (s silentReceiver) Read([]byte) (int, error) { <-s.closed; return 0, io.EOF }
func (s silentReceiver) Close() error             { close(s.closed); return nil }

func TestCancelWhileTheReceiverIsSilent(t *testing.T) {
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Millisecond)
	defer cancel()
	in := silentReceiver{make(chan struct{})}
	log, err := sensors.Collect(ctx, New(in, ticking()))
	if !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("error %v, want the deadline", err)
	}
	if last := log.States[len(log.States)-1]; last.Sensor != sensors.SensorFix || last.Condition != sensors.Available {
		t.Errorf("the receiver's last state is %+v, want available", last)
	}
	<-in.closed // Run must have closed it, or this hangs
}

func TestStreamTellsStates(t *testing.T) {
	void := strings.Repeat(string(line("GNRMC,120001.00,V,,,,,,,140626,,,N"))+string(line("GNRMC,120002.00,V,,,,,,,140626,,,N")), 2)
	noise := strings.Repeat("\x80\x81\x82\n", 40)
	log, err := sensors.Collect(context.Background(),
		New(io.NopCloser(strings.NewReader(noise+invented(3, false)+void)), ticking()))
	if err != nil {
		t.Fatal(err)
	}
	var seen []string
	for _, s := range log.States {
		if s.Sensor == sensors.SensorFix {
			seen = append(seen, string(s.Condition))
		}
	}
	if got := strings.Join(seen, " "); got != "available silent working silent" {
		t.Errorf("states of the receiver: %s", got)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(invented(3, true))
	f.Add(invented(2, false) + "garbage\n$GP")
	f.Add("1 " + string(line("GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,,")))
	f.Fuzz(mustBeSound)
}

// FuzzFields reads sentences with changed fields and matching checksums.
func FuzzFields(f *testing.F) {
	f.Add([]byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	f.Fuzz(func(t *testing.T, ops []byte) {
		var right strings.Builder
		for sentence := range strings.SplitSeq(spoil.Text(invented(4, true), ",", ops), "\n") {
			time, body, found := strings.Cut(sentence, "$")
			body, _, _ = strings.Cut(body, "*")
			if !found {
				right.WriteString(sentence + "\n")
				continue
			}
			right.WriteString(time + string(line(body)))
		}
		mustBeSound(t, right.String())
	})
}

// mustBeSound reads a text: the result must be an InputError or a log in order.
func mustBeSound(t *testing.T, text string) {
	log, err := Read(strings.NewReader(text), "ride.nmea")
	var input *sensors.InputError
	if err != nil && !errors.As(err, &input) {
		t.Fatalf("error without a place: %v", err)
	}
	if err != nil {
		return
	}
	last := math.Inf(-1)
	for _, x := range log.Fixes {
		if !(x.T > last) || !(x.Speed >= 0) {
			t.Fatalf("fix %+v after %g", x, last)
		}
		last = x.T
	}
}
