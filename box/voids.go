package box

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// The volumes, in mm3, under which an overlap or a void is a crumb of the
// arithmetic: the side test of 1e-7 mm over the largest faces of a box.
const crumb = 1e-2

// zone is a place where a void may lie, and its owner.
type zone struct {
	owner, kind string
	planes      []solid.Plane
}

// checkOverlaps sees that no place is held by two parts.
func (s *shell) checkOverlaps(parts []*part) {
	for i := range parts {
		for j := i + 1; j < len(parts); j++ {
			if v := solid.Overlap(parts[i].solid, parts[j].solid); v > crumb {
				code := "overlap"
				if s.plated(parts[i]) || s.plated(parts[j]) {
					code = "in-the-way"
				}
				s.c.add(Problem{Path: s.pairPath(parts[i], parts[j]), Code: code, Got: num(v) + " mm3",
					Why: fmt.Sprintf("%s and %s would both fill the same place", parts[i].face.part, parts[j].face.part)})
			}
		}
	}
}

// plated reports whether an opening made the part: it is where the design puts it.
func (s *shell) plated(p *part) bool {
	for _, w := range s.ways {
		if w.face < 0 && w.part == p.face.part {
			return true
		}
	}
	return false
}

func (s *shell) pairPath(a, b *part) string {
	if a.strip != nil && b.strip != nil && a.strip.whole == b.strip.whole {
		return a.strip.whole.path
	}
	for i := range s.d.Free {
		for _, p := range []*part{b, a} {
			if p.free == &s.d.Free[i] {
				return fmt.Sprintf("Free[%d]", i)
			}
		}
	}
	for _, p := range []*part{b, a} {
		if s.plated(p) || p.at < 0 && p.free == nil && strings.HasPrefix(p.path, "Outer[") {
			return p.path
		}
	}
	if a.at >= 0 && b.at >= 0 {
		if e := s.pair[[2]int{min(a.at, b.at), max(a.at, b.at)}]; e != nil && e.path != "" {
			return e.path
		}
	}
	return "Joints"
}

// findVoids works out every place inside the outer planes that no part fills,
// and who owns it. A void with no owner is a problem: a leak.
func (s *shell) findVoids(parts []*part) []Void {
	cells := s.shellCells()
	for _, p := range parts {
		cells = solid.Subtract(cells, p.solid)
	}
	sum := map[string]*Void{}
	var order []string
	note := func(owner, kind string, v float64, at solid.Vec) {
		key := kind + " " + owner
		w := sum[key]
		if w == nil {
			w = &Void{Owner: owner, Kind: kind, At: place(at)}
			sum[key] = w
			order = append(order, key)
		}
		w.Volume += v
	}
	if len(cells) > 0 {
		for _, z := range s.zones(parts) {
			var rest []solid.Convex
			for _, c := range cells {
				in, out := solid.Split(c, z.planes)
				if in.Empty() {
					rest = append(rest, c)
					continue
				}
				note(z.owner, z.kind, in.Volume(), in.Centroid())
				rest = append(rest, out...)
			}
			cells = rest
		}
	}
	s.leaks(cells)
	for _, p := range unmade(parts) {
		for i := range p.feats {
			f := &p.feats[i]
			d := f.depth
			if d == 0 {
				d = p.face.t
			}
			c := f.outline.Centroid()
			note(f.source+" "+string(p.face.part), "feature", float64(p.takes(f)*d), p.face.frame.Out(solid.Vec{X: c.X, Y: c.Y, Z: p.face.t / 2}))
		}
	}
	var vs []Void
	for _, k := range order {
		if sum[k].Volume > 1e-6 {
			vs = append(vs, *sum[k])
		}
	}
	sort.SliceStable(vs, func(i, j int) bool { return vs[i].Kind < vs[j].Kind })
	return vs
}

// takes is the area of a feature that lies on its part.
func (p *part) takes(f *feat) float64 {
	if !f.inLine && !f.open {
		return f.outline.Area()
	}
	top, bottom, _ := p.outlines(FromOuter, p.face.panelFrame(FromOuter))
	if f.open && f.from == FromInner {
		top = bottom
	}
	in, err := outline.Intersect(top, outline.Region{f.outline})
	if err != nil {
		return 0
	}
	return in.Area()
}

func place(v solid.Vec) Place { return Place{MM(v.X), MM(v.Y), MM(v.Z)} }

// shellCells are the pieces of the shell: outside the cavity, inside the outer
// planes.
func (s *shell) shellCells() []solid.Convex {
	rest := s.outer()
	var cells []solid.Convex
	for i := range s.faces {
		if rest.Empty() {
			break
		}
		if c := rest.Clip(s.faces[i].in.Flip(), -30-2*i); !c.Empty() && !s.faces[i].open {
			cells = append(cells, c)
		}
		rest = rest.Clip(s.faces[i].in, -31-2*i)
	}
	return cells
}

// zones lists the declared voids in the order in which they take what is left:
// square ends and tops, play, run-outs of cuts.
func (s *shell) zones(parts []*part) []zone {
	var square, play, run []zone
	edges := append(append([]*edge(nil), s.edges...), s.inner...)
	for _, e := range edges {
		if !e.ok {
			continue
		}
		a, b := &s.faces[e.over], e.second(s)
		name := string(a.part) + "/" + string(b.part)
		for _, z := range e.sec.Void {
			hs := s.zoneOf(a, b, e, z)
			if z.Work == joints.SquareEnd {
				square = append(square, zone{name, "square", hs})
			} else {
				play = append(play, zone{name, "play", hs})
			}
		}
	}
	for _, p := range parts {
		if f := p.face; f.up() {
			for k, from := range p.from {
				if from == fromEnd {
					square = append(square, zone{string(f.part), "square", []solid.Plane{p.base[k].Flip(), f.in.Flip(), f.in.Shift(f.t)}})
				}
			}
		}
		for i := range p.cutters {
			c := &p.cutters[i]
			if c.edge == nil || c.strip {
				continue
			}
			for k := range s.faces {
				f := &s.faces[k]
				if f.open || k == p.at || f == c.guest {
					continue
				}
				hs := append(append([]solid.Plane{f.in.Flip()}, c.planes...), p.face.in.Flip(), p.face.in.Shift(p.face.t))
				run = append(run, zone{string(p.face.part) + "/" + string(c.guest.part), "run-out", hs})
			}
		}
	}
	play = append(play, s.roomZones(unmade(parts))...)
	play = append(play, s.floorZones(unmade(parts))...)
	for _, w := range s.made {
		play = append(play, w.zones()...)
	}
	return append(append(square, play...), run...)
}

// leaks reports what is left: places that nobody owns.
func (s *shell) leaks(cells []solid.Convex) {
	type leak struct {
		names string
		v     float64
		at    solid.Vec
	}
	var ls []leak
	for _, c := range cells {
		v := c.Volume()
		if !(v > 1e-7) {
			continue
		}
		at, names := c.Centroid(), ""
		for i := range s.faces {
			if s.faces[i].in.At(at) > 0 && !s.faces[i].open {
				if names != "" {
					names += ", "
				}
				names += string(s.faces[i].part)
			}
		}
		found := false
		for i := range ls {
			if ls[i].names == names {
				ls[i].v += v
				found = true
			}
		}
		if !found {
			ls = append(ls, leak{names, v, at})
		}
	}
	for _, l := range ls {
		if l.v > crumb {
			s.c.add(Problem{Path: "Joints", Code: "leak", Got: num(l.v) + " mm3",
				Why: fmt.Sprintf("a hole is left where %s meet, at %s, %s, %s: their joints contradict one another there", l.names, num(math.Round(l.at.X*10)/10), num(math.Round(l.at.Y*10)/10), num(math.Round(l.at.Z*10)/10))})
		}
	}
}
