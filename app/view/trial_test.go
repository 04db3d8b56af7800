package view

import (
	"strings"
	"testing"

	"stillair/app/text"
	"stillair/app/trial"
)

// TestEveryLineOfATrialIsPutInWords checks every number of package trial, in
// both languages.
func TestEveryLineOfATrialIsPutInWords(t *testing.T) {
	numbers := map[string]float64{trial.Rate: 199.96, trial.Longest: 0.013, trial.FixLongest: 1.2, trial.Megabytes: 5e3, trial.Seconds: 30.4,
		trial.Hectopascal: 1013.2, trial.LateSpread: 0.1, trial.FixBeside: 0.31, trial.X: 0.1, trial.Y: -0.2, trial.Z: 9.8}
	topics := []trial.Topic{trial.Storage, trial.Motion, trial.Turn, trial.Fixes, trial.Pressure, trial.Clocks, trial.Axes, trial.Service, trial.Dark}
	for _, book := range text.All() {
		c := Context{Book: book}
		for _, topic := range topics {
			for _, v := range []trial.Verdict{trial.Works, trial.Differs, trial.Fails, trial.Untried} {
				l := c.trialLine(trial.Line{Topic: topic, Verdict: v, Numbers: numbers, Said: "why"})
				if l.Title == "" || l.Words == "" || !strings.HasSuffix(l.Detail, ". why") || strings.Contains(l.Detail, "%") {
					t.Errorf("%s: %s, %s: %+v", book.Tag, topic, v, l)
				}
			}
			if l := c.trialLine(trial.Line{Topic: topic}); l.Detail != "" {
				t.Errorf("%s: without numbers %q", topic, l.Detail)
			}
		}
	}
	c := Context{Book: text.English()}
	if got := c.measured(trial.Line{Topic: trial.Dark, Numbers: numbers}); got != "off for 30 s, longest pause of motion 0.01 s, of satellites 1.2 s" {
		t.Errorf("said %q", got)
	}
}
