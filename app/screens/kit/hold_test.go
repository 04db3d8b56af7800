package kit

import (
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

// waits holds delayed calls, and lets time pass by hand.
type waits struct {
	now  time.Duration
	list []struct {
		at time.Duration
		do func()
	}
}

func (w *waits) after(d time.Duration, do func()) {
	w.list = append(w.list, struct {
		at time.Duration
		do func()
	}{w.now + d, do})
}

func (w *waits) pass(d time.Duration) {
	for end := w.now + d; ; {
		if len(w.list) == 0 || w.list[0].at > end {
			w.now = end
			return
		}
		first := w.list[0]
		w.list, w.now = w.list[1:], first.at
		first.do()
	}
}

// TestAHoldAnswersOnlyToARestingFinger: it does not respond to a tap, to any
// number of taps, or to a finger that is lifted or moves off too early.
func TestAHoldAnswersOnlyToARestingFinger(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range []struct {
		name string
		do   func(h *Hold, w *waits)
		want int
	}{
		{"a touch", func(h *Hold, w *waits) { h.MouseDown(nil); w.pass(80 * time.Millisecond); h.MouseUp(nil) }, 0},
		{"forty touches at once", func(h *Hold, w *waits) {
			for range 40 {
				h.TouchDown(nil)
				w.pass(60 * time.Millisecond)
				h.TouchUp(nil)
				w.pass(20 * time.Millisecond)
			}
		}, 0},
		{"lifted a little early", func(h *Hold, w *waits) {
			h.MouseDown(nil)
			w.pass(HoldFor - time.Millisecond)
			h.MouseUp(nil)
		}, 0},
		{"slid away", func(h *Hold, w *waits) { h.TouchDown(nil); w.pass(time.Second); h.TouchCancel(nil) }, 0},
		{"redrawn under the finger", func(h *Hold, w *waits) { h.MouseDown(nil); w.pass(time.Second); h.kit.LetGo() }, 0},
		{"held", func(h *Hold, w *waits) { h.MouseDown(nil); w.pass(HoldFor); h.MouseUp(nil) }, 1},
		{"held for long", func(h *Hold, w *waits) { h.MouseDown(nil); w.pass(5 * HoldFor) }, 1},
		{"touched, then held", func(h *Hold, w *waits) {
			h.MouseDown(nil)
			h.MouseUp(nil)
			h.MouseDown(nil)
			w.pass(HoldFor)
		}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, answered := &waits{}, 0
			k := New(Dark(), 1)
			k.Later(w.after)
			h := k.HoldButton(Main, End, "End the ride", func() { answered++ })
			c.do(h, w)
			w.pass(time.Minute)
			if answered != c.want {
				t.Errorf("answered %d times, want %d", answered, c.want)
			}
		})
	}
}
