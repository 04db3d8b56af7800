package sensors

// Sound is recorded, with the rider's permission, at a low rate. Its purpose is
// the engine: its orders are whole and half multiples of the crank's speed, and
// the useful ones end at the firing order, which for four cylinders is the
// second: 500 Hz at 15 000 1/min. Nothing above is kept.
//
// That is also all that is kept of a voice. According to French and Steinberg
// (Factors governing the intelligibility of speech sounds, 1947; from memory)
// speech below 500 Hz is hardly intelligible. One can hear that somebody speaks,
// whether the voice is high or low, and its melody, and a listener who expects a
// word may recognise it.
const (
	// SoundRate is the nominal number of values a second; a source that divides
	// its microphone's own rate by a whole number comes close to it.
	SoundRate = 1200.0
	// SoundBand is the upper edge of the pass band, Hz. Above SoundRate minus
	// SoundBand sound is removed, so that nothing aliases into the band.
	SoundBand = 500.0
	// FullScale is the Level at the end of a microphone's range.
	FullScale = 1 << 15
)

// Sound is a stretch of sound: values at an even rate. A stretch that begins
// later than the one before it ended has a gap before it.
type Sound struct {
	T       float64 // when the first value was heard, s on the log's clock
	Rate    float64 // values a second, on the log's clock
	Level   []int16 // sound pressure, relative to FullScale; never changed after it was passed on
	Clipped int     // readings of the microphone at the end of its range, because the sound was too loud
}

// End is the time of the value that would follow the last, s.
func (s Sound) End() float64 { return s.T + float64(len(s.Level))/s.Rate }

// Apart removes, in place, stretches that begin before the end of the one before.
func Apart(sounds []Sound) []Sound {
	kept := sounds[:0]
	var last Sound
	for _, s := range sounds {
		if s.Follows(last) {
			kept, last = append(kept, s), s
		}
	}
	return kept
}

// Follows reports whether s may follow before. The correction of a clock may
// move it back by less than the time of one value.
func (s Sound) Follows(before Sound) bool {
	return len(before.Level) == 0 || s.T > before.End()-1/s.Rate
}
