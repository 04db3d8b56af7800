package sensors

// The sound that is recorded, where the rider gave permission for it, is of a low
// rate. What is wanted of it is the engine: its lines are at whole and half
// multiples of the crank's speed, and those worth having end at the firing
// order, which in an engine of four cylinders is the second: 500 Hz at 15 000 a
// minute. Nothing above is kept.
//
// That is also all that is kept of a voice. French and Steinberg (Factors
// governing the intelligibility of speech sounds, 1947; from memory) give hardly
// any intelligibility to what speech has below 500 Hz. That somebody speaks,
// whether the voice is high or low, and its melody can be heard, and a listener
// who expects a word may make it out.
const (
	// SoundRate is how many values a second are wanted; a source that divides
	// its microphone's own rate by a whole number comes near it.
	SoundRate = 1200.0
	// SoundBand is up to where sound is kept as it was, Hz. From SoundRate less
	// SoundBand on it is gone, so that nothing folds into the band.
	SoundBand = 500.0
	// FullScale is the Level at the end of a microphone's range.
	FullScale = 1 << 15
)

// Sound is a stretch of what a microphone heard: values at an even rate. A
// stretch that begins later than the one before it ended has a gap before it.
type Sound struct {
	T       float64 // when the first value was heard, s on the log's clock
	Rate    float64 // values a second, on the log's clock
	Level   []int16 // pressure of the sound, in parts of FullScale; never changed once it was passed on
	Clipped int     // readings of the microphone that stood at the end of its range, where the sound was too loud
}

// End is when the value behind the last would have been heard, s.
func (s Sound) End() float64 { return s.T + float64(len(s.Level))/s.Rate }

// Apart leaves out, in place, what begins before the stretch before it ended.
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

// Follows reports whether s may come behind before. A clock that is being
// corrected may set it back by less than a value.
func (s Sound) Follows(before Sound) bool {
	return len(before.Level) == 0 || s.T > before.End()-1/s.Rate
}
