package bom

import (
	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// Boxes of these tests are built by hand, part by part, so that the list is
// checked without the code that resolves designs. All walls are upright; panels
// are seen from outside, u to the right.

// kind is how the walls of a handBox meet.
type kind int

const (
	butt kind = iota
	rebate
	mitre
	comb
)

func (k kind) String() string { return [...]string{"butt", "rebate", "mitre", "comb"}[k] }

// handBox is a rectangular box with a flat roof on top.
type handBox struct {
	w, d, h       float64
	t             map[box.Part]float64
	corners       kind
	depth         float64 // of rebates
	laps          box.Laps
	housing       float64 // of the floor in the walls, 0 butted
	raise, over   float64
	sidesFree     bool // the sides do not meet the roof
	backUnder     bool // the back is under the sides, whatever laps says
	grainNone     bool
	grainAcross   bool
	density       float64
	floor, roof   bool
	extraVertical float64 // the back runs on below by this
}

// inTurn lists the walls anticlockwise seen from above.
var inTurn = [4]box.Part{box.Front, box.Right, box.Back, box.Left}

// laps reports whether wall a laps over its neighbour b.
func (h handBox) lapsOver(a, b box.Part) bool {
	if h.backUnder && (a == box.Back || b == box.Back) {
		return b == box.Back
	}
	switch h.laps {
	case box.Pinwheel:
		for i, w := range inTurn {
			if w == a {
				return inTurn[(i+1)%4] == b
			}
		}
	case box.Sides:
		return a == box.Left || a == box.Right
	}
	return a == box.Front || a == box.Back
}

// reach is how far wall a reaches past its cavity face towards wall b, and how
// much further its outer face reaches.
func (h handBox) reach(a, b box.Part) (inner, outer float64) {
	switch {
	case h.corners == mitre:
		return 0, h.t[b]
	case h.corners == comb, h.lapsOver(a, b):
		return h.t[b], 0
	case h.corners == rebate:
		return h.depth, 0
	}
	return 0, 0
}

// side is one side of a hand-made panel.
type side struct {
	to           box.Part
	joint        string
	inner, outer float64
}

// slab makes a rectangular part w by h with its cavity face's lower edge in the
// middle of the frame; sides are lower, right, upper, left.
func slab(part box.Part, w, h, t float64, s [4]side, f solid.Frame) box.Piece {
	rect := func(outer bool) (x0, y0, x1, y1 float64) {
		r := [4]float64{}
		for i, e := range s {
			r[i] = e.inner
			if outer {
				r[i] += e.outer
			}
		}
		return -w/2 - r[3], -r[0], w/2 + r[1], h + r[2]
	}
	ax, ay, bx, by := rect(true) // the outer face is the machined one
	machined := outline.Region{outline.Rectangle(ax, ay, bx, by)}
	cx, cy, dx, dy := rect(false)
	p := box.Piece{
		Part: part, Board: box.Board{Thickness: box.MM(t), Material: "larch"}, Thickness: box.MM(t),
		Home: f, Pose: f, Nominal: [2]box.MM{box.MM(w), box.MM(h)},
		Width: box.MM(bx - ax), Length: box.MM(by - ay),
		Panel: box.Panel{
			Face: box.FromOuter, Thickness: box.MM(t), Machined: machined, Silhouette: machined,
			Far: outline.Region{outline.Rectangle(cx, cy, dx, dy)}, Grain: [2]float64{0, 1},
		},
		Volume: (bx - ax) * (by - ay) * t,
	}
	c := machined[0]
	for i, e := range s {
		from, to := c[i].At(), c[(i+1)%4].At()
		pe := box.PanelEdge{From: from, To: to, Neighbour: e.to, Joint: e.joint, Adds: box.MM(e.inner)}
		pe.Length = box.MM(max(to.X-from.X, from.X-to.X) + max(to.Y-from.Y, from.Y-to.Y))
		if e.outer > 0 {
			pe.Bevel, pe.Run = 45, box.MM(e.outer)
		}
		p.Panel.Edges = append(p.Panel.Edges, pe)
	}
	return p
}

// source builds the box.
func (h handBox) source() source {
	up := solid.Vec{Z: 1}
	wallFrame := func(x, y float64, out solid.Vec) solid.Frame {
		return solid.Frame{O: solid.Vec{X: x, Y: y}, U: up.Cross(out), V: up, W: out}
	}
	tf, tr := h.t[box.Floor], h.t[box.Roof]
	var s source
	s.name = "by hand"
	seam := func(over, under box.Part, joint string) {
		s.seams = append(s.seams, box.Seam{Over: over, Under: under, Joint: joint})
	}
	below := 0.0
	floorJoint := "butt"
	if h.housing > 0 {
		floorJoint = "housing"
	}
	if h.floor {
		below = tf + h.raise
	}
	for i, a := range inTurn {
		right, left := inTurn[(i+1)%4], inTurn[(i+3)%4]
		span, f := h.w, solid.Frame{}
		switch a {
		case box.Front:
			f = wallFrame(0, -h.d/2, solid.Vec{Y: -1})
		case box.Back:
			f = wallFrame(0, h.d/2, solid.Vec{Y: 1})
		case box.Right:
			span, f = h.d, wallFrame(h.w/2, 0, solid.Vec{X: 1})
		case box.Left:
			span, f = h.d, wallFrame(-h.w/2, 0, solid.Vec{X: -1})
		}
		sides := [4]side{{inner: below}, {to: right, joint: h.corners.String()}, {}, {to: left, joint: h.corners.String()}}
		sides[1].inner, sides[1].outer = h.reach(a, right)
		sides[3].inner, sides[3].outer = h.reach(a, left)
		if a == box.Back {
			sides[0].inner += h.extraVertical
		}
		if h.floor {
			sides[0].to, sides[0].joint = box.Floor, floorJoint
			seam(a, box.Floor, floorJoint)
		}
		if h.roof && !(h.sidesFree && (a == box.Left || a == box.Right)) {
			sides[2].to, sides[2].joint = box.Roof, "butt"
			seam(box.Roof, a, "butt")
		}
		if h.lapsOver(a, right) {
			seam(a, right, h.corners.String())
		} else {
			seam(right, a, h.corners.String())
		}
		s.pieces = append(s.pieces, slab(a, span, h.h, h.t[a], sides, f))
	}
	if h.floor {
		down := solid.Frame{O: solid.Vec{Y: -h.d / 2}, U: solid.Vec{X: 1}, V: solid.Vec{Y: 1}, W: solid.Vec{Z: 1}}
		e := func(p box.Part) side { return side{to: p, joint: floorJoint, inner: h.housing} }
		s.pieces = append(s.pieces, slab(box.Floor, h.w, h.d, tf, [4]side{e(box.Front), e(box.Right), e(box.Back), e(box.Left)}, down))
	}
	if h.roof {
		top := solid.Frame{O: solid.Vec{Y: -h.d / 2, Z: h.h}, U: solid.Vec{X: 1}, V: solid.Vec{Y: 1}, W: solid.Vec{Z: 1}}
		e := func(p box.Part) side {
			if h.sidesFree && (p == box.Left || p == box.Right) {
				return side{inner: h.t[p] + h.over}
			}
			return side{to: p, joint: "butt", inner: h.t[p] + h.over}
		}
		s.pieces = append(s.pieces, slab(box.Roof, h.w, h.d, tr, [4]side{e(box.Front), e(box.Right), e(box.Back), e(box.Left)}, top))
	}
	for i := range s.pieces {
		p := &s.pieces[i]
		if h.grainNone {
			p.Panel.Grain = [2]float64{}
			if p.Width > p.Length {
				p.Width, p.Length = p.Length, p.Width
			}
		}
		if h.grainAcross {
			p.Panel.Grain = [2]float64{1, 0}
			p.Width, p.Length = p.Length, p.Width
		}
		p.Board.Density = h.density
		p.Mass = p.Volume * h.density / 1e9
	}
	s.group()
	return s
}

// group puts parts of equal size into one group; hand-made boxes have no work
// and no mirror images.
func (s *source) group() {
	s.groups = nil
	for _, p := range s.pieces {
		found := false
		for i := range s.groups {
			g := &s.groups[i]
			for _, q := range s.pieces {
				if q.Part == g.Parts[0] && abs(q.Length-p.Length) < 1e-6 && abs(q.Width-p.Width) < 1e-6 && q.Thickness == p.Thickness {
					found = true
				}
			}
			if found {
				g.Parts = append(g.Parts, p.Part)
				break
			}
		}
		if !found {
			s.groups = append(s.groups, box.Group{Number: len(s.groups) + 1, Parts: []box.Part{p.Part}})
		}
	}
}

func abs(x box.MM) box.MM { return max(x, -x) }

// evenly is the same thickness for all parts.
func evenly(t float64) map[box.Part]float64 {
	return map[box.Part]float64{box.Front: t, box.Back: t, box.Left: t, box.Right: t, box.Floor: t, box.Roof: t}
}

// front is the frame of a wall in front.
func (handBox) front() solid.Frame {
	return solid.Frame{U: solid.Vec{X: 1}, V: solid.Vec{Z: 1}, W: solid.Vec{Y: -1}}
}
