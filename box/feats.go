package box

import (
	"fmt"
	"math"

	"holt.example/box/outline"
	"holt.example/joints"
)

// least webs, in mm: none at all is a problem, little a finding.
const thinWeb = 0.5

// checkFeats sees that every feature lies where it may: on its part, opening
// into the cavity if it must, clear of joints and of one another.
func (s *shell) checkFeats(p *part) {
	fr := p.face.panelFrame(FromOuter)
	top, bottom, _ := p.outlines(FromOuter, fr)
	shadows := p.shadows()
	for i := range p.feats {
		f := &p.feats[i]
		got := size(f.outline)
		if !s.opensInside(p, f) {
			continue
		}
		off := 0.0
		for _, r := range []outline.Region{top, bottom} {
			if len(r) > 0 {
				off = math.Min(off, inside(r[0], f.outline))
			}
		}
		if off < 0 && !f.open {
			if !f.edge || f.depth > 0 || !meets(top, f.outline) && !meets(bottom, f.outline) {
				where := ""
				if len(top) > 0 && inside(top[0], f.outline) > off {
					where = ", on its inner face, where a bevel leaves it shorter"
				} else if len(bottom) > 0 && inside(bottom[0], f.outline) > off {
					where = ", on its outer face, where a bevel leaves it shorter"
				}
				s.c.add(Problem{Path: f.path, Code: "off-part", Got: got,
					Why: fmt.Sprintf("the %s reaches %s past the edge of %s%s", f.source, num(round1(-off)), p.face.part, where)})
				continue
			}
			f.inLine = true
		}
		if !f.edge {
			s.meetsJoint(p, f, shadows)
		}
	}
	type pair struct{ f, g string }
	worst := map[pair]int{}
	var met []meeting
	p.eachPair(0, func(i, k int) {
		f, g := &p.feats[max(i, k)], &p.feats[min(i, k)]
		if f.depth > 0 && g.depth > 0 && f.from != g.from && f.depth+g.depth < p.face.least {
			return
		}
		if f.shaped && g.shaped && f.path == g.path { // made to meet
			return
		}
		if f.fit && g.fit && f.path == g.path {
			return
		}
		if !clash(f.outline, g.outline) {
			return
		}
		m := meeting{f, g, runsInto(f.outline, g.outline)}
		at, told := worst[pair{f.path, g.path}]
		switch {
		case !told:
			worst[pair{f.path, g.path}] = len(met)
			met = append(met, m)
		case m.by > met[at].by:
			met[at] = m
		}
	})
	for _, m := range met {
		s.tellMeeting(p, m)
	}
	s.checkLines(p)
}

// eachPair calls do for every two features whose extents come nearer than d, the
// earlier one first.
func (p *part) eachPair(d float64, do func(i, k int)) {
	boxes := p.boxes()
	grid := newBins(boxes)
	for k := range boxes {
		grid.near(grow(boxes[k], d), func(i int) {
			if i < k {
				do(i, k)
			}
		})
	}
}

// opensInside sees that an opening which must lead into the cavity does.
func (s *shell) opensInside(p *part, f *feat) bool {
	if !f.cavity || p.at < 0 {
		return true
	}
	cavity := outline.Polygon(flat(p.face.loop, p.face.frame)...)
	d := inside(cavity, f.outline)
	if d >= 0 {
		return true
	}
	e, own := cavity.Extents(), f.outline.Extents()
	face := fmt.Sprintf("%s wide and %s high", num(round1(e.Width())), num(round1(e.Height())))
	if own.Width() > e.Width()+1e-6 || own.Height() > e.Height()+1e-6 {
		s.c.add(Problem{Path: f.path, Code: "off-cavity", Got: size(f.outline),
			Why: fmt.Sprintf("the %s is larger than the cavity's face, which is %s, and reaches %s past it", f.source, face, num(round1(-d)))})
		return false
	}
	past, try, drop := s.pastEdge(p, f, cavity)
	bevel := ""
	if drop > 0.05 {
		bevel = fmt.Sprintf("; the bevel of its top takes %s more on the outer face", num(round1(drop)))
	}
	s.c.add(Problem{Path: f.path, Code: "off-cavity", Got: size(f.outline), Try: try,
		Why: fmt.Sprintf("the %s reaches %s past the edge of the cavity's face at %s, which is %s%s",
			f.source, num(round1(-d)), past, face, bevel)})
	return false
}

// pastEdge names the edge of the cavity's face that an opening reaches past
// most, the place that would do, and how much of the way there is for the bevel of
// the wall's top.
func (s *shell) pastEdge(p *part, f *feat, cavity outline.Contour) (name Part, try string, drop float64) {
	g, _ := s.cav.FaceOf(p.at)
	worst := 0.0
	var back, out outline.Point // the way that would do, and the direction of the edge
	for k, a := range cavity {
		b := cavity[(k+1)%len(cavity)]
		x, y := b.Y-a.Y, a.X-b.X
		l := math.Hypot(x, y)
		x, y = x/l, y/l
		d := f.outline.Support(x, y) - float64(x*a.X) - float64(y*a.Y)
		if d <= worst || k >= len(g.Next) {
			continue
		}
		worst, name, try, drop = d, s.faces[g.Next[k]].part, "", 0
		if s.faces[g.Next[k]].kind == roofFace {
			drop = s.topDrop(p)
			d += drop
		}
		back, out = outline.Point{}, outline.Point{X: x, Y: y}
		_, cl := sincos(p.face.lean)
		switch at := f.outline.Extents(); {
		case f.use == UseEntrance && math.Abs(y) > 0.2:
			try, back.Y = "Above: "+num(tenthDown((at.Min.Y-d/y)*cl)), -d/y
		case f.use == UseVent && y > 0.2:
			try = "Below: " + num(-tenthDown(-(cavity.Extents().Max.Y - at.Centre().Y + d/y)))
		case f.use == UseEntrance:
			back.X = -d / x
			if right := at.Centre().X - d/x; right > 0 { // towards the middle
				try = "Right: " + num(tenthDown(right))
			} else {
				try = "Right: " + num(-tenthDown(-right))
			}
		}
	}
	// Where that only takes it past the edge on the other side nothing is tried.
	moved := f.outline.Transform(outline.Shift(back.X, back.Y))
	for k, a := range cavity {
		b := cavity[(k+1)%len(cavity)]
		x, y := b.Y-a.Y, a.X-b.X
		l := math.Hypot(x, y)
		x, y = x/l, y/l
		opposite := float64(x*out.X)+float64(y*out.Y) < 0
		if opposite && back != (outline.Point{}) && moved.Support(x, y)-float64(x*a.X)-float64(y*a.Y) > 1e-6 {
			try = ""
		}
	}
	return name, try, drop
}

// tenthDown is the next tenth below; of what is a tenth itself but for its last
// digits too, since a hole that touches a joint runs into it.
func tenthDown(x float64) float64 { return math.Floor(float64(x*10)-1e-6) / 10 }

// topDrop is how much lower the outer arris of a wall's bevelled top lies than
// the inner one.
func (s *shell) topDrop(p *part) float64 {
	if pitch, _, ok := s.eavesOf(p.at); ok {
		return math.Max(0, float64(p.face.t*tan(pitch)))
	}
	return 0
}

// checkOpenings is what can be said of features when the joints are at fault.
func (s *shell) checkOpenings() {
	var parts []*part
	for i := range s.faces {
		if !s.faces[i].open {
			parts = append(parts, &part{face: &s.faces[i], at: i})
		}
	}
	s.lowerFeatures(parts)
	for _, p := range parts {
		for i := range p.feats {
			s.opensInside(p, &p.feats[i])
		}
	}
}

// meetsJoint reports a feature that runs into the joinery of its part.
func (s *shell) meetsJoint(p *part, f *feat, shadows []shadow) {
	for _, x := range shadows {
		if f.with != "" && x.c.guest.part == f.with {
			continue
		}
		if f.depth > 0 && f.from == FromOuter && x.c.zone.Work != joints.Notching && x.deepest+f.depth < p.face.least {
			continue
		}
		if !apart(x.outline.Extents(), f.outline.Extents(), 0) && clash(x.outline, f.outline) {
			s.c.add(Problem{Path: f.path, Code: "feature-meets-joint", Got: size(f.outline),
				Why: fmt.Sprintf("the %s on %s runs into its %s with %s, by %s", f.source, p.face.part, x.c.edge.sec.Name, x.c.guest.part, num(round1(runsInto(x.outline, f.outline))))})
		}
	}
}

// inside is how far the contour c lies inside the outline o: the least
// distance between the two, or, where c sticks out, minus how far.
func inside(o, c outline.Contour) float64 {
	if o.IsConvex() && straight(o) {
		least := math.Inf(1)
		for i, a := range o {
			b := o[(i+1)%len(o)]
			x, y := b.Y-a.Y, a.X-b.X
			l := math.Hypot(x, y)
			x, y = x/l, y/l
			least = math.Min(least, float64(x*a.X)+float64(y*a.Y)-c.Support(x, y))
		}
		if math.Abs(least) < 1e-6 {
			return 0
		}
		return least
	}
	out := 0.0
	for _, v := range c.Flatten(0.001) {
		if o.Contains(v, 1e-6) == outline.Outside {
			out = math.Max(out, o.Distance(v))
		}
	}
	if out > 1e-6 {
		return -out
	}
	return o.DistanceTo(c)
}

func straight(c outline.Contour) bool {
	for _, v := range c {
		if v.Bulge != 0 {
			return false
		}
	}
	return true
}

// apart reports whether two contours are clearly farther apart than d.
func apart(a, b outline.Box, d float64) bool {
	return a.Min.X > b.Max.X+d || b.Min.X > a.Max.X+d || a.Min.Y > b.Max.Y+d || b.Min.Y > a.Max.Y+d
}

// clash reports whether two cuts share a place.
func clash(a, b outline.Contour) bool {
	return a.DistanceTo(b) <= 0 || inside(a, b) >= 0 || inside(b, a) >= 0
}

// runsInto is how far two cuts that share a place run into each other: how deep the
// outline of one comes into the other, the lesser of both ways.
func runsInto(a, b outline.Contour) float64 {
	into := func(a, b outline.Contour) float64 {
		d := 0.0
		for _, v := range a.Flatten(0.01) {
			if b.Contains(v, 0) == outline.Inside {
				d = math.Max(d, b.Distance(v))
			}
		}
		return d
	}
	switch x, y := into(a, b), into(b, a); {
	case x == 0 && y == 0: // the same outline twice
		return a.Distance(a.Centroid())
	case x == 0 || y > 0 && y < x:
		return y
	default:
		return x
	}
}

// meets reports whether any of the region lies inside the contour or the
// other way round.
func meets(r outline.Region, c outline.Contour) bool {
	in, err := outline.Intersect(r, outline.Region{c})
	return err == nil && in.Area() > 1e-3
}

// size says how large an opening is.
func size(c outline.Contour) string {
	if _, d, ok := c.IsCircle(1e-9); ok {
		return num(round1(d)) + " across"
	}
	e := c.Extents()
	return num(round1(e.Width())) + " x " + num(round1(e.Height()))
}

func round1(x float64) float64 { return math.Round(x*10) / 10 }
