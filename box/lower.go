package box

import (
	"fmt"
	"math"
	"strings"

	"holt.example/box/outline"
	"holt.example/box/solid"
)

// feat is a feature brought down to an outline on a part, in the feature frame
// of its face.
type feat struct {
	path    string
	source  string
	use     Use
	outline outline.Contour
	depth   float64 // 0 is through
	from    CutSide
	cavity  bool            // it must open into the cavity
	edge    bool            // it may meet joints and edges
	inLine  bool            // it meets the outline and has become part of it
	shaped  bool            // a shaped edge: no other part may touch there
	split   bool            // it goes on in the next strip; outline runs out over the edge
	shown   outline.Contour // of a split one: what lies in its strip
	tool    Tool
	fit     bool // a fitting of an opening: those of one opening may meet
	with    Part // the joint with this part is no hindrance
	open    bool // a pocket that is open to the edge
}

// form is a feature that brings itself down to outlines and lines on parts.
type form interface {
	Feature
	// on lists the parts that it names, by the field that names them.
	on(s *shell) []onPart
	// lower looks at its numbers and puts it onto the parts in by, which has no
	// parts yet when the literal alone is looked at.
	lower(s *shell, path string, by map[Part]*part)
}

// typed adds the type's name to the path of a value of several types.
func typed(path string, f any) string {
	t := fmt.Sprintf("%T", f)
	return path + t[strings.LastIndexByte(t, '.'):]
}

// lowerFeatures brings every feature down to outlines on parts.
func (s *shell) lowerFeatures(parts []*part) {
	by := map[Part]*part{}
	for _, p := range parts {
		by[p.face.part] = p
	}
	put := func(on Part, f feat) {
		if p := by[on]; p != nil {
			p.feats = append(p.feats, f)
		}
	}
	settle(parts) // those of inner, outer and free parts
	for i, f := range s.d.Features {
		path := fmt.Sprintf("Features[%d]", i)
		switch f := f.(type) {
		case Entrance:
			s.entrance(path+".Entrance", f, by, put)
		case Vents:
			s.vents(path+".Vents", f, by, put)
		case Drains:
			s.drains(path+".Drains", f, by, put)
		case CornerCuts:
			s.cornerCuts(path+".CornerCuts", f, by, put)
		case form:
			if _, last := f.(PartMarks); !last && !isPointer(f) {
				f.lower(s, typed(path, f), by)
			}
		}
		settle(parts) // before the next one looks at them
	}
	for i, f := range s.d.Features { // these look for a place that is left
		if f, ok := f.(PartMarks); ok {
			f.lower(s, typed(fmt.Sprintf("Features[%d]", i), f), by)
		}
	}
}

func (s *shell) entrance(path string, f Entrance, by map[Part]*part, put func(Part, feat)) {
	on := s.frontOr(f.On)
	o, ok := shapeOutline(s.c, path+".Shape", f.Shape)
	ok = s.c.atLeast0(path+".Above", f.Above, "height of the opening's lowest point over the cavity floor") && ok
	ok = s.c.offset(path+".Right", f.Right, "place of the opening, from the middle of the wall") && ok
	p := by[on]
	if !ok || p == nil {
		return
	}
	_, cl := sincos(p.face.lean)
	o = o.Transform(outline.Shift(float64(f.Right), float64(f.Above)/cl-o.Extents().Min.Y))
	put(on, feat{path: path, source: "entrance", use: UseEntrance, outline: o, cavity: true})
}

func (s *shell) vents(path string, f Vents, by map[Part]*part, put func(Part, feat)) {
	dia, count := float64(f.Diameter), f.Count
	if dia == 0 {
		dia = 8
	}
	if count == 0 {
		count = 2
	}
	below := float64(f.Below)
	ok := s.c.within(path+".Diameter", dia, minLength, maxLength, "mm", "diameter of a vent")
	ok = s.c.within(path+".Count", float64(count), 1, 100, "", "vents in a wall") && ok
	ok = s.c.within(path+".Below", below, 0, maxLength, "mm", "height of a vent under the top of its wall") && ok
	ok = s.c.within(path+".Spacing", float64(f.Spacing), 0, maxLength, "mm", "distance between vents") && ok
	if !ok {
		return
	}
	on := f.On
	if on == nil {
		on = []Part{s.faces[s.walls-1].part, s.faces[1].part}
	}
	for _, name := range on {
		p := by[name]
		if p == nil {
			continue
		}
		loop := flat(p.face.loop, p.face.frame)
		top, lo, hi := math.Inf(1), math.Inf(1), math.Inf(-1)
		for _, q := range loop {
			if q.Y > 1e-6 {
				top = math.Min(top, q.Y)
			}
			lo, hi = math.Min(lo, q.X), math.Max(hi, q.X)
		}
		step := float64(f.Spacing)
		if step == 0 {
			step = (hi - lo) / float64(count+1)
		}
		down := below
		if down == 0 { // clear of the lower arris of a bevelled top
			down = 2*dia + s.topDrop(p)
		}
		for k := 0; k < count; k++ {
			u := (lo+hi)/2 + float64(step*(float64(k)-float64(count-1)/2))
			c := outline.Circle(outline.Point{X: u, Y: top - down}, dia)
			put(name, feat{path: path, source: "vent", use: UseVent, outline: c, cavity: true})
		}
	}
}

func (s *shell) drains(path string, f Drains, by map[Part]*part, put func(Part, feat)) {
	dia, inset := float64(f.Diameter), float64(f.Inset)
	if dia == 0 {
		dia = 8
	}
	if inset == 0 {
		inset = 2 * dia
	}
	ok := s.c.within(path+".Diameter", dia, minLength, maxLength, "mm", "diameter of a drain")
	ok = s.c.within(path+".Inset", inset, 0, maxLength, "mm", "distance of a drain from the walls") && ok
	p := by[Floor]
	if p == nil || !ok {
		return
	}
	loop := flat(p.face.loop, p.face.frame)
	n := len(loop)
	if !s.c.within(path+".Count", float64(f.Count), 0, float64(n), "", "drains; 0 is one in each corner, 1 is in the middle") {
		return
	}
	var at []outline.Point
	if f.Count == 1 {
		at = append(at, outline.Polygon(loop...).Centroid())
	} else {
		count := f.Count
		if count == 0 {
			count = n
		}
		for k := 0; k < count; k++ {
			i := k * n / count
			at = append(at, insetCorner(loop[(i+n-1)%n], loop[i], loop[(i+1)%n], inset))
		}
	}
	for _, q := range at {
		put(Floor, feat{path: path, source: "drain", use: UseDrain, outline: outline.Circle(q, dia), edge: true})
	}
}

// insetCorner is the point at the distance d inside both sides of a corner.
func insetCorner(a, b, c outline.Point, d float64) outline.Point {
	unit := func(p, q outline.Point) outline.Point {
		l := math.Hypot(q.X-p.X, q.Y-p.Y)
		return outline.Point{X: (q.X - p.X) / l, Y: (q.Y - p.Y) / l}
	}
	u, v := unit(a, b), unit(b, c)
	k := d / (1 + float64(u.X*v.X) + float64(u.Y*v.Y))
	return outline.Point{X: b.X + float64(k*(-u.Y-v.Y)), Y: b.Y + float64(k*(u.X+v.X))}
}

// cornerCuts takes the corners off the floor: a chamfer that crosses the edges
// of the cavity floor at Size from each of its corners.
func (s *shell) cornerCuts(path string, f CornerCuts, by map[Part]*part, put func(Part, feat)) {
	size := float64(f.Size)
	if size == 0 {
		size = 8
	}
	p := by[Floor]
	if p == nil || !s.c.within(path+".Size", size, minLength, maxLength, "mm", "size of a corner cut") {
		return
	}
	loop := flat(p.face.loop, p.face.frame)
	n := len(loop)
	beyond := 1.0 // how far to cut past the cavity: over the floor's own edges
	if top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter)); len(top) > 0 && len(bottom) > 0 {
		for _, r := range []outline.Region{top, bottom} {
			if d := inside(outline.Polygon(loop...), r[0]); d < 0 {
				beyond = math.Max(beyond, 1-d)
			}
		}
	}
	for i, c := range loop {
		a, b := loop[(i+n-1)%n], loop[(i+1)%n]
		towards := func(q outline.Point) outline.Point {
			l := math.Hypot(q.X-c.X, q.Y-c.Y)
			return outline.Point{X: c.X + float64(size*(q.X-c.X))/l, Y: c.Y + float64(size*(q.Y-c.Y))/l}
		}
		pa, pb := towards(a), towards(b)
		dx, dy := pb.X-pa.X, pb.Y-pa.Y
		l := math.Hypot(dx, dy)
		dx, dy = dx/l, dy/l
		on := beyond / math.Sqrt(1-float64(l*l)/float64(4*size*size)) // sine of the angle between chamfer and edge
		if l > 1.99*size {
			on = 10 * beyond
		}
		off := size + beyond
		at := func(p outline.Point, along, out float64) outline.Point {
			return outline.Point{X: p.X + float64(along*dx) + float64(out*dy), Y: p.Y + float64(along*dy) - float64(out*dx)}
		}
		o := outline.Polygon(at(pb, on, 0), at(pa, -on, 0), at(pa, -on, off), at(pb, on, off))
		if o.Area() < 0 {
			o = o.Reverse()
		}
		put(Floor, feat{path: path, source: "corner cut", use: UseDrain, outline: o, edge: true})
	}
}

// flat maps places of the world into u and v of a frame.
func flat(loop []solid.Vec, f solid.Frame) []outline.Point {
	ps := make([]outline.Point, len(loop))
	for i, p := range loop {
		q := f.In(p)
		ps[i] = outline.Point{X: q.X, Y: q.Y}
	}
	return ps
}

// settle settles the outlines of features that were put onto parts since it was
// called last.
func settle(parts []*part) {
	for _, p := range parts {
		for ; p.settled < len(p.feats); p.settled++ {
			f := &p.feats[p.settled]
			f.outline = settled(f.outline)
		}
	}
}

// settled rounds a contour once, as planes are: so that a sine or a root that
// differs in its last bit on another processor changes nothing after it.
func settled(c outline.Contour) outline.Contour {
	out := make(outline.Contour, len(c))
	for i, v := range c {
		out[i] = outline.Vertex{X: roundTo(v.X, 30), Y: roundTo(v.Y, 30), Bulge: roundTo(v.Bulge, 40)}
	}
	return out
}

func roundTo(x float64, bits int) float64 {
	return math.Ldexp(math.RoundToEven(math.Ldexp(x, bits)), -bits)
}

// prism is what a feature takes away, in the world.
func (f *feat) prism(p *part) solid.Prism {
	pr := solid.Prism{Frame: p.face.frame, Outline: f.outline, From: math.Inf(-1), To: math.Inf(1)}
	if f.depth > 0 {
		if f.from == FromInner {
			pr.To = f.depth
		} else {
			pr.From = p.face.t - f.depth
		}
	}
	return pr
}
