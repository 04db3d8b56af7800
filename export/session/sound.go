package session

import (
	"math"
	"strconv"

	"github.com/tidwall/gjson"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits for the memory of sound, which takes two bytes a value. A day is
// within them. A microphone that is switched off gives zeros, a thousand of
// which take as little as twenty bytes.
const (
	maxSound  = 128 << 20 // values
	freeSound = 1 << 20   // limit for a file too small to hold more
	soundByte = 8         // values for each byte of the file
)

func appendSound(dst []byte, s sensors.Sound) []byte {
	dst = append(dst, `{"type":"sound"`...)
	dst = appendField(dst, "t_s", s.T, timeDecimals)
	dst = appendField(dst, "rate_hz", s.Rate, rateDecimals)
	if s.Clipped > 0 {
		dst = strconv.AppendInt(append(dst, `,"clipped":`...), int64(s.Clipped), 10)
	}
	dst = append(dst, `,"level":[`...)
	for i, x := range s.Level {
		if i > 0 {
			dst = append(dst, ',')
		}
		dst = strconv.AppendInt(dst, int64(x), 10)
	}
	return append(dst, "]}\n"...)
}

// sound takes a line with a stretch of sound.
func (d *decoder) sound(o gjson.Result) {
	s := sensors.Sound{T: number(o, "t_s"), Rate: number(o, "rate_hz")}
	if math.IsNaN(s.T) || !(s.Rate > 0) {
		d.odd(finding.New("session.sound_incomplete"))
		return
	}
	levels, ok := parseNumbers(d.columns[:0], o.Get("level").Raw)
	d.columns = levels
	if !ok || len(levels) == 0 {
		d.odd(finding.New("session.sound_empty"))
		return
	}
	s.Level = make([]int16, len(levels))
	for i, x := range levels {
		if !(x >= -sensors.FullScale && x <= sensors.FullScale-1) {
			d.odd(finding.New("session.sound_level"))
			return
		}
		s.Level[i] = int16(math.Round(x))
	}
	if n := number(o, "clipped"); n > 0 && n < 1<<31 {
		s.Clipped = int(n)
	}
	d.heard += len(s.Level)
	d.cur.sounds.Add(s)
}

// apart leaves out what sensors.Apart does, and notes how much.
func apart(n *notes, sounds []sensors.Sound) []sensors.Sound {
	kept := sensors.Apart(sounds)
	if over := len(sounds) - len(kept); over > 0 {
		n.many(finding.New("session.sound_overlap"), 0, over)
	}
	return kept
}
