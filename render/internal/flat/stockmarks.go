package flat

import (
	"fmt"
	"math"

	"holt.example/box"
	"holt.example/box/batch"
	"holt.example/box/outline"
)

// marks are a part's balloon, name, bevels and grain arrow.
func marks(p *batch.Placed, panel box.Panel, v view) []Item {
	var out []Item
	pl := &placer{face: outers(panel.Machined)}
	pl.draw(v.items...)
	for _, e := range panel.Edges {
		if words := bevelWords(e); words != nil {
			out = append(out, bevel(pl, e, words)...)
		}
	}
	taken := append(v.items[:len(v.items):len(v.items)], out...)
	short := math.Min(v.box.Width(), v.box.Height())
	text := Writing{Value: Clean(p.Label, 16), Height: clamp(short*0.06, small, 9), Middle: true}
	c, r, ok := room(panel.Machined, v.box, taken, Width(text.Value, text.Height)/2+float64(text.Height*0.6))
	text.Height *= ok
	if !(text.Height >= 1) {
		return append(out, grainArrow(panel, v.box, taken, AsMachined)...)
	}
	out = append(out,
		Item{Shape: Disc, Layer: Layer{Kind: Balloon}, Circle: Circle{Grid(c.X), Grid(c.Y), Grid(r)}},
		label(Text, outline.Point{X: c.X, Y: c.Y - text.Height/2}, text))
	name := Writing{Value: Clean(string(p.Piece.Part), 40), Height: math.Max(small*ok, text.Height*0.6), Middle: true}
	at := outline.Point{X: c.X, Y: c.Y - r - float64(name.Height*1.6)}
	n := label(Text, at, name)
	if fitsIn(panel.Machined, taken, n.extents()) {
		out = append(out, n)
	}
	taken = append(taken, out...)
	arrow := grainArrow(panel, v.box, taken, AsMachined)
	pl.draw(out...)
	pl.draw(arrow...)
	return append(append(out, arrow...), work(pl, v)...)
}

// work says in a few words what is done to a part, each kind once, where there
// is room for it on the part; places are on the part's own drawing.
func work(pl *placer, v view) []Item {
	var order []string
	first, count := map[string]job{}, map[string]int{}
	for _, j := range v.jobs {
		if len(j.s.top) == 0 && len(j.op.Strokes) == 0 {
			continue
		}
		what := j.what(v)
		if what == "" {
			continue
		}
		if count[what] == 0 {
			order = append(order, what)
			first[what] = j
		}
		count[what]++
	}
	var out []Item
	for _, what := range order {
		words := what
		if n := count[what]; n > 1 {
			words = fmt.Sprintf("%d × %s", n, what)
		}
		b, bs := first[what].blocks([]string{words})
		if t, cost := pl.best(bs); cost == 0 {
			out = append(out, first[what].write(pl, b, t, AsMachined)...)
		}
	}
	return out
}

// room finds a place for a disc of radius r, or a smaller one, on the face clear
// of all work; the last number is by how much it was shrunk, 0 if there is none.
func room(face outline.Region, b outline.Box, taken []Item, r float64) (outline.Point, float64, float64) {
	for _, k := range [...]float64{1, 0.75, 0.5, 0.35} {
		for _, fy := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.12, 0.88} {
			for _, fx := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.12, 0.88} {
				c := outline.Point{X: b.Min.X + float64(b.Width()*fx), Y: b.Min.Y + float64(b.Height()*fy)}
				q := float64(r*k) + 1
				box := outline.Box{Min: outline.Point{X: c.X - q, Y: c.Y - q}, Max: outline.Point{X: c.X + q, Y: c.Y + q}}
				if face.Contains(c, 0) == outline.Inside && face.Distance(c) >= q && clear(taken, box) {
					return c, r * k, k
				}
			}
		}
	}
	return outline.Point{}, 0, 0
}

// fitsIn reports whether a box lies on the face, clear of all work.
func fitsIn(face outline.Region, taken []Item, b outline.Box) bool {
	for _, c := range [...]outline.Point{b.Min, b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}} {
		if face.Contains(c, 1) != outline.Inside {
			return false
		}
	}
	return clear(taken, b)
}

// clear reports whether no item but an outline comes into the box.
func clear(items []Item, b outline.Box) bool {
	for _, it := range items {
		if it.Layer.Kind != Profile && it.Layer.Kind != Face && it.extents().Overlaps(b, 0) {
			return false
		}
	}
	return true
}
