package plot_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"stillair/export/plot"
)

func decimals(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }

// A plot of one line, drawn for a page.
func Example() {
	p := &plot.Plot{X: plot.Axis{Label: "time, s"}, Y: plot.Axis{Label: "speed, m/s"},
		Lines: []plot.Line{{X: []float64{0, 10, 20}, Y: []float64{30, 24, 20}}}}
	p.Reach()
	p.Y.Ticks = plot.Ticks(p.Y.Min, p.Y.Max, 5, decimals)
	svg := string(plot.SVG([]plot.Row{{Plot: p, Share: 1}}, 380, 250, "Coast-down", "Speed falls from 30 to 20 m/s in 20 s.", decimals))
	fmt.Println(strings.Count(svg, "<path"), "paths,", strings.Count(svg, "<text"), "texts")
	// Output: 8 paths, 8 texts
}

// TestEveryPlotIsWellFormed draws plots of random content, with NaN and values
// beyond the axes, and checks that they are XML with finite numbers.
func TestEveryPlotIsWellFormed(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 4))
	values := func() []float64 {
		out := make([]float64, rng.IntN(40))
		for i := range out {
			out[i] = rng.NormFloat64() * math.Pow(10, float64(rng.IntN(7)-3))
			if rng.IntN(12) == 0 {
				out[i] = []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0}[rng.IntN(4)]
			}
		}
		return out
	}
	for range 300 {
		x := values()
		p := &plot.Plot{X: plot.Axis{Label: "<x & y>"}, Lines: []plot.Line{{Name: "\"a\"", X: x, Y: values(), Tone: plot.Tone(rng.IntN(9) - 2)}},
			Bands: []plot.Band{{X: x, Low: values(), High: values()}}, Dots: []plot.Dots{{X: x, Y: values(), Triangle: true}}}
		if rng.IntN(2) == 0 {
			p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -1, 1, -1, 1
		}
		p.Reach()
		p.X.Ticks = plot.Ticks(p.X.Min, p.X.Max, 6, decimals)
		svg := string(plot.SVG([]plot.Row{{Plot: p, Share: 2}, {Plot: &plot.Plot{}, Share: 1}}, 380, 250, "t", "c", decimals))
		d := xml.NewDecoder(strings.NewReader(svg))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%v in %s", err, svg)
			}
		}
		if strings.Contains(svg, "Inf") || strings.Contains(svg, "NaN") {
			t.Fatalf("a number is not finite: %s", svg)
		}
	}
}
