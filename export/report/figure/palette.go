package figure

import (
	"image/color"
	"regexp"
	"strconv"
)

// The colours of the figures. All differ from pure black, which the SVG writer
// leaves out.
var (
	ink        = color.NRGBA{0x10, 0x18, 0x20, 0xff}
	soft       = color.NRGBA{0x5a, 0x66, 0x70, 0xff}
	rule       = color.NRGBA{0xd5, 0xda, 0xde, 0xff}
	paper      = color.NRGBA{0xfc, 0xfb, 0xf9, 0xff}
	blue       = color.NRGBA{0x00, 0x72, 0xb2, 0xff}
	vermillion = color.NRGBA{0xd5, 0x5e, 0x00, 0xff}
	green      = color.NRGBA{0x00, 0x9e, 0x73, 0xff}
	orange     = color.NRGBA{0xe6, 0x9f, 0x00, 0xff}
	purple     = color.NRGBA{0xcc, 0x79, 0xa7, 0xff}
)

// variables names the CSS variable of each colour.
var variables = []struct {
	colour color.NRGBA
	name   string
}{
	{ink, "--ink"}, {soft, "--soft"}, {rule, "--rule"}, {paper, "--paper"}, {blue, "--blue"},
	{vermillion, "--vermillion"}, {green, "--green"}, {orange, "--orange"}, {purple, "--purple"},
}

// hex is a colour as the SVG writer writes it.
var hex = regexp.MustCompile(`#[0-9A-F]{6}`)

// themed puts CSS variables in the place of colours. The SVG writer may be off
// by one where a colour is transparent.
func themed(svg string) string {
	return hex.ReplaceAllStringFunc(svg, func(written string) string {
		n, err := strconv.ParseUint(written[1:], 16, 32)
		if err != nil {
			return written
		}
		near := func(a, b uint8) bool { return max(a, b)-min(a, b) <= 2 }
		for _, v := range variables {
			c := v.colour
			if near(c.R, uint8(n>>16)) && near(c.G, uint8(n>>8)) && near(c.B, uint8(n)) {
				return "var(" + v.name + ")"
			}
		}
		return written
	})
}

// faint returns c at a share of its opacity.
func faint(c color.NRGBA, share float64) color.NRGBA {
	c.A = uint8(share * 255)
	return c
}
