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

// Hold keeps the screen on until release is called. When the browser takes the
// hold away with a hidden page, it is taken again when the page is back.
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

// After is time.After for a recording: while the screen is kept on it continues in a
// page that is hidden, and is over at once when that begins.
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

// Voice says words aloud.
type Voice struct{}

// Say queues text, which is in the language of a BCP 47 tag.
func (Voice) Say(text, language string) error {
	if !helping().Call("canSay").Bool() {
		return errCannot
	}
	helping().Call("say", text, language)
	return nil
}

// Buzzer shakes the phone.
type Buzzer struct{}

// Buzz shakes for d where the browser can (iPhones cannot).
func (Buzzer) Buzz(d time.Duration) error {
	if !helping().Call("canBuzz").Bool() || !helping().Call("buzz", d.Milliseconds()).Bool() {
		return errCannot
	}
	return nil
}

// Phone tells what kind of phone or tablet the browser runs on: "apple", "other",
// or "" for none.
func Phone() string { return helping().Call("phone").String() }

// Language is the BCP 47 tag of the browser's language; it may be empty.
func Language() string { return helping().Call("language").String() }

// Dark reports that the system asks for dark colours.
func Dark() bool { return helping().Call("dark").Bool() }

// TextScale is the size of the system's text beside the usual.
func TextScale() float64 { return helping().Call("text").Float() }

// Announce gives words to the screen reader, which sees nothing of a canvas.
func Announce(text string) { helping().Call("announce", text) }
