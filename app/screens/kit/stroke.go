package kit

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/vector"
)

// pen draws smooth lines and areas on a picture, in pixels. The image type is
// the one that both the rasterizer and the toolkit use without converting every
// pixel, which in a browser took longer than everything else.
type pen struct {
	img  *image.RGBA
	path *vector.Rasterizer
}

func newPen(w, h int) *pen {
	return &pen{img: image.NewRGBA(image.Rect(0, 0, w, h)), path: vector.NewRasterizer(w, h)}
}

type point struct{ x, y float64 }

func (p *pen) fill(c color.Color) {
	p.path.Draw(p.img, p.img.Bounds(), image.NewUniform(c), image.Point{})
	p.path.Reset(p.img.Rect.Dx(), p.img.Rect.Dy())
	p.path.DrawOp = draw.Over
}

// area fills a polygon.
func (p *pen) area(points []point, c color.Color) {
	if len(points) < 3 {
		return
	}
	p.polygon(points)
	p.fill(c)
}

func (p *pen) polygon(points []point) {
	p.path.MoveTo(float32(points[0].x), float32(points[0].y))
	for _, q := range points[1:] {
		p.path.LineTo(float32(q.x), float32(q.y))
	}
	p.path.ClosePath()
}

// line draws a polyline of a width, with round joins. All its pieces have the
// same winding, so that overlaps do not cancel.
func (p *pen) line(points []point, width float64, c color.Color) {
	for i, q := range points {
		p.disc(q, width/2)
		if i > 0 {
			p.piece(points[i-1], q, width/2)
		}
	}
	p.fill(c)
}

func (p *pen) piece(a, b point, half float64) {
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	nx, ny := -dy/l*half, dx/l*half
	p.polygon([]point{{a.x + nx, a.y + ny}, {a.x - nx, a.y - ny}, {b.x - nx, b.y - ny}, {b.x + nx, b.y + ny}})
}

func (p *pen) disc(at point, r float64) {
	const sides = 12
	pts := make([]point, sides)
	for i := range pts {
		s, c := math.Sincos(2 * math.Pi * float64(i) / sides)
		pts[i] = point{at.x + r*c, at.y + r*s}
	}
	p.polygon(pts)
}

// dot draws a disc with a ring around it.
func (p *pen) dot(at point, r float64, fill, ring color.Color) {
	p.disc(at, r*1.45)
	p.fill(ring)
	p.disc(at, r)
	p.fill(fill)
}

// dashes cuts a polyline into dashes of length on, off apart.
func dashes(points []point, on, off float64) [][]point {
	if off == 0 || len(points) < 2 {
		return [][]point{points}
	}
	var out [][]point
	piece, left, drawing := []point{points[0]}, on, true
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		l := math.Hypot(b.x-a.x, b.y-a.y)
		for done := 0.0; done < l; {
			step := min(left, l-done)
			done += step
			left -= step
			f := done / l
			at := point{a.x + f*(b.x-a.x), a.y + f*(b.y-a.y)}
			if drawing {
				piece = append(piece, at)
			}
			if left > 0 {
				continue
			}
			if drawing {
				out = append(out, piece)
			}
			drawing = !drawing
			left, piece = on, []point{at}
			if !drawing {
				left = off
			}
		}
	}
	if drawing && len(piece) > 1 {
		out = append(out, piece)
	}
	return out
}
