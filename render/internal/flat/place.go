package flat

import (
	"math"

	"holt.example/box/outline"
)

// block is some lines of text that stand under each other, centred on a place.
type block struct {
	lines  []string
	height float64 // of the capitals
	at     outline.Point
	angle  float64 // degrees anticlockwise
}

// pitch is from baseline to baseline, of the height of capitals (ISO 3098-1 has
// 1.4 at least between lines without accents).
const pitch = 1.6

// size is the block's width and height.
func (b block) size() (w, h float64) {
	for _, s := range b.lines {
		w = math.Max(w, Width(s, b.height))
	}
	// From the top of the capitals to what hangs below the last line.
	return w, float64(b.height * (float64(float64(len(b.lines)-1)*pitch) + 1.3))
}

// rect is the block's rectangle with some air round it.
func (b block) rect(air float64) []outline.Point {
	w, h := b.size()
	r := outline.Rectangle(-w/2-air, -h/2-air, w/2+air, h/2+air).
		Transform(outline.Turn(b.angle).Then(outline.Shift(b.at.X, b.at.Y)))
	out := make([]outline.Point, len(r))
	for i, v := range r {
		out[i] = v.At()
	}
	return out
}

// items are the block's lines on a layer.
func (b block) items(l Layer) []Item {
	_, h := b.size()
	s, c := math.Sincos(float64(b.angle*math.Pi) / 180)
	var out []Item
	for i, t := range b.lines {
		y := h/2 - float64(b.height*(1+float64(float64(i)*pitch))) // of the baseline, from the middle
		at := outline.Point{X: Grid(b.at.X - float64(y*s)), Y: Grid(b.at.Y + float64(y*c))}
		out = append(out, Item{Shape: Label, Layer: l, From: at,
			Text: Writing{Value: t, Height: b.height, Middle: true, Angle: Grid(b.angle)}})
	}
	return out
}

// placer knows what is drawn already, and finds places for texts.
type placer struct {
	face  outline.Region    // texts rather stand in it
	texts [][]outline.Point // their rectangles
	lines [][2]outline.Point
}

// most is how many lines are heeded at all: in a pattern of thousands of holes
// texts stand where they may.
const mostLines = 20000

// draw adds items to what is drawn.
func (p *placer) draw(items ...Item) {
	for _, it := range items {
		if len(p.lines) > mostLines && it.Shape != Label {
			continue
		}
		switch it.Shape {
		case Label:
			p.texts = append(p.texts, corners(it.extents()))
		case Line:
			p.lines = append(p.lines, [2]outline.Point{it.From, it.To})
		case Disc:
			p.ring(outline.Circle(outline.Point{X: it.Circle.X, Y: it.Circle.Y}, 2*it.Circle.R).Flatten(0.2))
		case Closed:
			p.ring(it.Contour.Flatten(0.2))
		case Open:
			for i := 0; i+1 < len(it.Stroke); i++ {
				p.lines = append(p.lines, [2]outline.Point{it.Stroke[i].At(), it.Stroke[i+1].At()})
			}
		}
	}
}

func (p *placer) ring(q []outline.Point) {
	for i := range q {
		p.lines = append(p.lines, [2]outline.Point{q[i], q[(i+1)%len(q)]})
	}
}

// put adds a block to what is drawn.
func (p *placer) put(b block) { p.texts = append(p.texts, b.rect(0)) }

// cost is how badly a block stands: 0 where it is clear of all.
func (p *placer) cost(b block) float64 {
	r := b.rect(0.6)
	lo, hi := bounds(r)
	n := 0.0
	for _, t := range p.texts {
		if touch(r, lo, hi, t) {
			n += 20
		}
	}
	for i := range p.lines {
		if touch(r, lo, hi, p.lines[i][:]) {
			n += 3
		}
	}
	for _, q := range r {
		if p.face.Contains(q, 0) == outline.Outside {
			n++
		}
	}
	return n
}

// best is the first of the blocks that stands best.
func (p *placer) best(bs []block) (block, float64) {
	least, at := math.Inf(1), 0
	for i, b := range bs {
		if c := p.cost(b); c < least {
			least, at = c, i
			if c == 0 {
				break
			}
		}
	}
	return bs[at], least
}

func corners(b outline.Box) []outline.Point {
	return []outline.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}

func bounds(ps []outline.Point) (lo, hi outline.Point) {
	lo, hi = ps[0], ps[0]
	for _, p := range ps[1:] {
		lo = outline.Point{X: math.Min(lo.X, p.X), Y: math.Min(lo.Y, p.Y)}
		hi = outline.Point{X: math.Max(hi.X, p.X), Y: math.Max(hi.Y, p.Y)}
	}
	return lo, hi
}

// touch reports whether two convex shapes, the first within lo and hi, have
// more than their rims in common: no side of either has them on two sides.
func touch(a []outline.Point, lo, hi outline.Point, b []outline.Point) bool {
	bl, bh := bounds(b)
	if bl.X >= hi.X || bh.X <= lo.X && bl.X < bh.X || bh.X < lo.X || bl.Y >= hi.Y || bh.Y <= lo.Y && bl.Y < bh.Y || bh.Y < lo.Y {
		return false
	}
	return !apart(a, b) && !apart(b, a)
}

// apart reports whether some side of a has all of b outside.
func apart(a, b []outline.Point) bool {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		dx, dy := q.X-p.X, q.Y-p.Y
		least, most := math.Inf(1), math.Inf(-1)
		for _, v := range b {
			h := float64(dx*(v.Y-p.Y)) - float64(dy*(v.X-p.X))
			least, most = math.Min(least, h), math.Max(most, h)
		}
		own, low := math.Inf(-1), math.Inf(1)
		for _, v := range a {
			h := float64(dx*(v.Y-p.Y)) - float64(dy*(v.X-p.X))
			own, low = math.Max(own, h), math.Min(low, h)
		}
		if most <= low || least >= own {
			return true
		}
	}
	return false
}
