package dxf

import (
	"strconv"

	"holt.example/box/outline"
	"holt.example/render/internal/flat"
)

// tags is a run of DXF tags: a group code on one line, its value on the next.
type tags struct{ b []byte }

// newline is what the oldest readers want and the newest accept.
const newline = "\r\n"

func (t *tags) code(c int) {
	if c < 100 {
		t.b = append(t.b, ' ')
	}
	if c < 10 {
		t.b = append(t.b, ' ')
	}
	t.b = strconv.AppendInt(t.b, int64(c), 10)
	t.b = append(t.b, newline...)
}

func (t *tags) str(c int, s string) {
	t.code(c)
	t.b = append(append(t.b, s...), newline...)
}

func (t *tags) int(c, n int) {
	t.code(c)
	t.b = append(strconv.AppendInt(t.b, int64(n), 10), newline...)
}

func (t *tags) num(c int, x float64) {
	t.code(c)
	t.b = append(flat.AppendDotted(t.b, x), newline...)
}

// at writes a place: x under the code c, y and z under the codes 10 and 20
// above it.
func (t *tags) at(c int, p outline.Point) {
	t.num(c, p.X)
	t.num(c+10, p.Y)
	t.num(c+20, 0)
}

// flatAt is at without z.
func (t *tags) flatAt(c int, p outline.Point) {
	t.num(c, p.X)
	t.num(c+10, p.Y)
}

// bulge writes the bulge of a vertex; none means straight.
func (t *tags) bulge(x float64) {
	if x == 0 {
		return
	}
	t.code(42)
	t.b = append(flat.AppendBulge(t.b, x), newline...)
}

// handle is written in hexadecimal.
type handle int

func (h handle) String() string {
	const digits = "0123456789ABCDEF"
	if h < 16 {
		return digits[h : h+1]
	}
	return (h / 16).String() + digits[h%16:h%16+1]
}

// view is what a new window on the drawing shows.
type view struct {
	middle        outline.Point
	height, ratio float64
}

func viewOf(b outline.Box) view {
	h := max(b.Height(), b.Width()/1.6, 1) * 1.05
	return view{outline.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2}, h, 1.6}
}

// colour is a layer's colour number: only to tell layers apart.
func colour(k flat.Kind) int {
	return colours[int(k)%len(colours)]
}

// colours by kind is never changed.
var colours = [flat.Kinds]int{
	flat.Profile: 5,
	flat.Face:    6,
	flat.Bore:    2,
	flat.Fixing:  3,
	flat.Opening: 4,
	flat.Pocket:  1,
	flat.Rebate:  3,
	flat.Housing: 6,
	flat.Groove:  1,
	flat.Notch:   4,
	flat.Mark:    2,
	flat.Engrave: 6,
	flat.Grain:   3,
	flat.Size:    4,
	flat.Text:    2,
	flat.Stock:   3,
	flat.Trim:    1,
	flat.Blank:   4,
	flat.Saw:     1,
	flat.Offcut:  3,
	flat.Defect:  6,
	flat.Balloon: 2,
}
