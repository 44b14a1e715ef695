package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// The distance, in mm, within which two parts are equal.
const sameWithin = 1e-3

// mark is a place on a part, with what stands there. Two parts are equal when
// a rotation carries the marks of one onto those of the other.
type mark struct {
	at   solid.Vec
	kind string
	size float64
}

// marks are the corners of a part's base and of all that is cut out of it, in
// its panel frame.
func (p *part) marks(q *Piece) []mark {
	var ms []mark
	seen := places{}
	add := func(v solid.Vec, kind string, size float64) {
		twice := false
		seen.near(v, func(k int) {
			m := &ms[k]
			twice = twice || m.kind == kind && m.at.Sub(v).Len() < 1e-7 && m.size == size
		})
		if !twice {
			seen.add(v, len(ms))
			ms = append(ms, mark{v, kind, size})
		}
	}
	for _, f := range p.convex.Faces {
		for _, v := range f.Loop {
			add(q.Home.In(v), "base", 0)
		}
	}
	for i := range p.cutters {
		for _, f := range p.cutters[i].cell.Faces {
			for _, v := range f.Loop {
				add(q.Home.In(v), "cut", 0)
			}
		}
	}
	for i := range p.feats {
		f := &p.feats[i]
		o := toPanel(f.outline, q.Panel.Face)
		w0, w1 := 0.0, -p.face.t
		if f.depth > 0 {
			w1 = -f.depth
			if f.from != q.Panel.Face {
				w0, w1 = -p.face.t, f.depth-p.face.t
			}
		}
		if c, d, ok := o.IsCircle(1e-9); ok {
			add(solid.Vec{X: c.X, Y: c.Y, Z: w0}, "hole from "+f.source, d)
			add(solid.Vec{X: c.X, Y: c.Y, Z: w1}, "hole to "+f.source, d)
			continue
		}
		for k, v := range o {
			n := o[(k+1)%len(o)]
			add(solid.Vec{X: v.X, Y: v.Y, Z: w0}, "from "+f.source, 0)
			add(solid.Vec{X: v.X, Y: v.Y, Z: w1}, "to "+f.source, 0)
			add(solid.Vec{X: (v.X + n.X) / 2, Y: (v.Y + n.Y) / 2, Z: w0}, "side "+f.source, math.Abs(v.Bulge))
		}
	}
	for _, b := range p.ends {
		add(q.Home.In(b.at), "bore "+b.source, b.dia)
		add(q.Home.In(b.at.Add(b.dir.Scale(b.depth))), "end of "+b.source, b.dia)
	}
	for _, e := range q.Panel.Edges {
		for side, a := range e.Arrises {
			if a.Round != 0 || a.Blunt != 0 {
				w := 0.0
				if side == 1 {
					w = -p.face.t
				}
				add(solid.Vec{X: (e.From.X + e.To.X) / 2, Y: (e.From.Y + e.To.Y) / 2, Z: w}, fmt.Sprintf("arris %s %s", num(float64(a.Round)), num(float64(a.Blunt))), 0)
			}
		}
	}
	for i := range p.engraved {
		l := &p.engraved[i]
		w := 0.0
		if l.from != q.Panel.Face {
			w = -p.face.t
		}
		kind := "line " + l.source + " " + num(l.width)
		for _, t := range l.strokes {
			if q.Panel.Face == FromInner {
				t = t.Transform(outline.MirrorX())
			}
			for k, v := range t {
				add(solid.Vec{X: v.X, Y: v.Y, Z: w}, kind, l.depth)
				if k+1 < len(t) {
					n := t[k+1]
					add(solid.Vec{X: (v.X + n.X) / 2, Y: (v.Y + n.Y) / 2, Z: w}, kind, math.Abs(v.Bulge))
				}
			}
		}
	}
	return ms
}

// places finds what lies near a place among thousands: by cells of 1/4 mm.
type places map[[3]int32][]int

func cellOf(v solid.Vec) [3]int32 {
	return [3]int32{int32(math.Floor(v.X * 4)), int32(math.Floor(v.Y * 4)), int32(math.Floor(v.Z * 4))}
}

func (p places) add(v solid.Vec, k int) {
	c := cellOf(v)
	p[c] = append(p[c], k)
}

// near calls do for all that lies within sameWithin, in the order of the cells,
// and for some that does not.
func (p places) near(v solid.Vec, do func(k int)) {
	d := solid.Vec{X: sameWithin, Y: sameWithin, Z: sameWithin}
	lo, hi := cellOf(v.Sub(d)), cellOf(v.Add(d))
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for _, k := range p[[3]int32{x, y, z}] {
					do(k)
				}
			}
		}
	}
}

// turn is one of the ways in which a slab can be laid on another.
type turn struct {
	m      [4]float64 // u' = m0 u + m1 v, v' = m2 u + m3 v
	flip   bool       // turned over: w is reversed
	mirror bool       // no rotation
}

// turns lists the sixteen symmetries of a square slab, rotations first.
func turns() []turn {
	var ts []turn
	for _, mirror := range []bool{false, true} {
		for _, m := range [][4]float64{{1, 0, 0, 1}, {-1, 0, 0, -1}, {-1, 0, 0, 1}, {1, 0, 0, -1}, {0, -1, 1, 0}, {0, 1, -1, 0}, {0, 1, 1, 0}, {0, -1, -1, 0}} {
			det := float64(m[0]*m[3]) - float64(m[1]*m[2])
			ts = append(ts, turn{m, (det < 0) != mirror, mirror})
		}
	}
	return ts
}

// apply lays a place of the first part onto the second: about the middle of
// its silhouette a, onto the middle b, thickness t.
func (t turn) apply(v solid.Vec, a, b outline.Point, thick float64) solid.Vec {
	x, y := v.X-a.X, v.Y-a.Y
	z := v.Z
	if t.flip {
		z = -thick - z
	}
	return solid.Vec{X: b.X + float64(t.m[0]*x) + float64(t.m[1]*y), Y: b.Y + float64(t.m[2]*x) + float64(t.m[3]*y), Z: z}
}

// group numbers the parts in plan order; equal parts share a number and the
// panel of the first.
func (s *shell) group(p *Plan, parts []*part) {
	type first struct {
		piece int
		marks []mark
	}
	var fs []first
	for i := range p.pieces {
		q := &p.pieces[i]
		ms := parts[i].marks(q)
		found := false
		mirror := 0
		for g := range fs {
			a := &p.pieces[fs[g].piece]
			t, ok := s.lay(a, q, fs[g].marks, ms)
			if !ok {
				continue
			}
			if t.mirror {
				if mirror == 0 && p.groups[g].Mirror == 0 {
					mirror = g + 1
				}
				continue
			}
			p.groups[g].Parts = append(p.groups[g].Parts, q.Part)
			takePanel(a, q, t)
			found = true
			break
		}
		if found {
			continue
		}
		fs = append(fs, first{i, ms})
		p.groups = append(p.groups, Group{Number: len(fs), Parts: []Part{q.Part}, Mirror: mirror})
		if mirror > 0 {
			p.groups[mirror-1].Mirror = len(fs)
		}
	}
}

// lay finds how piece a can be laid onto b, a rotation if there is one.
func (s *shell) lay(a, b *Piece, ma, mb []mark) (turn, bool) {
	if len(ma) != len(mb) || a.Thickness != b.Thickness || a.Board != b.Board ||
		math.Abs(a.Volume-b.Volume) > sameWithin*(1+float64(a.Volume*1e-6))*100 {
		return turn{}, false
	}
	ca, cb := a.Panel.Silhouette.Extents().Centre(), b.Panel.Silhouette.Extents().Centre()
	where := places{}
	for k := range mb {
		where.add(mb[k].at, k)
	}
	for _, t := range turns() {
		g := a.Panel.Grain
		gx, gy := float64(t.m[0]*g[0])+float64(t.m[1]*g[1]), float64(t.m[2]*g[0])+float64(t.m[3]*g[1])
		if math.Abs(float64(gx*b.Panel.Grain[0])+float64(gy*b.Panel.Grain[1])) < 0.5 && g != [2]float64{} {
			continue
		}
		if t.carries(ma, mb, where, ca, cb, float64(a.Thickness)) {
			return t, true
		}
	}
	return turn{}, false
}

func (t turn) carries(ma, mb []mark, where places, ca, cb outline.Point, thick float64) bool {
	used := make([]bool, len(mb))
	for _, m := range ma {
		v, hit := t.apply(m.at, ca, cb, thick), false
		where.near(v, func(k int) {
			n := &mb[k]
			if hit || used[k] || math.Abs(n.size-m.size) > sameWithin || n.at.Sub(v).Len() > sameWithin {
				return
			}
			if n.kind != m.kind && !(t.flip && (flipped(n.kind) == m.kind || sideways(n.kind, m.kind))) {
				return
			}
			used[k], hit = true, true
		})
		if !hit {
			return false
		}
	}
	return true
}

// flipped is the kind of a mark seen from the other face.
func flipped(k string) string {
	for _, p := range [][2]string{{"hole from ", "hole to "}, {"hole to ", "hole from "}, {"from ", "to "}, {"to ", "from "}} {
		if len(k) > len(p[0]) && k[:len(p[0])] == p[0] {
			return p[1] + k[len(p[0]):]
		}
	}
	return k
}

func sideways(a, b string) bool { return a == b && len(a) > 5 && a[:5] == "side " }

// takePanel gives b the panel of a, laid by t, so that equal parts are cut
// from one drawing. The names along its edges stay its own.
func takePanel(a, b *Piece, t turn) {
	ca, cb := a.Panel.Silhouette.Extents().Centre(), b.Panel.Silhouette.Extents().Centre()
	thick := float64(a.Thickness)
	at := func(x, y, z float64) solid.Vec {
		return b.Home.Out(t.apply(solid.Vec{X: x, Y: y, Z: z}, ca, cb, thick))
	}
	own := b.Panel.Edges
	o := at(0, 0, 0)
	home := solid.Frame{O: o, U: at(1, 0, 0).Sub(o).Unit(), V: at(0, 1, 0).Sub(o).Unit(), W: at(0, 0, 1).Sub(o).Unit()}
	pn := a.Panel
	pn.Face = b.Panel.Face
	if t.flip {
		pn.Face = FromOuter + FromInner - b.Panel.Face
	}
	pn.Edges = append([]PanelEdge(nil), a.Panel.Edges...)
	for k := range pn.Edges {
		e := &pn.Edges[k]
		mx, my := (e.From.X+e.To.X)/2, (e.From.Y+e.To.Y)/2
		v := t.apply(solid.Vec{X: mx, Y: my}, ca, cb, thick)
		best, bd := -1, math.Inf(1)
		for m, f := range own {
			if d := math.Hypot((f.From.X+f.To.X)/2-v.X, (f.From.Y+f.To.Y)/2-v.Y); d < bd {
				best, bd = m, d
			}
		}
		if best >= 0 {
			e.Neighbour, e.Joint, e.Adds, e.Why = own[best].Neighbour, own[best].Joint, own[best].Adds, own[best].Why
		}
	}
	pn.Ops = append([]Op(nil), a.Panel.Ops...)
	ownOps := b.Panel.Ops
	for k := range pn.Ops {
		o := &pn.Ops[k]
		if o.Guest == "" { // features of equal parts have equal names
			continue
		}
		c := o.Region.Centroid()
		v := t.apply(solid.Vec{X: c.X, Y: c.Y}, ca, cb, thick)
		best, bd := -1, math.Inf(1)
		for m := range ownOps {
			if f := &ownOps[m]; f.Kind == o.Kind {
				c := f.Region.Centroid()
				if d := math.Hypot(c.X-v.X, c.Y-v.Y); d < bd {
					best, bd = m, d
				}
			}
		}
		if best >= 0 {
			o.Guest, o.Source = ownOps[best].Guest, ownOps[best].Source
		}
	}
	b.Panel, b.Home, b.Pose = pn, home, home
}
