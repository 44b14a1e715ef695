package flat

import (
	"math"
	"strconv"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
)

// Heights of capitals in mm (ISO 3098-1 has 2.5 and 3.5), and the places of
// what stands round a part.
const (
	small   = 2.5
	large   = 3.5
	heading = 5.0
	off     = 8.0 // of the line of an overall size from the part
	tick    = 1.5 // half a tick at its ends
)

// dress is all that is not cut: sizes, names, the grain.
func dress(s Subject, v view, mode View) []Item {
	var items []Item
	b := v.box
	w, h := b.Width(), b.Height()
	p := s.Piece.Panel

	line := func(k Kind, x0, y0, x1, y1 float64) {
		items = append(items, Item{Shape: Line, Layer: Layer{View: mode, Kind: k},
			From: outline.Point{X: Grid(x0), Y: Grid(y0)}, To: outline.Point{X: Grid(x1), Y: Grid(y1)}})
	}
	text := func(k Kind, x, y float64, t Writing) {
		items = append(items, Item{Shape: Label, Layer: Layer{View: mode, Kind: k},
			From: outline.Point{X: Grid(x), Y: Grid(y)}, Text: t})
	}

	y := b.Min.Y - off
	line(Size, b.Min.X, y, b.Max.X, y)
	line(Size, b.Min.X, y-tick, b.Min.X, y+tick)
	line(Size, b.Max.X, y-tick, b.Max.X, y+tick)
	text(Size, (b.Min.X+b.Max.X)/2, y+1, Writing{Value: figure(w), Height: small, Middle: true})
	x := b.Min.X - off
	line(Size, x, b.Min.Y, x, b.Max.Y)
	line(Size, x-tick, b.Min.Y, x+tick, b.Min.Y)
	line(Size, x-tick, b.Max.Y, x+tick, b.Max.Y)
	text(Size, x-1, (b.Min.Y+b.Max.Y)/2, Writing{Value: figure(h), Height: small, Middle: true, Angle: 90})

	name := Clean(string(s.Piece.Part), 60)
	if s.Number > 0 {
		name = strconv.Itoa(s.Number) + ": " + name
	}
	y -= large + 4
	text(Text, b.Min.X, y, Writing{Value: name, Height: large})
	y -= small + 2.5
	notes := y
	text(Text, b.Min.X, y, Writing{Value: facing(p, mode) + ", " + figure(float64(p.Thickness)) + " thick", Height: small})

	face := p.Machined
	if mode == Turned {
		face = p.Far.Transform(outline.MirrorX())
	}
	pl := &placer{face: outers(face)}
	pl.draw(v.items...)
	pl.draw(items...)
	taken := v.items[:len(v.items):len(v.items)]
	add := func(more []Item) {
		items, taken = append(items, more...), append(taken, more...)
	}
	add(ladders(v, mode))
	if mode == AsMachined {
		n := 0
		for _, e := range p.Edges {
			words := bevelWords(e)
			if words == nil {
				continue
			}
			ts := bevel(pl, e, words)
			add(ts)
			if ts == nil && n < mostNotes { // no room beside the edge
				n++
				notes -= float64(small * pitch)
				text(Text, b.Min.X, notes, Writing{Value: edgeWord(e) + " edge: " + strings.Join(words, ", "), Height: small})
			}
		}
	}
	add(labels(pl, v.jobs, v, mode))
	return append(items, grainArrow(p, v.box, taken, mode)...)
}

// facing says which face is up.
func facing(p box.Panel, mode View) string {
	inner := p.Face == box.FromInner
	if mode == Turned {
		inner = !inner
	}
	s := "outer face up"
	if inner {
		s = "inner face up"
	}
	if mode == Turned {
		s = "turned over, " + s
	}
	return s
}

// mostNotes is how many bevels are written below a part.
const mostNotes = 8

// edgeWord is the side of the part that an edge is on.
func edgeWord(e box.PanelEdge) string {
	// The part lies on the edge's left.
	u, v := e.To.Y-e.From.Y, e.From.X-e.To.X
	const t = math.Sqrt2 - 1 // tan 22.5
	var s []string
	switch {
	case v > float64(t*math.Abs(u)):
		s = append(s, "upper")
	case -v > float64(t*math.Abs(u)):
		s = append(s, "lower")
	}
	switch {
	case u > float64(t*math.Abs(v)):
		s = append(s, "right")
	case -u > float64(t*math.Abs(v)):
		s = append(s, "left")
	}
	return strings.Join(s, " ")
}

// bevelWords say what a bevel is: its angle, what that makes over the
// thickness, and which face is the longer. Nil where there is none.
func bevelWords(e box.PanelEdge) []string {
	if !(math.Abs(float64(e.Bevel)) >= 0.05) || !fits(e.From.X) || !fits(e.From.Y) || !fits(e.To.X) || !fits(e.To.Y) ||
		!fits(float64(e.Run)) || !fits(float64(e.Bevel)) {
		return nil
	}
	angle, run := "bevel "+figure(math.Abs(float64(e.Bevel)))+"°", figure(math.Abs(float64(e.Run)))+" over the thickness"
	longer := "machined face longer"
	if e.Bevel < 0 {
		longer = "other face longer"
	}
	return []string{angle, run, longer}
}

// bevel writes the bevel of an edge along it, inside the part, to be read from
// below or from the right: in one line or, on a short edge, in up to three. It
// is nil where there is no room.
func bevel(p *placer, e box.PanelEdge, words []string) []Item {
	angle, run, longer := words[0], words[1], words[2]
	dx, dy := e.To.X-e.From.X, e.To.Y-e.From.Y
	l := math.Hypot(dx, dy)
	turn := Grid(math.Atan2(dy, dx) * 180 / math.Pi)
	if turn <= -90 || turn > 90 { // upside down: read along the other way
		turn += 180
		if turn > 180 {
			turn -= 360
		}
	}
	var bs []block
	for _, lines := range [][]string{
		{angle + ", " + run + ", " + longer}, {angle + ", " + run, longer}, {angle, run, longer},
	} {
		b := block{lines: lines, height: small, angle: turn}
		w, h := b.size()
		if !(l >= w) {
			continue // it would say more about its neighbours
		}
		// The part lies to the left of the edge. Where the machined face overhangs,
		// the line of the far face is inside too, and the text stands clear of it.
		away := h/2 + math.Max(1.8, float64(e.Run)+1.8)
		for _, k := range [...]float64{0.5, 0.35, 0.65, 0.25, 0.75} {
			if float64(l*math.Min(k, 1-k)) < w/2 {
				continue
			}
			b.at = outline.Point{
				X: e.From.X + float64(k*dx) - float64(dy/l*away),
				Y: e.From.Y + float64(k*dy) + float64(dx/l*away),
			}
			bs = append(bs, b)
		}
	}
	if len(bs) == 0 {
		return nil
	}
	b, cost := p.best(bs)
	if cost > 5 { // on other words, or across two lines
		return nil
	}
	p.put(b)
	return b.items(Layer{Kind: Text})
}

// grainArrow is a double arrow along the grain, as long as there is room for,
// in the first of a few places inside the face that no work and no text covers.
func grainArrow(p box.Panel, b outline.Box, taken []Item, mode View) []Item {
	gu, gv := p.Grain[0], p.Grain[1]
	l := math.Hypot(gu, gv)
	if !(l > 0 && l <= 2) {
		return nil
	}
	gu, gv = gu/l, gv/l
	face := p.Machined
	if mode == Turned {
		gu, face = -gu, p.Far.Transform(outline.MirrorX())
	}
	half := math.Min(15, math.Min(b.Width(), b.Height())*0.15)
	best := outline.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2}
	free := func(c outline.Point, half float64) bool {
		for _, e := range [...]float64{-half, half} {
			tip := outline.Point{X: c.X + float64(e*gu), Y: c.Y + float64(e*gv)}
			if face.Contains(tip, 0.5) != outline.Inside {
				return false
			}
		}
		return free(taken, c, half*1.25)
	}
search:
	for _, size := range [...]float64{1, 0.7, 0.5} {
		for _, fy := range [...]float64{0.5, 0.3, 0.7, 0.2, 0.8} {
			for _, fx := range [...]float64{0.5, 0.3, 0.7, 0.2, 0.8} {
				c := outline.Point{X: b.Min.X + float64(b.Width()*fx), Y: b.Min.Y + float64(b.Height()*fy)}
				if free(c, half*size) {
					best, half = c, half*size
					break search
				}
			}
		}
	}
	head := half * 0.25
	if !(half > 0.5) {
		return nil
	}
	at := func(along, across float64) outline.Point {
		return outline.Point{
			X: Grid(best.X + float64(along*gu) - float64(across*gv)),
			Y: Grid(best.Y + float64(along*gv) + float64(across*gu)),
		}
	}
	var items []Item
	line := func(p, q outline.Point) {
		items = append(items, Item{Shape: Line, Layer: Layer{View: mode, Kind: Grain}, From: p, To: q, Note: "the grain runs along the arrow"})
	}
	line(at(-half, 0), at(half, 0))
	for _, e := range [...]float64{1, -1} {
		tip := at(e*half, 0)
		line(tip, at(e*(half-head), head/2))
		line(tip, at(e*(half-head), -head/2))
	}
	return items
}

// free reports whether nothing but the outlines comes within r of c, by boxes.
func free(items []Item, c outline.Point, r float64) bool {
	for _, it := range items {
		if it.Layer.Kind == Profile || it.Layer.Kind == Face {
			continue
		}
		b := it.extents()
		if c.X+r > b.Min.X && c.X-r < b.Max.X && c.Y+r > b.Min.Y && c.Y-r < b.Max.Y {
			return false
		}
	}
	return true
}
