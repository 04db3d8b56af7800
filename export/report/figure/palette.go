package figure

import (
	"fmt"
	"image/color"
	"strings"
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

// themed puts CSS variables in the place of colours.
func themed(svg string) string {
	pairs := make([]string, 0, 2*len(variables))
	for _, v := range variables {
		hex := fmt.Sprintf("#%02X%02X%02X", v.colour.R, v.colour.G, v.colour.B)
		pairs = append(pairs, hex, "var("+v.name+")")
	}
	return strings.NewReplacer(pairs...).Replace(svg)
}

// faint returns c at a share of its opacity.
func faint(c color.NRGBA, share float64) color.NRGBA {
	c.A = uint8(share * 255)
	return c
}
