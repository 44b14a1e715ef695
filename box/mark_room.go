package box

import (
	"fmt"
	"math"
	"slices"

	"holt.example/box/outline"
	"holt.example/joints"
)

// twiceCut reports lines of two features that are one, or grip and drip grooves that
// run into those of another feature: given twice, one of them was not meant; and lines
// across the letters of a text, which then cannot be read.
func (s *shell) twiceCut(p *part) {
	type stroke struct {
		l *line
		t outline.Path
	}
	var all []stroke
	var boxes []outline.Box
	most := 1e-6
	lettered := slices.ContainsFunc(p.engraved, func(l line) bool { return l.letters > 0 })
	for i := range p.engraved {
		if l := &p.engraved[i]; lettered || l.use == UseGrip || l.use == UseDrip {
			most = math.Max(most, l.band())
		}
		for _, t := range p.engraved[i].strokes {
			all = append(all, stroke{&p.engraved[i], t})
			boxes = append(boxes, t.Extents())
		}
	}
	if len(p.engraved) < 2 {
		return
	}
	grid := newBins(boxes)
	for k, a := range all {
		wide := 0.0
		if lettered || a.l.use == UseGrip || a.l.use == UseDrip {
			wide = a.l.band()
		}
		grid.near(grow(boxes[k], wide+most), func(i int) {
			b := all[i]
			if i >= k || b.l.path == a.l.path || b.l.from != a.l.from {
				return
			}
			same := equalPath(a.t, b.t)
			text := a.l.letters > 0 || b.l.letters > 0
			if !same && text && !apart(boxes[i], boxes[k], wide+b.l.band()) && a.t.DistanceTo(thereAndBack(b.t)) < wide+b.l.band()-1e-9 {
				pr := Problem{Path: a.l.path, Code: "feature-meets-feature", Got: "a line " + num(a.l.width) + " wide",
					Why: fmt.Sprintf("the %s on %s runs into the %s of %s", a.l.source, p.face.part, b.l.source, b.l.path), Try: clearOfIt(a.l.path, b.l.path)}
				s.c.add(pr)
				return
			}
			grips := a.l.use == UseGrip || a.l.use == UseDrip
			if !same && grips && b.l.use == a.l.use && alongside(a.t, b.t) && !apart(boxes[i], boxes[k], wide+b.l.band()) {
				same = a.t.DistanceTo(thereAndBack(b.t)) < wide+b.l.band()
			}
			if same {
				s.c.add(Problem{Path: a.l.path, Code: "feature-meets-feature", Got: "a line " + num(a.l.width) + " wide",
					Why: fmt.Sprintf("the %s on %s runs into the %s of %s: is it there twice?", a.l.source, p.face.part, b.l.source, b.l.path)})
			}
		})
	}
}

// alongside reports whether two straight lines run the same way: such as cross, at
// the corner of a roof, are meant.
func alongside(p, q outline.Path) bool {
	if len(p) != 2 || len(q) != 2 {
		return false
	}
	x, y := p[1].X-p[0].X, p[1].Y-p[0].Y
	u, v := q[1].X-q[0].X, q[1].Y-q[0].Y
	return math.Abs(float64(x*v)-float64(y*u)) < 1e-6*p.Length()*q.Length()
}

// thereAndBack is a path as a contour.
func thereAndBack(t outline.Path) outline.Contour {
	n := len(t) - 1
	c := append(outline.Contour(nil), t[:n]...)
	for _, v := range t.Reverse()[:n] {
		c = append(c, v)
	}
	return c
}

// lineRoom is what lines on a part have to keep clear of.
type lineRoom struct {
	p           *part
	top, bottom outline.Region
	grid        *bins
	shadows     []shadow
}

func (s *shell) lineRoom(p *part) lineRoom {
	top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	return lineRoom{p, top, bottom, newBins(p.boxes()), p.shadows()}
}

// trouble is why a line cannot be cut where it is: what of it comes farthest past
// the edge, then what it runs into.
func (r *lineRoom) trouble(l *line) (ps []Problem) {
	p, got := r.p, "a line "+num(l.width)+" wide"
	if l.letters > 0 {
		got = num(l.letters) + " high"
	}
	past := 0.0
	for _, t := range l.strokes {
		for _, o := range []outline.Region{r.top, r.bottom} {
			if d := l.band() - farFrom(o, t); d > 1e-6 && !l.open {
				past = math.Max(past, d)
			}
		}
	}
	if past > 0 {
		ps = append(ps, Problem{Path: l.path, Code: "off-part", Got: got, Why: fmt.Sprintf("%s comes %s past the edge of %s%s", r.says(l), num(round1(past)), p.face.part, r.short(l))})
	}
	// Of what it runs into, that by which it does so most, once for each.
	into := func(code, what string, by float64) {
		ps = append(ps, Problem{Path: l.path, Code: code, Got: got, Why: fmt.Sprintf("%s on %s runs into %s, by %s", r.says(l), p.face.part, what, num(round1(by)))})
	}
	for _, x := range r.shadows {
		if l.from == FromOuter && x.c.zone.Work != joints.Notching && x.deepest+l.depth < p.face.least {
			continue
		}
		if by, meets := l.meets(x.outline, l.strokes); meets {
			into("feature-meets-joint", "its "+x.c.edge.sec.Name+" with "+string(x.c.guest.part), by)
		}
	}
	near := map[int][]outline.Path{}
	for _, t := range l.strokes {
		r.grid.near(grow(t.Extents(), l.band()), func(k int) { near[k] = append(near[k], t) })
	}
	for k := range p.feats {
		g := &p.feats[k]
		if g.depth > 0 && g.from != l.from && g.depth+l.depth < p.face.least {
			continue
		}
		if by, meets := l.meets(g.outline, near[k]); meets {
			into("feature-meets-feature", "the "+g.source+" of "+g.path, by)
		}
	}
	return ps
}

// meets is whether strokes of the line come into an outline, and how far at most.
func (l *line) meets(c outline.Contour, strokes []outline.Path) (by float64, meets bool) {
	e := c.Extents()
	for _, t := range strokes {
		if apart(e, t.Extents(), l.band()) {
			continue
		}
		if c.Contains(t[0].At(), 0) == outline.Inside || t.DistanceTo(c) < l.band() {
			by, meets = math.Max(by, l.into(t, c)), true
		}
	}
	return by, meets
}

// says is a line as problems speak of it: a text by what it says and how wide it
// is.
func (r *lineRoom) says(l *line) string {
	if l.letters == 0 {
		return "the " + l.source
	}
	lo, hi := l.reach(float64(l.turn))
	return fmt.Sprintf("text %q, %s wide at Height %s,", l.text, num(round1(hi-lo)), num(l.letters))
}

// short says how wide the part is where a text stands that is wider.
func (r *lineRoom) short(l *line) string {
	if l.letters == 0 {
		return ""
	}
	lo, hi := l.reach(float64(l.turn))
	low, high := l.reach(float64(l.turn) + 90)
	at := func(along float64) outline.Point {
		return outline.Turn(float64(l.turn)).Apply(outline.Point{X: along, Y: (low + high) / 2})
	}
	has := math.Inf(1)
	for _, o := range []outline.Region{r.top, r.bottom} {
		for _, t := range outline.Line(at(-2*maxLength), at(2*maxLength)).Within(o) {
			if t.Distance(at((lo+hi)/2)) < 1e-6 {
				has = math.Min(has, t.Length())
			}
		}
	}
	if !(has < hi-lo) {
		return ""
	}
	return fmt.Sprintf(", which has %s there", num(round1(has)))
}

// reach is from where to where a line goes, its width counted, in the direction at
// an angle from the right.
func (l *line) reach(angle float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	sn, cs := sincos(angle)
	for _, t := range l.strokes {
		lo = math.Min(lo, -reachOf(t, -cs, -sn)-l.band())
		hi = math.Max(hi, reachOf(t, cs, sn)+l.band())
	}
	return lo, hi
}

// smaller is the height of letters at which a text has room, as something to try;
// "" where there is none.
func (s *shell) smaller(room lineRoom, l *line) string {
	if l.resize == nil {
		return ""
	}
	fits := func(h float64) bool {
		if !(h >= 3) {
			return false
		}
		keep := s.c
		s.c = &collector{} // what another height does wrong is nobody's problem
		defer func() { s.c = keep }()
		x, ok := l.resize(h)
		return ok && len(s.c.ps) == 0 && len(room.trouble(&x)) == 0
	}
	for _, step := range []float64{1, 0.5} { // whole millimetres, and halves for what is small
		lo, hi := 0, int(math.Ceil(l.letters/step))
		for hi-lo > 1 {
			if m := (lo + hi) / 2; fits(float64(m) * step) {
				lo = m
			} else {
				hi = m
			}
		}
		if h := float64(lo) * step; lo > 0 && (h >= 10 || step == 0.5) {
			return "Height: " + num(h)
		}
	}
	return ""
}
