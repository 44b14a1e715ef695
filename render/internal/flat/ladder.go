package flat

import (
	"math"
	"slices"

	"holt.example/box/outline"
)

// mostRungs is how many places of corners are dimensioned along a side: a curve
// of many pieces is cut by machines or from the drawing.
const mostRungs = 24

// ladders are running dimensions of the corners of the face that is up, from
// its left and lower ends: on the top those from the left, on the right those
// from below. Where only the overall size would stand there, there is none.
func ladders(v view, mode View) []Item {
	var items []Item
	l := Layer{View: mode, Kind: Size}
	line := func(x0, y0, x1, y1 float64) {
		items = append(items, Item{Shape: Line, Layer: l, From: outline.Point{X: Grid(x0), Y: Grid(y0)}, To: outline.Point{X: Grid(x1), Y: Grid(y1)}})
	}
	var us, vs []float64
	for _, c := range v.corners {
		us, vs = append(us, c.X-v.face.Min.X), append(vs, c.Y-v.face.Min.Y)
	}
	us, vs = rungs(us, v.box.Width()), rungs(vs, v.box.Height())
	if us != nil {
		y := v.box.Max.Y + rail
		line(v.face.Min.X, y, v.face.Min.X+us[len(us)-1], y)
		for i, at := range spaced(us, small*pitch) {
			x, to := v.face.Min.X+us[i], v.face.Min.X+at
			line(x, y-1, x, y+1)
			line(x, y+1, to, y+3)
			s := figure(us[i])
			items = append(items, Item{Shape: Label, Layer: l, From: outline.Point{X: Grid(to + small/2), Y: Grid(y + 3.5)},
				Text: Writing{Value: s, Height: small, Angle: 90}})
		}
	}
	if vs != nil {
		x := v.box.Max.X + rail
		line(x, v.face.Min.Y, x, v.face.Min.Y+vs[len(vs)-1])
		for i, at := range spaced(vs, small*pitch) {
			y, to := v.face.Min.Y+vs[i], v.face.Min.Y+at
			line(x-1, y, x+1, y)
			line(x+1, y, x+3, to)
			items = append(items, Item{Shape: Label, Layer: l, From: outline.Point{X: Grid(x + 3.5), Y: Grid(to - small/2)},
				Text: Writing{Value: figure(vs[i]), Height: small}})
		}
	}
	return items
}

// rail is how far a ladder stands from the part.
const rail = 4.0

// rungs are the different places in order, nil if they only repeat the overall
// size or are too many.
func rungs(xs []float64, overall float64) []float64 {
	slices.Sort(xs)
	var out []float64
	for _, x := range xs {
		if x < 0 {
			x = 0
		}
		if len(out) == 0 || x > out[len(out)-1]+0.05 {
			out = append(out, x)
		}
	}
	if len(out) < 2 || len(out) > mostRungs || len(out) == 2 && math.Abs(out[1]-overall) < 0.05 {
		return nil
	}
	return out
}

// spaced moves places, which are in order, at least gap apart, each group of
// them about its middle.
func spaced(xs []float64, gap float64) []float64 {
	type group struct {
		sum float64 // of the places that the first would have
		n   int
	}
	var gs []group
	for i, x := range xs {
		gs = append(gs, group{x - float64(float64(i)*gap), 1})
		for k := len(gs) - 1; k > 0 && gs[k].sum/float64(gs[k].n) < gs[k-1].sum/float64(gs[k-1].n); k-- {
			gs[k-1].sum += gs[k].sum
			gs[k-1].n += gs[k].n
			gs = gs[:k]
		}
	}
	var out []float64
	for _, g := range gs {
		for range g.n {
			out = append(out, g.sum/float64(g.n)+float64(float64(len(out))*gap))
		}
	}
	return out
}
