package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

// strip is what makes a part one of the pieces of a made-up part.
type strip struct {
	whole  *whole
	number int  // from 0
	tongue bool // the loose tongue after strip number
}

// whole is a made-up part with its pieces.
type whole struct {
	*courses
	part    *part
	path    string
	strips  []*part
	tongues []*part
	seams   []*edge // between strips; number k is between strips k and k+1
}

// acrossAxis is the direction across the grain in which strips are counted: to
// the right, or up.
func (p *part) acrossAxis() solid.Vec {
	if p.grain(FromOuter)[0] != 0 {
		return p.face.frame.V
	}
	return p.face.frame.U
}

// divide makes up what has to be: it puts strips in the places of parts.
func (s *shell) divide(parts []*part) []*part {
	if len(s.d.MadeUp) == 0 {
		return parts
	}
	var out []*part
	for _, p := range parts {
		w := s.makeUp(p)
		if w == nil {
			out = append(out, p)
			continue
		}
		s.made = append(s.made, w)
		out = append(append(out, w.strips...), w.tongues...)
	}
	return out
}

// makeUp divides one part; nil where it stays whole.
func (s *shell) makeUp(p *part) *whole {
	if p.at < 0 {
		return nil
	}
	m, path := s.madeUpOf(p.face)
	if m == nil {
		return nil
	}
	c := s.courses(m, path, p)
	if c == nil {
		return nil
	}
	w := &whole{courses: c, part: p, path: path}
	p.whole = w
	n := len(c.los)
	for k := range n - 1 {
		w.seams = append(w.seams, w.seam(k))
	}
	for k := range n {
		if q := w.strip(k); q.finish() {
			w.strips = append(w.strips, q)
		} else {
			s.c.addf(path, "no-part", "nothing is left of strip %d of %s: boards of another width divide it otherwise", k+1, p.face.part)
		}
	}
	if len(w.strips) < n {
		return w
	}
	for k, q := range w.strips {
		w.fill(q)
		w.cutEdges(q, k)
		q.dropIdle()
	}
	if c.prof.tongue != nil {
		for k := range n - 1 {
			if q := w.looseTongue(k); q.finish() {
				w.fill(q)
				w.tongues = append(w.tongues, q)
			}
		}
	}
	return w
}

// at is the plane across the grain at the place x; what is before it is inside.
func (w *whole) at(x float64) solid.Plane {
	d := w.part.acrossAxis()
	return solid.NewPlane(d, d.Dot(w.part.face.frame.O)+x)
}

// seam is the edge between strips k and k+1, along the inner face.
func (w *whole) seam(k int) *edge {
	f := w.part.face
	d := w.part.acrossAxis()
	along := d.Cross(f.in.N)
	e := &edge{over: w.part.at, under: w.part.at, dir: along.Unit(), theta: 180, path: w.path, ok: true,
		sec: joints.Section{Name: w.joint.words(), Play: MM(w.prof.play)}}
	if w.prof.glued {
		e.sec.Holds = []joints.Hold{{Kind: "glue"}}
	}
	e.sec.Least, e.sec.Greatest = MM(w.prof.gap), MM(w.prof.gap)
	// As far as the part shows there on the inner face.
	lo, hi := math.Inf(1), math.Inf(-1)
	if g, ok := w.part.convex.Clip(w.at(w.his[k]), -50).FaceOf(-50); ok {
		low, _ := solid.Convex{Faces: []solid.Face{g}}.Reach(f.in.N)
		for _, v := range g.Loop {
			if f.in.N.Dot(v) > low+1e-6 {
				continue
			}
			if t := e.dir.Dot(v); t < lo {
				lo, e.a = t, v
			}
			if t := e.dir.Dot(v); t > hi {
				hi, e.b = t, v
			}
		}
	}
	if startsLater(e.a, e.b) {
		e.a, e.b = e.b, e.a
	}
	return e
}

// copyOf is a piece of the part with a name and a base of its own: that of the
// part, cut off across the grain.
func (w *whole) copyOf(name Part, lo, hi float64) *part {
	f := *w.part.face
	f.part = name
	f.board.Width = MM(w.board)
	q := &part{face: &f, at: w.part.at, path: w.part.path}
	for i, h := range w.part.base {
		q.add(h, w.part.from[i])
	}
	if !math.IsInf(lo, -1) {
		q.add(w.at(lo).Flip(), fromLow)
	}
	if !math.IsInf(hi, 1) {
		q.add(w.at(hi), fromHigh)
	}
	return q
}

// span is the reach of strip k in the layer from w = from to w = to; infinite
// where it is the part's own end.
func (w *whole) span(k int, from, to float64) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	end, begin := w.prof.reach(from, to)
	if k > 0 {
		lo = w.his[k-1] + begin
	}
	if k < len(w.los)-1 {
		hi = w.his[k] + end
	}
	return lo, hi
}

// strip is strip k before anything is cut into it. Its frame stands in the
// middle of its own lower edge.
func (w *whole) strip(k int) *part {
	p := w.part
	lo, hi := w.span(k, math.Inf(-1), math.Inf(1))
	q := w.copyOf(StripN(p.face.part, k+1), lo, hi)
	q.strip = &strip{whole: w, number: k}
	f := q.face
	if p.grain(FromOuter)[0] != 0 {
		f.frame.O = f.frame.O.Add(f.frame.V.Scale(w.los[k]))
	} else {
		f.frame.O = f.frame.O.Add(f.frame.U.Scale((w.los[k] + w.his[k]) / 2))
	}
	// The face of the cavity that it covers.
	lo, hi = w.span(k, 0, 0.1)
	c := solid.Convex{Faces: []solid.Face{{N: f.in.N, Loop: f.loop, Next: make([]int, len(f.loop))}}}
	f.loop = clipLoop(c.Faces[0].Loop, w, lo, hi)
	return q
}

// clipLoop is what of a flat loop lies between two places across the grain.
func clipLoop(loop []solid.Vec, w *whole, lo, hi float64) []solid.Vec {
	keep := func(loop []solid.Vec, h solid.Plane) []solid.Vec {
		var out []solid.Vec
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			x, y := h.At(a), h.At(b)
			if x <= 0 {
				out = append(out, a)
			}
			if x < 0 && y > 0 || x > 0 && y < 0 {
				out = append(out, a.Lerp(b, x/(x-y)))
			}
		}
		return out
	}
	if !math.IsInf(lo, -1) {
		loop = keep(loop, w.at(lo).Flip())
	}
	if !math.IsInf(hi, 1) {
		loop = keep(loop, w.at(hi))
	}
	return loop
}

// looseTongue is the one between strips k and k+1.
func (w *whole) looseTongue(k int) *part {
	x := w.prof.tongue
	p := w.part
	q := w.copyOf(TongueN(p.face.part, k+1), w.his[k]-x.width/2, w.his[k]+x.width/2)
	q.strip = &strip{whole: w, number: k, tongue: true}
	q.at = -1
	f := q.face
	f.kind, f.loop = innerFace, nil
	f.grain = GrainUp
	if p.grain(FromOuter)[0] != 0 {
		f.grain = GrainAcross
	}
	f.in = f.in.Shift(x.from)
	f.t, f.least = x.t, x.t
	f.board = Board{Thickness: MM(x.t), Material: p.face.board.Material, Density: p.face.board.Density}
	if x.board != (Board{}) {
		f.board, f.least = x.board, x.board.least()
		if x.board.Grain != GrainAuto {
			f.grain = x.board.Grain
		}
	}
	f.frame.O = f.frame.O.Add(f.frame.W.Scale(x.from))
	for i, from := range q.from {
		switch from {
		case fromInner:
			q.base[i] = f.in.Flip()
		case fromOuter:
			q.base[i] = f.in.Shift(x.t)
		}
	}
	return q
}

// cutEdges cuts the joints with the neighbouring strips.
func (w *whole) cutEdges(q *part, k int) {
	f := w.part.face
	name := func(i int) *face { return &face{part: StripN(f.part, i+1)} }
	lo, hi := w.span(k, math.Inf(-1), math.Inf(1))
	bs := w.prof.bands
	for i := 0; i < len(bs); {
		j := i
		for j < len(bs) && bs[j].end == bs[i].end {
			j++
		}
		if x := w.his[k] + bs[i].end; k < len(w.los)-1 && x < hi {
			hs := append(w.layer(bs[i].from, bs[j-1].to), w.at(x).Flip())
			work := w.prof.work
			q.cut(hs, cutter{edge: w.seams[k], zone: joints.Zone{Work: work}, guest: name(k + 1), strip: true})
		}
		i = j
	}
	for i := 0; i < len(bs) && k > 0; {
		j := i
		for j < len(bs) && bs[j].begin == bs[i].begin {
			j++
		}
		if x := w.his[k-1] + bs[i].begin; x > lo {
			hs := append(w.layer(bs[i].from, bs[j-1].to), w.at(x))
			work := joints.Housed
			if bs[i].from == 0 || bs[j-1].to == f.t {
				work = joints.Rebating
			}
			q.cut(hs, cutter{edge: w.seams[k-1], zone: joints.Zone{Work: work}, guest: name(k - 1), strip: true})
		}
		i = j
	}
}

// dropIdle leaves out the joints of the part that lie wholly where the edge of the
// strip is cut away.
func (p *part) dropIdle() {
	var kept []cutter
	for _, c := range p.cutters {
		left := []solid.Convex{c.cell}
		for i := range p.cutters {
			if d := &p.cutters[i]; d.strip && !c.strip {
				var next []solid.Convex
				for _, x := range left {
					_, rest := solid.Split(x, d.planes)
					next = append(next, rest...)
				}
				left = next
			}
		}
		if solid.VolumeOf(left) > 1e-6 {
			kept = append(kept, c)
		}
	}
	p.cutters = kept
}

// layer is the part's slab from w = from to w = to, open where that is its face.
func (w *whole) layer(from, to float64) []solid.Plane {
	f := w.part.face
	var hs []solid.Plane
	if from > 0 {
		hs = append(hs, f.in.Shift(from).Flip())
	}
	if to < f.t {
		hs = append(hs, f.in.Shift(to))
	}
	return hs
}

// zones are what the joints between strips leave open on purpose.
func (w *whole) zones() []zone {
	f := w.part.face
	var out []zone
	for k := range w.seams {
		name := fmt.Sprintf("%s/%s", StripN(f.part, k+1), StripN(f.part, k+2))
		for _, b := range w.prof.bands {
			if !(b.begin > b.end) {
				continue
			}
			hs := append([]solid.Plane(nil), w.part.base...)
			hs = append(hs, w.layer(b.from, b.to)...)
			out = append(out, zone{name, "play", append(hs, w.at(w.his[k]+b.begin), w.at(w.his[k]+b.end).Flip())})
		}
	}
	return out
}

// stripEdge says what the edge between two strips is.
func (p *part) stripEdge(from int, e *PanelEdge) {
	w, k := p.strip.whole, p.strip.number
	e.Joint = w.joint.words()
	switch {
	case p.strip.tongue:
		if from == fromHigh {
			k++
		}
		e.Neighbour, e.Why = StripN(w.part.face.part, k+1), "stands in its groove"
	case from == fromLow:
		e.Neighbour, e.Why = StripN(w.part.face.part, k), w.prof.low
	default:
		e.Neighbour, e.Why = StripN(w.part.face.part, k+2), w.prof.high
		e.Adds = MM(w.prof.most)
	}
}
