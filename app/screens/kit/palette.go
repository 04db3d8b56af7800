package kit

import "image/color"

// The palette of Okabe and Ito (2008).
const (
	okabeOrange     = 0xE69F00
	okabeSky        = 0x56B4E9
	okabeGreen      = 0x009E73
	okabeYellow     = 0xF0E442
	okabeBlue       = 0x0072B2
	okabeVermillion = 0xD55E00
	okabePurple     = 0xCC79A7
)

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 255}
}

// Palette is the set of colours of one look.
type Palette struct {
	Dark    bool
	Ground  color.NRGBA // behind everything
	Surface color.NRGBA // cards and bars
	Sunk    color.NRGBA // fields, tracks of bars
	Ink     color.NRGBA // text
	Muted   color.NRGBA // less important text
	Line    color.NRGBA // separators, frames
	Accent  color.NRGBA // what can be touched
	OnAcc   color.NRGBA // text on Accent
	Good    color.NRGBA
	Warn    color.NRGBA
	Tones   [5]color.NRGBA // lines in a plot, in order of use
}

// Light is the palette for daylight. Colours of the published palette that are
// too pale for text on white are darkened; their hue is unchanged.
func Light() Palette {
	return Palette{
		Ground: rgb(0xEDF1F2), Surface: rgb(0xFFFFFF), Sunk: rgb(0xE2E9EB),
		Ink: rgb(0x0F2029), Muted: rgb(0x4C5F68), Line: rgb(0xCBD6DA),
		Accent: rgb(okabeBlue), OnAcc: rgb(0xFFFFFF), Good: rgb(0x00724F), Warn: rgb(0xA64700),
		Tones: [5]color.NRGBA{rgb(okabeBlue), rgb(okabeVermillion), rgb(okabeGreen), rgb(okabePurple), rgb(okabeOrange)},
	}
}

// Dark is the palette for dusk, and for riding at any hour.
func Dark() Palette {
	return Palette{
		Dark: true, Ground: rgb(0x0A1115), Surface: rgb(0x142027), Sunk: rgb(0x22313A),
		Ink: rgb(0xE9F0F3), Muted: rgb(0xA3B5BE), Line: rgb(0x31434D),
		Accent: rgb(okabeSky), OnAcc: rgb(0x06141C), Good: rgb(0x3CC79D), Warn: rgb(okabeOrange),
		Tones: [5]color.NRGBA{rgb(okabeSky), rgb(okabeOrange), rgb(0x3CC79D), rgb(okabePurple), rgb(okabeYellow)},
	}
}

// Ink names a colour of text and symbols by its purpose.
type Ink int

// The inks.
const (
	Plain Ink = iota
	Muted
	Accent
	OnAccent
	Good
	Warn
	Faint
)

// Of returns the colour of an ink.
func (p Palette) Of(i Ink) color.NRGBA {
	switch i {
	case Muted:
		return p.Muted
	case Accent:
		return p.Accent
	case OnAccent:
		return p.OnAcc
	case Good:
		return p.Good
	case Warn:
		return p.Warn
	case Faint:
		return p.Line
	}
	return p.Ink
}
