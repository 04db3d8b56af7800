//go:build js

package web

import (
	"context"
	"syscall/js"
	"time"

	"stillair/sensors/finding"
)

func helping() js.Value { return js.Global().Get("stillairHelping") }

var errCannot = finding.Fail("browser.cannot")

// Awake keeps the screen on.
type Awake struct{}

// Hold keeps the screen on until release is called. If the browser cancels it
// because the page is hidden, it is requested again when the page is back.
func (Awake) Hold() (release func(), err error) {
	if !helping().Call("canWake").Bool() {
		return nil, errCannot
	}
	if _, err := await(helping().Call("wake")); err != nil {
		helping().Call("rest")
		return nil, err
	}
	var once bool
	return func() {
		if !once {
			once = true
			helping().Call("rest")
		}
	}, nil
}

// After is time.After for a recording: while the screen is kept on it also works in
// a hidden page, and fires at once when the page becomes hidden.
func After(d time.Duration) <-chan time.Time {
	over := make(chan time.Time, 1)
	var ring js.Func
	ring = js.FuncOf(func(js.Value, []js.Value) any {
		ring.Release()
		over <- time.Now()
		return nil
	})
	helping().Call("after", d.Milliseconds(), ring)
	return over
}

// Sharer hands files to the share sheet, or downloads them.
type Sharer struct{}

// Share returns when the rider has chosen or closed the sheet.
func (Sharer) Share(ctx context.Context, name, mediaType string, data []byte) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	_, err := await(helping().Call("share", name, mediaType, toJS(data)))
	return err
}

// Voice speaks text aloud.
type Voice struct{}

// Say queues text, which is in the language of a BCP 47 tag.
func (Voice) Say(text, language string) error {
	if !helping().Call("canSay").Bool() {
		return errCannot
	}
	helping().Call("say", text, language)
	return nil
}

// Buzzer makes the phone vibrate.
type Buzzer struct{}

// Buzz vibrates for d if the browser can (iPhones cannot).
func (Buzzer) Buzz(d time.Duration) error {
	if !helping().Call("canBuzz").Bool() || !helping().Call("buzz", d.Milliseconds()).Bool() {
		return errCannot
	}
	return nil
}

// Phone is the kind of phone or tablet that the browser runs on: "apple",
// "other", or "" for none.
func Phone() string { return helping().Call("phone").String() }

// Language is the BCP 47 tag of the browser's language; it may be empty.
func Language() string { return helping().Call("language").String() }

// Dark reports whether the system asks for dark colours.
func Dark() bool { return helping().Call("dark").Bool() }

// TextScale is the size of the system's text relative to the default.
func TextScale() float64 { return helping().Call("text").Float() }

// Announce passes words to the screen reader, which cannot read a canvas.
func Announce(text string) { helping().Call("announce", text) }
