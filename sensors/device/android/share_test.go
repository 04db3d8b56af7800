//go:build doubles

package android

import (
	"strings"
	"testing"
	"time"
)

func TestShare(t *testing.T) {
	machine.Reset(35)
	const kept = "content://media/external/downloads/ride.jsonl.gz?application/gzip"
	err := Sharer{machine.Native}.Share(t.Context(), "ride.jsonl.gz", "application/gzip", []byte("the ride"))
	if err != nil {
		t.Fatal(err)
	}
	if got := machine.Get(kept); got != "the ride" {
		t.Errorf("the file holds %q", got)
	}
	if got, want := machine.Get("shared"), "android.intent.action.SEND application/gzip "+kept+" 1"; got != want {
		t.Errorf("shared %q, want %q", got, want)
	}
	if err := (Sharer{machine.Native}).Share(t.Context(), "empty", "text/csv", nil); err != nil {
		t.Errorf("an empty file: %v", err)
	}
}

func TestShareThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name, set string
		api       int
		says      string
	}{
		{"Android 9", "", 28, "Android 10"},
		{"no room", "no room", 35, "openOutputStream"},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(c.api)
			if c.set != "" {
				machine.Set(c.set, "yes")
			}
			err := Sharer{machine.Native}.Share(t.Context(), "a", "b", []byte("c"))
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("err = %v", err)
			}
		})
	}
}

func TestVoice(t *testing.T) {
	machine.Reset(35)
	v, err := NewVoice(machine.Native)
	if err != nil {
		t.Fatal(err)
	}
	if err := v.Say("Neunzig Meter, früher", "de-DE"); err != nil || machine.Get("said") != "de-DE: Neunzig Meter, früher" {
		t.Errorf("%v; said %q", err, machine.Get("said"))
	}
	machine.Set("hoarse", "yes")
	if err := v.Say("nothing", "en"); err == nil {
		t.Error("no error from a voice that is not ready")
	}
}

func TestBuzz(t *testing.T) {
	machine.Reset(35)
	if err := (Buzzer{machine.Native}).Buzz(250 * time.Millisecond); err != nil || machine.Get("buzzed") != "250" {
		t.Errorf("%v, buzzed %q", err, machine.Get("buzzed"))
	}
}
