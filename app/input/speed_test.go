package input

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/muktihari/fit/encoder"
	"github.com/muktihari/fit/profile/mesgdef"
	"github.com/muktihari/fit/profile/typedef"
	"github.com/muktihari/fit/proto"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/plain"
	"stillair/sensors/sim"
)

// writers write the fixes of a ride, with speeds multiplied, in every format
// that is read.
func writers() map[string]func(log *sensors.Log, times float64) []byte {
	return map[string]func(*sensors.Log, float64) []byte{
		"log.zip": func(log *sensors.Log, times float64) []byte {
			out := *log
			out.Fixes = faster(log.Fixes, times)
			var b bytes.Buffer
			if err := plain.WriteZip(&b, &out); err != nil {
				return nil
			}
			return b.Bytes()
		},
		"browser.jsonl": browserRide,
		"receiver.nmea": sentencesOf,
		"table.csv": func(log *sensors.Log, times float64) []byte {
			var b bytes.Buffer
			b.WriteString("time,latitude,longitude,speed\n")
			for _, f := range faster(log.Fixes, times) {
				fmt.Fprintf(&b, "%.3f,%.8f,%.8f,%.4f\n", f.T, f.LatDeg, f.LonDeg, f.Speed)
			}
			return b.Bytes()
		},
		"track.gpx": func(log *sensors.Log, times float64) []byte {
			var b bytes.Buffer
			b.WriteString(`<?xml version="1.0"?><gpx version="1.1"><trk><trkseg>`)
			for _, f := range faster(log.Fixes, times) {
				fmt.Fprintf(&b, `<trkpt lat="%.8f" lon="%.8f"><time>%s</time><extensions><x:speed xmlns:x="urn:x">%.4f</x:speed></extensions></trkpt>`,
					f.LatDeg, f.LonDeg, began.Add(time.Duration(f.T*1e9)).Format(time.RFC3339Nano), f.Speed)
			}
			b.WriteString("</trkseg></trk></gpx>")
			return b.Bytes()
		},
		"activity.fit": activity,
		"ride.jsonl.gz": func(log *sensors.Log, times float64) []byte {
			out := *log
			out.Fixes = faster(log.Fixes, times)
			return sessionOf(&out)
		},
	}
}

// sessionOf is a session file of a log.
func sessionOf(log *sensors.Log) []byte {
	var m memory
	if err := session.Write(&m, log, session.Header{ID: session.ID{1}, Origin: "simulated"}); err != nil {
		return nil
	}
	return m.Bytes()
}

var began = time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC)

func faster(fixes []sensors.Fix, times float64) []sensors.Fix {
	var out []sensors.Fix
	for _, f := range fixes {
		f.Speed *= times
		f.SpeedSD *= times
		out = append(out, f)
	}
	return out
}

func browserRide(log *sensors.Log, times float64) []byte {
	var b bytes.Buffer
	k := 0
	for _, m := range log.Motion {
		for ; k < len(log.Fixes) && log.Fixes[k].T <= m.T; k++ {
			f := log.Fixes[k]
			fmt.Fprintf(&b, `{"coords":{"latitude":%.8f,"longitude":%.8f,"speed":%.4f},"timestamp":%d,"timeStamp":%.2f}`+"\n",
				f.LatDeg, f.LonDeg, f.Speed*times, began.UnixMilli()+int64(f.T*1000), f.T*1000)
		}
		fmt.Fprintf(&b, `{"accelerationIncludingGravity":{"x":%.2f,"y":%.2f,"z":%.2f},"timeStamp":%.2f}`+"\n", m.Force.X, m.Force.Y, m.Force.Z, m.T*1000)
	}
	return b.Bytes()
}

func sentencesOf(log *sensors.Log, times float64) []byte {
	var b bytes.Buffer
	angle := func(deg float64, width int, plus, minus string) string {
		side := plus
		if deg < 0 {
			side, deg = minus, -deg
		}
		whole := math.Floor(deg)
		return fmt.Sprintf("%0*d%010.7f,%s", width, int(whole), (deg-whole)*60, side)
	}
	for _, f := range log.Fixes {
		at := began.Add(time.Duration(f.T * 1e9))
		s := fmt.Sprintf("GPRMC,%s,A,%s,%s,%.4f,,%s,,,A", at.Format("150405.000"), angle(f.LatDeg, 2, "N", "S"), angle(f.LonDeg, 3, "E", "W"),
			f.Speed*times*3600/1852, at.Format("020106"))
		sum := byte(0)
		for i := range len(s) {
			sum ^= s[i]
		}
		fmt.Fprintf(&b, "$%s*%02X\r\n", s, sum)
	}
	return b.Bytes()
}

func activity(log *sensors.Log, times float64) []byte {
	var b bytes.Buffer
	file := &proto.FIT{Messages: []proto.Message{mesgdef.NewFileId(nil).SetType(typedef.FileActivity).SetTimeCreated(began).ToMesg(nil)}}
	second := math.Inf(-1)
	for _, f := range log.Fixes {
		if math.Floor(f.T) == second {
			continue
		}
		second = math.Floor(f.T)
		r := mesgdef.NewRecord(nil).SetTimestamp(began.Add(time.Duration(f.T * 1e9))).SetPositionLatDegrees(f.LatDeg).SetPositionLongDegrees(f.LonDeg).
			SetEnhancedSpeedScaled(f.Speed * times)
		file.Messages = append(file.Messages, r.ToMesg(nil))
	}
	if err := encoder.New(&b).Encode(file); err != nil {
		return nil
	}
	return b.Bytes()
}

// TestSpeedScale: in every format, speeds with another scale or unit are corrected
// within 1.5 %, or refused, by the reader or, if it does not change them (a session
// file), by the analysis.
func TestSpeedScale(t *testing.T) {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = []sim.Act{sim.Stand{Seconds: 4}, sim.Town{Minutes: 2}, sim.Reach{Speed: 25}, sim.Reach{Speed: 30}, sim.Reach{Speed: 12}, sim.Reach{Speed: 25}}
	r, err := sim.Run(sc, 3)
	if err != nil {
		t.Fatal(err)
	}
	log := r.Log
	dir := t.TempDir()
	scales := map[string]float64{"×0.9": 0.9, "×0.95": 0.95, "m/s": 1, "×1.05": 1.05, "×1.1": 1.1, "km/h": 3.6, "mph": 1 / 0.44704, "knots": 3600.0 / 1852, "ft/s": 1 / 0.3048}
	for name, write := range writers() {
		opened := 0
		for unit, times := range scales {
			path := filepath.Join(dir, name)
			if err := os.WriteFile(path, write(log, times), 0o600); err != nil {
				t.Fatal(err)
			}
			ride, err := Open(path)
			if err != nil {
				if unit == "m/s" || !strings.Contains(err.Error(), "speed.") {
					t.Errorf("%s, %s: %v", name, unit, err)
				}
				continue
			}
			opened++
			scaled, _, _ := sensors.ToScale(ride.Log)
			want, got := meanSpeed(log.Fixes), meanSpeed(scaled.Fixes)
			if math.Abs(got/want-1) > 0.015 {
				t.Errorf("%s, %s: the mean speed is %.3f m/s, want %.3f: %v", name, unit, got, want, ride.Log.Notes)
			}
		}
		if opened < len(scales)-2 {
			t.Errorf("%s: only %d of %d scales could be read", name, opened, len(scales))
		}
	}
}

func meanSpeed(fixes []sensors.Fix) float64 {
	sum := 0.0
	for _, f := range fixes {
		sum += f.Speed
	}
	return sum / float64(len(fixes))
}
