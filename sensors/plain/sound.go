package plain

import (
	"bytes"
	"io"
	"math"
	"strconv"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

var soundColumns = []column{
	{"t_s", true, "s"},
	{"rate_hz", true, "Hz"},
	{"level", true, "-32768 … 32767"},
	{"clipped", false, "1"},
}

const (
	mostStretches = 1_000_000
	mostLevels    = 40_000_000 // nine hours
	leastHz       = 100        // lowest useful rate of sound
	mostHz        = 50_000
)

// readSound reads sound.csv: each row is a stretch of sound.
func readSound(f file, clock float64) ([]sensors.Sound, *tally, error) {
	levels := 0
	stretches, y, err := readRows(f, soundColumns, mostStretches, func(r row) (sensors.Sound, bool) {
		if levels > mostLevels {
			return sensors.Sound{}, false
		}
		s, ok := takeSound(r, clock)
		levels += len(s.Level)
		return s, ok
	})
	if err == nil && levels > mostLevels {
		err = tooMany(f.name, mostLevels)
	}
	if err == nil && y.rows > 0 {
		err = y.verdict("plain.want_sound")
	}
	if err != nil {
		return nil, y, err
	}
	stretches = inOrder(stretches, repair.SoundTime, y)
	kept := sensors.Apart(stretches)
	for range len(stretches) - len(kept) {
		y.say(0, "over", finding.New("sound.overlaps"))
	}
	return kept, y, nil
}

func takeSound(r row, clock float64) (s sensors.Sound, ok bool) {
	if s.T, ok = r.need(soundColumns, 0); !ok {
		return s, false
	}
	if s.Rate, ok = r.need(soundColumns, 1); !ok {
		return s, false
	}
	s.T, s.Rate = s.T*clock, s.Rate/clock
	if s.Rate < leastHz || s.Rate > mostHz {
		r.y.skip(r.t.line, "rate", finding.New("sound.no_rate", finding.Rate("rate", s.Rate)))
		return s, false
	}
	if s.Level, ok = levelsOf(r.raw(2)); !ok {
		r.y.skip(r.t.line, "level", finding.New("sound.no_levels"))
		return s, false
	}
	if n := r.may(soundColumns, 3); n > 0 && n < math.MaxInt32 {
		s.Clipped = int(n)
	}
	return s, true
}

func levelsOf(cell []byte) ([]int16, bool) {
	fields := bytes.Fields(cell)
	levels := make([]int16, len(fields))
	for i, f := range fields {
		v, err := strconv.ParseInt(string(f), 10, 16)
		if err != nil {
			return nil, false
		}
		levels[i] = int16(v)
	}
	return levels, len(levels) > 0
}

func writeSound(w io.Writer, sounds []sensors.Sound) error {
	c := newSheet(w, soundColumns)
	var levels []byte
	for _, s := range sounds {
		c.number(s.T)
		c.number(s.Rate)
		levels = levels[:0]
		for i, x := range s.Level {
			if i > 0 {
				levels = append(levels, ' ')
			}
			levels = strconv.AppendInt(levels, int64(x), 10)
		}
		c.cell(levels)
		c.number(float64(s.Clipped))
		c.end()
	}
	return c.w.Flush()
}
