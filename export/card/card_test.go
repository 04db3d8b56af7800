package card

import (
	"bytes"
	"strings"
	"testing"

	"stillair/export/shown"
	"stillair/runs/plan"
)

// TestCard checks that the card has every run in order, each setup with a blank
// for its weight, the road with its margins, and all cautions, in both
// languages.
func TestCard(t *testing.T) {
	p := &plan.Plan{Pairs: 4, Blocks: []plan.Block{{Setup: 0, Pairs: 2}, {Setup: 1, Pairs: 4}, {Setup: 0, Pairs: 2}}, RoadLength: 1234, Up: 267, Stop: 130, Seconds: 3000}
	for _, tt := range []struct {
		language shown.Language
		throttle bool
		want     []string
	}{
		{shown.English, false, []string{"Test card", "110 km/h down to 30 km/h", "4 pairs with each setup", "about 50 min", "1240 m", "270 m", "130 m", "rear wheel locks", "bars start to wobble",
			"can roll free", "room to stop", "Change the setup: B", "Change the setup: A", "Setup B"}},
		{shown.German, true, []string{"Versuchskarte", "von 110 km/h bis 30 km/h", "4 Paare mit jedem Aufbau", "gesperrte Strecke", "Aufbau wechseln: B"}},
	} {
		var b bytes.Buffer
		err := Write(&b, Card{Plan: p, From: 110 / 3.6, To: 30 / 3.6, Runs: "Coast-downs", FullThrottle: tt.throttle}, shown.Style{System: shown.Metric, Language: tt.language})
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range tt.want {
			if !strings.Contains(strings.ReplaceAll(b.String(), "\u00a0", " "), w) {
				t.Errorf("%s: the card does not say %q", tt.language, w)
			}
		}
		if n := strings.Count(b.String(), `class="box"`); n != 16 {
			t.Errorf("%d runs on the card, want 16", n)
		}
		if strings.Contains(b.String(), "http") || strings.Contains(b.String(), "%!") {
			t.Errorf("the card leans on something else, or a text lacks a value")
		}
	}
}

// TestEveryWordIsThere checks that no text is missing in a language.
func TestEveryWordIsThere(t *testing.T) {
	for key, w := range catalogue() {
		if w[0] == "" || w[1] == "" || strings.Count(w[0], "%") != strings.Count(w[1], "%") {
			t.Errorf("%s: %q", key, w)
		}
	}
	for _, key := range checks {
		if catalogue()[key][0] == "" {
			t.Errorf("there is no %s", key)
		}
	}
}
