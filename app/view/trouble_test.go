package view

import (
	"errors"
	"slices"
	"strings"
	"syscall"
	"testing"

	"stillair/app/platform"
	"stillair/app/recorder"
	"stillair/export/session"
)

// TestStorageTroubleIsSaid checks that any failure of the storage while riding,
// at the start and at the end, is reported, with its own text in every language,
// and that nothing is called saved that is not.
func TestStorageTroubleIsSaid(t *testing.T) {
	for _, c := range []Context{english(), german()} {
		var said []string
		say := func(what, text string) {
			if text == "" || strings.Contains(text, "%!") || slices.Contains(said, text) {
				t.Errorf("%s: says %q", what, text)
			}
			said = append(said, text)
		}
		saved := c.Ended(recorder.Status{Why: recorder.ByRider})
		say("saved", saved)
		for _, k := range []struct {
			what string
			kept recorder.Kept
		}{
			{"read-only", recorder.Kept{Err: syscall.EROFS, Free: -1}},
			{"given up", recorder.Kept{Err: session.ErrBacklog, Free: -1}},
			{"nearly full", recorder.Kept{Free: recorder.LowRoom - 1}},
		} {
			warnings := c.rideWarnings(recorder.Status{Kept: k.kept})
			if len(warnings) != 1 {
				t.Fatalf("%s: the rider reads %q", k.what, warnings)
			}
			say(k.what, warnings[0])
		}
		if w := c.rideWarnings(recorder.Status{Kept: recorder.Kept{Free: 1 << 40}}); len(w) > 0 {
			t.Errorf("with all well the rider reads %q", w)
		}
		for _, err := range []error{platform.ErrBusy, recorder.ErrNoRoom, syscall.EROFS} {
			say("start: "+err.Error(), c.StartTrouble(err))
		}
		say("end not taken", c.Ended(recorder.Status{Why: recorder.ByRider, Kept: recorder.Kept{Err: syscall.EROFS}}))
		say("sensors failed", c.Ended(recorder.Status{Why: recorder.SourceFailed, Err: errors.New("no more")}))
	}
}
