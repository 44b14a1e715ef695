package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

var butt = joints.Butt{}

// plainJoint reports whether a joint keeps nothing from opening.
func plainJoint(j joint) bool {
	switch j.(type) {
	case joints.Butt, joints.Mitre:
		return true
	}
	return false
}

// slideJoint is the groove in which a part slides.
func (s *shell) slideJoint(o Sliding) joint {
	i := s.shellFace(o.Part)
	play := mmOr(o.Play, slidePlay)
	h := joints.Housing{Depth: o.Depth, Play: MM(play), Dry: true}
	if w := s.wayOf(i); w != nil && s.faces[i].frame.W != (solid.Vec{}) {
		h.Swell = MM(s.swelling(i, w.sides[1]) / 2)
	}
	return h
}

// endSpan is the interval along v in which an end of the part lies at the middle
// of its thickness.
func (p *part) endSpan(j int) (lo, hi float64, ok bool) {
	lo, hi = math.Inf(1), math.Inf(-1)
	mid := p.face.t / 2
	for k := range p.convex.Faces {
		f := &p.convex.Faces[k]
		if p.from[f.ID] != j {
			continue
		}
		for m := range f.Loop {
			a, b := p.face.frame.In(f.Loop[m]), p.face.frame.In(f.Loop[(m+1)%len(f.Loop)])
			if (a.Z-mid)*(b.Z-mid) > 0 || a.Z == b.Z {
				continue
			}
			v := a.Y + float64((b.Y-a.Y)*((mid-a.Z)/(b.Z-a.Z)))
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
	}
	return lo, hi, hi > lo
}

// pivotHeight is where the nails stand along v.
func (w *way) pivotHeight(o Pivoted, p *part) (v, lo, hi float64, ok bool) {
	lo0, hi0, ok0 := p.endSpan(w.sides[0])
	lo1, hi1, ok1 := p.endSpan(w.sides[1])
	lo, hi = math.Max(lo0, lo1), math.Min(hi0, hi1)
	return hi - mmOr(o.Below, 25), lo, hi, ok0 && ok1 && hi > lo
}

// pivotAxis is the line of the two nails.
func (s *shell) pivotAxis(w *way, o Pivoted, p *part) {
	if w.face >= s.walls {
		return
	}
	v, lo, hi, ok := w.pivotHeight(o, p)
	if !ok {
		s.c.addf(w.path+".Part", "no-ends", "%s does not end at both walls beside it, at one height: there is nothing to drive the nails into", w.part)
		return
	}
	edge := 2 * mmOr(o.Diameter, 3)
	if below := hi - v; !(below >= edge && below <= hi-lo-edge) {
		s.c.add(Problem{Path: w.path + ".Below", Code: "range", Got: num(below), Lo: edge, Hi: hi - lo - edge, Unit: "mm",
			Why: fmt.Sprintf("the nails must stand in the ends of %s, twice their diameter from its edges", w.part)})
		return
	}
	f := p.face.frame
	o3 := f.Out(solid.Vec{Y: v, Z: p.face.t / 2})
	for k, j := range w.sides {
		if a := math.Abs(s.faces[j].in.N.Dot(f.U)); a < 1-1e-9 {
			s.c.add(Problem{Path: w.path + ".Part", Code: "not-square", Got: num(math.Acos(a) * 180 / math.Pi), Lo: 0, Hi: 1e-3, Unit: "deg",
				Why: fmt.Sprintf("%s is not square to the axis: nails through it would not be in line", s.faces[j].part), Try: "box.Hinged"})
			return
		}
		w.pivot[k] = o3.Add(f.U.Scale((s.faces[j].in.D - s.faces[j].in.N.Dot(o3)) * s.faces[j].in.N.Dot(f.U)))
	}
	w.axis = opensOutward(motion{o: o3, d: f.U, turn: true}, p)
}

// headroom is what the top of a pivoted part needs to turn under the roof. A
// corner at the distance r from the axis rises to c r over the level of the axis
// under a roof plane, c being how square the plane is to the turn, if it passes
// the place right under the plane; the need is that height less the one at which
// the top stands. The pivot goes down with the top, so that the radii do not
// depend on the headroom.
func (s *shell) headroom(w *way, o Pivoted, r order, lim [][][]solid.Plane) {
	if w.face >= s.walls {
		return
	}
	p := &part{face: &s.faces[w.face], at: w.face}
	p.add(p.face.in.Flip(), fromInner)
	p.add(p.face.in.Shift(p.face.t), fromOuter)
	for j := range s.faces {
		for _, h := range lim[w.face][j] {
			if s.faces[j].kind != roofFace {
				h = h.Shift(-w.room[j])
			}
			p.add(h, j)
		}
	}
	if !p.finish() {
		return
	}
	v, _, _, ok := w.pivotHeight(o, p)
	if !ok {
		return
	}
	m := opensOutward(motion{o: p.face.frame.Out(solid.Vec{Y: v, Z: p.face.t / 2}), d: p.face.frame.U, turn: true}, p)
	for j := range s.faces {
		if w.room[j] == 0 || s.faces[j].kind != roofFace {
			continue
		}
		need := 0.0
		for k := range p.convex.Faces {
			f := &p.convex.Faces[k]
			if p.from[f.ID] != j {
				continue
			}
			for _, q := range f.Loop {
				t := m.along(f.N, q)
				need = math.Max(need, t.most(m, 0, w.most)-t.at(m, 0))
			}
		}
		w.needs = math.Max(w.needs, need)
		if o.Headroom == 0 {
			w.room[j] = math.Max(w.room[j], math.Ceil(float64(need*10)+5)/10)
		}
	}
}
