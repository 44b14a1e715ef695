package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
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

// fill gives a piece its share of the joints, openings and marks of the part.
func (w *whole) fill(q *part) {
	p := w.part
	for i := range p.cutters {
		c := p.cutters[i]
		hs := c.planes
		c.planes = nil
		q.cut(hs, c)
	}
	o := q.face.frame.In(p.face.frame.O)
	for i := range p.feats {
		w.share(q, p.feats[i], o)
	}
	if q.strip.tongue { // inside the part: nothing is marked on it
		return
	}
	for i := range p.engraved {
		l := p.engraved[i]
		from, to := 0.0, 0.1
		if l.from == FromOuter {
			from, to = p.face.t-0.1, p.face.t
		}
		lo, hi := w.span(q.strip.number, from, to)
		var kept []outline.Path
		r := outline.Region{w.band(lo, hi)}
		for _, t := range l.strokes {
			for _, x := range t.Within(r) {
				kept = append(kept, x.Transform(outline.Shift(o.X, o.Y)))
			}
		}
		if l.strokes = kept; len(kept) > 0 {
			q.engraved = append(q.engraved, l)
		}
	}
}

// band is the strip of the plane between two places across the grain, in the
// feature frame of the part.
func (w *whole) band(lo, hi float64) outline.Contour {
	const far = 4 * maxLength
	lo, hi = math.Max(lo, -far), math.Min(hi, far)
	if w.part.grain(FromOuter)[0] != 0 {
		return outline.Rectangle(-far, lo, far, hi)
	}
	return outline.Rectangle(lo, -far, hi, far)
}

// share gives a piece its part of a feature; o is where the part's own origin
// lies in the frame of the piece.
func (w *whole) share(q *part, f feat, o solid.Vec) {
	t := w.part.face.t
	from, to := 0.0, t // of the feature, over the inner plane
	if f.depth > 0 && f.from == FromInner {
		to = f.depth
	} else if f.depth > 0 {
		from = t - f.depth
	}
	lo, hi := w.span(q.strip.number, from, to)
	if q.strip.tongue {
		x := w.prof.tongue
		lo, hi = w.his[q.strip.number]-x.width/2, w.his[q.strip.number]+x.width/2
		if from >= x.from+x.t || to <= x.from {
			return
		}
		switch {
		case from <= x.from && to >= x.from+x.t:
			f.depth = 0
		case f.from == FromInner:
			f.depth -= x.from
		default:
			f.depth -= t - x.from - x.t
		}
	}
	across := func(v outline.Point) float64 { return v.X }
	n := outline.Point{X: 1}
	if w.part.grain(FromOuter)[0] != 0 {
		across = func(v outline.Point) float64 { return v.Y }
		n = outline.Point{Y: 1}
	}
	e := f.outline.Extents()
	a, b := across(e.Min), across(e.Max)
	if b <= lo || a >= hi {
		return
	}
	pieces := outline.Region{f.outline}
	if a < lo || b > hi {
		f.split = true
		f.inLine = f.inLine || f.depth == 0
		if a < lo {
			pieces = pieces.Clip(outline.HalfPlane{A: -n.X, B: -n.Y, C: -lo})
		}
		if b > hi {
			pieces = pieces.Clip(outline.HalfPlane{A: n.X, B: n.Y, C: hi})
		}
	}
	for _, c := range pieces {
		g := f
		g.shown = settled(c.Transform(outline.Shift(o.X, o.Y)))
		if f.split {
			c = outward(c, n, lo, hi)
		}
		g.outline = settled(c.Transform(outline.Shift(o.X, o.Y)))
		q.feats = append(q.feats, g)
	}
}

// outward moves the straight sides of a contour that lie on the ends of a strip
// beyond them, so that the cut and the strip have no face in common.
func outward(c outline.Contour, n outline.Point, lo, hi float64) outline.Contour {
	const beyond = 1.0
	var out outline.Contour
	for i, v := range c {
		next := c[(i+1)%len(c)]
		x, y := float64(n.X*v.X)+float64(n.Y*v.Y), float64(n.X*next.X)+float64(n.Y*next.Y)
		out = append(out, v)
		by := 0.0
		switch {
		case v.Bulge != 0:
		case math.Abs(x-lo) < 1e-6 && math.Abs(y-lo) < 1e-6:
			by = -beyond
		case math.Abs(x-hi) < 1e-6 && math.Abs(y-hi) < 1e-6:
			by = beyond
		}
		if by != 0 {
			out = append(out,
				outline.Vertex{X: v.X + float64(by*n.X), Y: v.Y + float64(by*n.Y)},
				outline.Vertex{X: next.X + float64(by*n.X), Y: next.Y + float64(by*n.Y)})
		}
	}
	return out
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

// showing is what of the outline of a strip shows on its outer face: tongues do
// not.
func (x *strip) showing(p *part, top outline.Region) outline.Region {
	if x.tongue {
		return top
	}
	w := x.whole
	o := p.face.frame.In(w.part.face.frame.O)
	t := w.part.face.t
	lo, hi := w.span(x.number, t-0.1, t)
	across, n := o.X, outline.Point{X: 1}
	if w.part.grain(FromOuter)[0] != 0 {
		across, n = o.Y, outline.Point{Y: 1}
	}
	if !math.IsInf(lo, 0) {
		top = top.Clip(outline.HalfPlane{A: -n.X, B: -n.Y, C: -lo - across})
	}
	if !math.IsInf(hi, 0) {
		top = top.Clip(outline.HalfPlane{A: n.X, B: n.Y, C: hi + across})
	}
	return top
}
