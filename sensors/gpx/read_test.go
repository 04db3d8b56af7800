package gpx

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"stillair/sensors/sourcetest"
	"stillair/sensors/spoil"
)

// line is a track due north at 20 m/s with a fix a second, whose positions
// scatter by sd metres; a degree of latitude has π/180 of 6371008.8 m (mean
// radius, IUGG).
func line(n int, sd float64) string {
	rng := rand.New(rand.NewPCG(1, 2))
	var b strings.Builder
	b.WriteString(`<gpx version="1.1"><trk><trkseg>`)
	start := time.Date(2026, 6, 14, 12, 0, 0, 0, time.UTC)
	const degree = 6371008.8 * math.Pi / 180
	for i := range n {
		fmt.Fprintf(&b, `<trkpt lat="%.9f" lon="11"><ele>500</ele><time>%s</time></trkpt>`,
			48+(20*float64(i)+sd*rng.NormFloat64())/degree, start.Add(time.Duration(i)*time.Second).Format(time.RFC3339))
	}
	return b.String() + "</trkseg></trk></gpx>"
}

// TestSpeedFromWay: speeds from positions have errors that agree with their
// standard deviations.
func TestSpeedFromWay(t *testing.T) {
	for _, sd := range []float64{0, 0.5, 2} {
		log, err := Read(strings.NewReader(line(400, sd)), "track.gpx")
		if err != nil {
			t.Fatal(err)
		}
		squares, stated := 0.0, log.Fixes[0].SpeedSD
		for _, f := range log.Fixes {
			squares += (f.Speed - 20) * (f.Speed - 20)
		}
		off := math.Sqrt(squares / float64(len(log.Fixes)))
		if len(log.Fixes) != 398 || off > 1.3*stated || sd > 0 && off < 0.6*stated || log.Fixes[0].T != 0 {
			t.Errorf("positions ± %g m: %d fixes, speeds off by %.3f m/s, stated %.3f", sd, len(log.Fixes), off, stated)
		}
	}
}

func TestRefused(t *testing.T) {
	for name, text := range map[string]string{
		"a route":      `<gpx><rte><rtept lat="48" lon="11"/></rte></gpx>`,
		"no times":     `<gpx><trk><trkseg><trkpt lat="48" lon="11"/></trkseg></trk></gpx>`,
		"no XML":       `<gpx><trk`,
		"off the ball": `<gpx><trkpt lat="480" lon="11"><time>2026-06-14T12:00:00Z</time></trkpt></gpx>`,
	} {
		if log, err := Read(strings.NewReader(text), "track.gpx"); err == nil {
			t.Errorf("%s: %+v", name, log)
		}
	}
}

// FuzzRead: no input makes the reader panic, and fixes are in order and finite.
func FuzzRead(f *testing.F) {
	f.Add(line(5, 0))
	f.Add(`<gpx><trkpt lat="1" lon="2"><time>2026-06-14T12:00:00Z</time><speed>5</speed></trkpt></gpx>`)
	f.Fuzz(mustBeSound)
}

// FuzzFields reads a track with changed tags, attributes and texts.
func FuzzFields(f *testing.F) {
	f.Add([]byte{1, 2, 70, 9, 80, 90, 3, 3, 3})
	f.Add([]byte{0, 0, 20, 90, 0, 66, 200, 128, 69, 40, 100, 81})
	track := strings.NewReplacer("</trkpt>", "<speed>20</speed></trkpt>\n", "<trkpt", "\n<trkpt").Replace(line(12, 0.5))
	f.Fuzz(func(t *testing.T, ops []byte) {
		for _, between := range []string{"<", ">", `"`} {
			mustBeSound(t, spoil.Text(track, between, ops))
		}
	})
}

// mustBeSound reads a text.
func mustBeSound(t *testing.T, text string) {
	log, err := Read(strings.NewReader(text), "track.gpx")
	sourcetest.Sound(t, log, err)
}
