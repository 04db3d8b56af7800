package view

// Reading is a result in words: "4.31", "0.04", "s". Spread is half the width
// of the 95 % interval, empty if none is known.
type Reading struct{ Number, Spread, Unit string }

// Spoken is the reading as a screen reader says it.
func (r Reading) Spoken() string {
	s := r.Number
	if r.Spread != "" {
		s += " ± " + r.Spread
	}
	if r.Unit != "" {
		s += " " + r.Unit
	}
	return s
}

// Interval is a band on a scale.
type Interval struct {
	Low, High         float64 // the ends of the scale
	LowText, HighText string
	ScaleText         string // what the scale shows
	Best, From, To    float64
	Zero              float64
	ShowZero          bool // mark Zero on the scale
	Spoken            string
}
