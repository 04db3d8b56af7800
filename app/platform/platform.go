// Package platform says what the phone app needs from the device it runs on:
// files that survive, a clock, a screen that stays on, a way to hand a file to
// another app, a voice, and the sensors. The packages under sensors/device
// give these for the browser and for Android; this package gives the files,
// the clock and the quiet stand-ins that any system with a file system can use.
//
// Every method that returns an error may block for as long as the device
// takes. Callers use them from a goroutine of their own, never from the
// drawing loop.
package platform

import (
	"context"
	"io"
	"time"

	"stillair/sensors"
)

// Device is everything the app uses of the machine under it. Files, Clock,
// Source and Random must be there; the others may be nil where the device has no such
// thing, and the app then does not offer it.
type Device struct {
	Files  Files
	Clock  Clock
	Source func() sensors.Source // a new live source, to be run once
	Random io.Reader             // chance that nobody can foresee, for the identities of recordings
	Awake  Awake
	Share  Sharer
	Voice  Voice
	Buzzer Buzzer

	// Permit asks the rider for permission to use the sensors where a device asks
	// (browsers). The app calls it straight from the tap, without which some
	// ask nobody; it must return at once. The answer shows in the states of
	// Source, which until then is Asking.
	Permit func()

	// Hear is Source with the microphone beside the other sensors; nil where the
	// device has none that the app can use. It is used only where the rider
	// switched sound on. PermitHearing asks for permission, waits for the answer and
	// reports it; nil: no question is needed.
	Hear          func() sensors.Source
	PermitHearing func() bool

	// Background keeps a recording going with the screen off; nil: it takes a lit
	// screen, which Awake gives. Obstacles are the settings that stand against
	// it, AskToNotify puts the system's question for notifications on the screen,
	// and LastEnd tells how the app ended before this start. They may be nil.
	Background  Background
	Obstacles   func() []Obstacle
	AskToNotify func()
	LastEnd     func() Demise

	// Lit tells whether the screen is on; nil: not known.
	Lit func() bool

	// Trial says that this program was never run on a device of this kind and
	// should first find out what works there (package trial).
	Trial bool

	// Ahead reports whether the rider started a recording before the app was there:
	// the next source then delivers what was sensed since; nil: that cannot be.
	Ahead func() bool

	// WentBack has back called whenever the rider goes back by the device's own
	// means, and Deep tells the device how many screens there are to go back and
	// whether a recording runs. They are nil where the window gets the back key itself.
	WentBack func(back func())
	Deep     func(screens int, recording bool)

	// Dark and TextScale tell how the system is set: whether it asks for dark
	// colours, and how large its text is beside the usual; nil: not known.
	Dark      func() bool
	TextScale func() float64
	// Announce gives words to a screen reader that cannot see what is drawn.
	Announce func(text string)
	// Language sets the language, a BCP 47 tag, in which a screen reader reads the
	// screen; nil: it cannot be set.
	Language func(tag string)

	// Aside is the program once more, for long work; nil: there is none.
	Aside Aside

	Machine Machine // whose settings the rider is sent to

	Locale string // BCP 47 tag of the system's language, such as "de-DE"; may be empty
	// CoarseTiming says that the device stamps motion samples coarsely, or
	// offers few of them, as browsers do. The app then says so beside times.
	CoarseTiming bool
}

// Clock tells the time in two ways that must not be mixed up.
type Clock interface {
	// Wall is the date and time of day for people. It may be stepped either way.
	Wall() time.Time
	// Elapsed is time since any fixed start. It never steps back.
	Elapsed() time.Duration
	// After sends once on the channel when d has passed on Elapsed's clock.
	After(d time.Duration) <-chan time.Time
}

// Aside is the program once more, with memory of its own that is given back when it
// has answered.
type Aside interface {
	// Do has it do what ask writes, and gives its answer with the size in bytes.
	// tell is called meanwhile with the share that is done. The end of the context
	// ends it. An error means that it could not be started, ended too early or
	// cannot do this.
	Do(ctx context.Context, ask func(io.Writer) error, tell func(share float64)) (answer io.Reader, size int, err error)
}

// Awake keeps the screen on.
type Awake interface {
	// Hold keeps the screen on until release is called. Where the system takes
	// the hold away (a hidden tab), it is taken again as soon as it allows.
	Hold() (release func(), err error)
}

// Sharer hands a file to whatever the rider chooses: the system's share
// sheet, or a download where there is none.
type Sharer interface {
	Share(ctx context.Context, name, mediaType string, data []byte) error
}

// Voice says words aloud.
type Voice interface {
	Say(text, language string) error // language as a BCP 47 tag
}

// Buzzer shakes the phone.
type Buzzer interface {
	Buzz(d time.Duration) error
}
