// Package platform says what the phone app needs from the device it runs on:
// files that survive, a clock, a screen that stays on, a way to share a file
// with another app, a voice, and the sensors. The packages under sensors/device
// provide these for the browser and for Android; this package provides files
// and a clock for any system with a file system.
//
// Every method that returns an error may block for as long as the device takes.
// Call them from a separate goroutine, never from the drawing loop.
package platform

import (
	"context"
	"io"
	"time"

	"stillair/sensors"
)

// Device is everything that the app uses of the device it runs on. Files, Clock,
// Source and Random are required; the others are nil if the device lacks the feature,
// and the app then hides it.
type Device struct {
	Files  Files
	Clock  Clock
	Source func() sensors.Source // a new live source, to be run once
	Random io.Reader             // unpredictable, for the IDs of recordings
	Awake  Awake
	Share  Sharer
	Voice  Voice
	Buzzer Buzzer

	// Permit asks the rider for permission to use the sensors, on devices that
	// ask (browsers). The app calls it directly in the handler of a tap, since
	// some browsers ask only then; it must return at once. The answer appears in
	// the states of Source, which until then is Asking.
	Permit func()

	// Hear is Source with the microphone added; nil if the device has none that the
	// app can use. It is used only if the rider switched sound on. PermitHearing
	// asks for permission, waits for the answer and reports it; nil: no permission
	// is needed.
	Hear          func() sensors.Source
	PermitHearing func() bool

	// Background keeps a recording running with the screen off; nil: the screen
	// must stay on (Awake). Obstacles lists the settings that would interrupt it,
	// AskToNotify shows the system's request for notifications, and LastEnd
	// reports how the app last ended. They may be nil.
	Background  Background
	Obstacles   func() []Obstacle
	AskToNotify func()
	LastEnd     func() Demise

	// Lit reports whether the screen is on; nil: not known.
	Lit func() bool

	// Trial is set if this program has never run on a device of this kind and
	// should first test what works there (package trial).
	Trial bool

	// Ahead reports whether the rider started a recording before the app had
	// loaded: the next source then delivers what was sensed since; nil: that is not
	// possible.
	Ahead func() bool

	// WentBack registers a function that is called whenever the rider goes back by the
	// device's own button or gesture, and Deep reports to the device how many screens
	// there are to go back and whether a recording is running. They are nil if the
	// window receives the back key itself.
	WentBack func(back func())
	Deep     func(screens int, recording bool)

	// Dark and TextScale are settings of the system: whether it asks for dark
	// colours, and the size of its text relative to the default; nil: not
	// known.
	Dark      func() bool
	TextScale func() float64
	// Announce passes words to a screen reader, which cannot see what is drawn.
	Announce func(text string)
	// Language sets the language, a BCP 47 tag, in which a screen reader reads the
	// screen; nil: it cannot be set.
	Language func(tag string)

	// Aside is a second instance of the program, for long work; nil: there is none.
	Aside Aside

	Machine Machine // whose settings the rider is sent to

	Locale string // BCP 47 tag of the system's language, such as "de-DE"; may be empty
	// CoarseTiming is set if the device stamps motion samples coarsely, or
	// delivers few of them, as browsers do. The app then says so next to times.
	CoarseTiming bool
}

// Clock gives the time in two ways that must not be mixed up.
type Clock interface {
	// Wall is the date and time of day for people. It may jump in either direction.
	Wall() time.Time
	// Elapsed is the time since an arbitrary fixed start. It never goes back.
	Elapsed() time.Duration
	// After sends once on the channel when d has passed on Elapsed's clock.
	After(d time.Duration) <-chan time.Time
}

// Aside is a second instance of the program, whose memory is freed when it has
// answered.
type Aside interface {
	// Do sends it the request that ask writes, and returns its answer with the
	// size in bytes. tell is called meanwhile with the share that is done. It ends
	// with the context. An error means that it could not be started, ended too
	// early or cannot do this.
	Do(ctx context.Context, ask func(io.Writer) error, tell func(share float64)) (answer io.Reader, size int, err error)
}

// Awake keeps the screen on.
type Awake interface {
	// Hold keeps the screen on until release is called. If the system cancels
	// it (a hidden tab), it is requested again as soon as possible.
	Hold() (release func(), err error)
}

// Sharer passes a file to whatever the rider chooses: by the system's share
// sheet, or by a download if there is none.
type Sharer interface {
	Share(ctx context.Context, name, mediaType string, data []byte) error
}

// Voice speaks text aloud.
type Voice interface {
	Say(text, language string) error // language as a BCP 47 tag
}

// Buzzer makes the phone vibrate.
type Buzzer interface {
	Buzz(d time.Duration) error
}
