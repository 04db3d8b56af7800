package web

import (
	"fmt"
	"strings"
)

// Before the toolkit measures or draws a text it shapes it, and so it does some
// hundred times before the first picture. Two parts of that are the same each time.

// spaceOnce shapes a space, by whose height the toolkit places every text, once
// for each font and size instead of once for each text.
var spaceOnce = all(
	swap("\tout := shaper.Shape(in)\n\n\tin.Text = runes\n", "\tout := shapedSpace(in)\n\n\tin.Text = runes\n"),
	swap("func walkString(", `// spaces are the shaped spaces. Only the drawing goroutine uses them.
var spaces = map[spaceIn]shaping.Output{}

type spaceIn struct {
	face *font.Face
	size fixed.Int26_6
}

func shapedSpace(in shaping.Input) shaping.Output {
	key := spaceIn{in.Face, in.Size}
	if out, ok := spaces[key]; ok {
		return out
	}
	if len(spaces) >= 64 { // of themes that are gone
		clear(spaces)
	}
	out := shaper.Shape(in)
	spaces[key] = out
	return out
}

func walkString(`))

// span is a range of letters.
type span struct{ from, to rune }

// leftToRight are letters and signs of which none runs to the left or changes the
// direction (Unicode Standard Annex 9, table 4), as far as this app has them: Latin,
// Greek and Cyrillic, punctuation, arrows and signs of mathematics.
var leftToRight = []span{{' ', '~'}, {0xa0, 0x58f}, {0x2010, 0x2027}, {0x202f, 0x205f}, {0x2070, 0x2bff}}

// plainLines leaves out the search for the direction of a text that has only one.
var plainLines = all(
	swap("\tseg.bidiParagraph.SetString(", `	if def == bidi.LeftToRight && runsRight(text.Text[text.RunStart:text.RunEnd]) {
		text.Direction.SetProgression(di.FromTopLeft)
		seg.output = append(seg.output, text)
		return
	}
	seg.bidiParagraph.SetString(`),
	swap("func (seg *Segmenter) splitByBidi(", `func runsRight(text []rune) bool {
	for _, r := range text {
		if !(`+within(leftToRight)+`) {
			return false
		}
	}
	return true
}

func (seg *Segmenter) splitByBidi(`))

// within is Go for r being in one of these.
func within(spans []span) string {
	parts := make([]string, len(spans))
	for i, s := range spans {
		parts[i] = fmt.Sprintf("r >= %d && r <= %d", s.from, s.to)
	}
	return strings.Join(parts, " || ")
}
