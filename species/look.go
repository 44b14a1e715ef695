package species

import (
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// look is a plan as the rules see it.
type look struct {
	animal               Preset
	site                 Site
	pieces               []piece
	seams                []box.Seam
	ways                 []way
	doors                []door
	plan                 *box.Plan
	fittings             []box.Fitting
	wholes               []box.Whole          // the made-up parts
	strips               []piece              // as they are cut; without planes and corners
	woods                map[string]foundWood // by material, as far as asked for
	fixings              []Fixing             // of the plan and the site
	fixed                []box.Finding        // what is wrong with them, and with what it hangs by
	width, depth, height float64              // inside
	outside              [3]float64
}

// piece is a part with the plane of its inner face and its extent.
type piece struct {
	box.Piece
	outward  solid.Vec // normal of the inner face, away from the cavity
	inner    float64   // the inner face is outward.x = inner
	min, max solid.Vec // of the mesh
	corners  []solid.Vec
}

// way is an entrance.
type way struct {
	on       *piece
	region   outline.Region // in the panel's frame
	round    bool
	diameter float64
	w, h     float64 // across and up
	lowest   float64 // above the cavity floor, on the inner face
	highest  float64
	at       box.Place // its middle, on the inner face
	// gate is the narrowest opening on the way in, of the wall's own and those of
	// plates on the same axis; plates are the parts that carry those.
	gate   *way
	plates []*piece
}

// survey measures what the rules ask for.
func survey(plan *box.Plan, animal Preset, site Site) (*look, error) {
	l := &look{animal: animal, site: site, seams: plan.Seams(), plan: plan, fittings: plan.Fittings(), wholes: plan.Wholes()}
	for _, q := range plan.Pieces() {
		l.strips = append(l.strips, piece{Piece: q})
	}
	w, d, h := plan.Inside()
	l.width, l.depth, l.height = float64(w), float64(d), float64(h)
	ow, od, oh := plan.Outside()
	l.outside = [3]float64{float64(ow), float64(od), float64(oh)}
	for _, q := range plan.Parts() {
		p := piece{Piece: q, outward: q.Home.W}
		in := -float64(q.Thickness)
		if q.Panel.Face == box.FromInner {
			p.outward, in = q.Home.W.Scale(-1), 0
		}
		p.inner = p.outward.Dot(q.Home.Out(solid.Vec{Z: in}))
		m, err := plan.Mesh(q.Part)
		if err != nil {
			return nil, err
		}
		p.corners = m.Vertices
		for i, v := range m.Vertices {
			if i == 0 {
				p.min, p.max = v, v
			}
			p.min = solid.Vec{X: math.Min(p.min.X, v.X), Y: math.Min(p.min.Y, v.Y), Z: math.Min(p.min.Z, v.Z)}
			p.max = solid.Vec{X: math.Max(p.max.X, v.X), Y: math.Max(p.max.Y, v.Y), Z: math.Max(p.max.Z, v.Z)}
		}
		l.pieces = append(l.pieces, p)
	}
	l.entrances()
	l.doors = doorsOf(l)
	return l, nil
}

// entrances finds the ways in: those of walls, each with the plates on its axis,
// or, of a box without walls, those of any part.
func (l *look) entrances() {
	var others []way
	for i := range l.pieces {
		p := &l.pieces[i]
		for _, op := range p.Panel.Ops {
			if op.Use != box.UseEntrance || len(op.Region) == 0 {
				continue
			}
			if w := p.way(op); isWall(p.Part) {
				l.ways = append(l.ways, w)
			} else {
				others = append(others, w)
			}
		}
	}
	if len(l.ways) == 0 {
		l.ways, others = others, nil
	}
	for i := range l.ways {
		w := &l.ways[i]
		gate := *w
		for k := range others {
			o := &others[k]
			off := vecOf(o.at).Sub(vecOf(w.at))
			across := off.Sub(w.on.outward.Scale(off.Dot(w.on.outward))).Len()
			if math.Abs(o.on.outward.Dot(w.on.outward)) < 0.999 || across > 1 {
				continue
			}
			w.plates = append(w.plates, o.on)
			if math.Min(o.w, o.h) < math.Min(gate.w, gate.h) {
				gate = *o
			}
		}
		w.gate = &gate
	}
}

// way measures an entrance on the inner face of its part.
func (p *piece) way(op box.Op) way {
	w := way{on: p, region: op.Region}
	in := 0.0
	if p.Panel.Face != box.FromInner {
		in = -float64(p.Thickness)
	}
	e := op.Region[0].Extents()
	w.w, w.h = e.Width(), e.Height()
	_, w.diameter, w.round = op.Region[0].IsCircle(1e-6)
	c := e.Centre()
	mid := p.Home.Out(solid.Vec{X: c.X, Y: c.Y, Z: in})
	w.at = box.Place{X: box.MM(mid.X), Y: box.MM(mid.Y), Z: box.MM(mid.Z)}
	w.highest = w.toward(solid.Vec{Z: 1})
	w.lowest = -w.toward(solid.Vec{Z: -1})
	return w
}

// toward is how far the edge of an entrance, on the inner face of its part,
// reaches in a direction of length 1; arcs count exactly.
func (w *way) toward(n solid.Vec) float64 {
	in := 0.0
	if w.on.Panel.Face != box.FromInner {
		in = -float64(w.on.Thickness)
	}
	base := n.Dot(w.on.Home.Out(solid.Vec{Z: in}))
	x, y := n.Dot(w.on.Home.U), n.Dot(w.on.Home.V)
	k := math.Hypot(x, y)
	if k < 1e-9 {
		return base
	}
	return base + float64(k*w.region[0].Support(x/k, y/k))
}

func (l *look) piece(name box.Part) *piece {
	for i := range l.pieces {
		if l.pieces[i].Part == name {
			return &l.pieces[i]
		}
	}
	for i := range l.strips { // a strip stands for the part it belongs to
		if q := &l.strips[i]; q.Part == name && q.Of != "" {
			return l.piece(q.Of)
		}
	}
	return nil
}

func isWall(p box.Part) bool {
	switch p {
	case box.Front, box.Back, box.Left, box.Right:
		return true
	}
	return strings.HasPrefix(string(p), "wall/")
}

func isRoof(p box.Part) bool {
	return p == box.Roof || strings.HasPrefix(string(p), "roof/")
}

// front is the wall in front: front, or wall/1 of a polygon.
func (l *look) front() *piece {
	if p := l.piece(box.Front); p != nil {
		return p
	}
	return l.piece(box.WallN(1))
}

// beside is the least wood between an entrance and the inside of another wall,
// measured along its own wall.
func (l *look) beside(w *way) (least float64, ok bool) {
	least = math.Inf(1)
	for i := range l.pieces {
		q := &l.pieces[i]
		if q == w.on || !isWall(q.Part) {
			continue
		}
		// Along the wall, a distance is that to the plane over the sine of the
		// angle between the two.
		c := q.outward.Dot(w.on.outward)
		s := 1 - float64(c*c)
		if s < 0.01 { // parallel within six degrees: the opposite wall
			continue
		}
		least = math.Min(least, (q.inner-w.toward(q.outward))/math.Sqrt(s))
	}
	return least, !math.IsInf(least, 1)
}

// over is the least height of wood between an entrance and the ceiling.
func (l *look) over(w *way) (least float64, ok bool) {
	least = math.Inf(1)
	for i := range l.pieces {
		q := &l.pieces[i]
		if !isRoof(q.Part) || q.outward.Z < 0.01 {
			continue
		}
		least = math.Min(least, (q.inner-w.toward(q.outward))/q.outward.Z)
	}
	return least, !math.IsInf(least, 1)
}

// use lists the operations of a purpose on parts of a kind.
func (l *look) use(use box.Use, kind func(box.Part) bool) []opOn {
	var out []opOn
	for i := range l.pieces {
		p := &l.pieces[i]
		if !kind(p.Part) {
			continue
		}
		for _, op := range p.Panel.Ops {
			if op.Use == use && len(op.Region) > 0 {
				out = append(out, opOn{op, p})
			}
		}
	}
	return out
}

type opOn struct {
	box.Op
	on *piece
}

// solidWood says that a part is of boards with a grain that matters.
func (p *piece) solidWood() bool { return p.Panel.Grain != [2]float64{} }

// leastThick is the least thickness measured.
func (p *piece) leastThick() float64 {
	b := p.Board
	for _, t := range []box.MM{b.Least, b.Measured, b.Thickness} {
		if t > 0 {
			return float64(t)
		}
	}
	return float64(p.Thickness)
}
