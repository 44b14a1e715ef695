package picture

import (
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/solid"
)

// Explode sets the solids' shifts so that a picture shows the parts apart:
// walls along their normals, the floor down, the roof up and outward, free
// parts off what they lie on, inner parts not at all. Spread 1 is ordinary.
func Explode(solids []Solid, spread float64) {
	lo, hi := extent(solids)
	mid := lo.Lerp(hi, 0.5)
	d := hi.Sub(lo)
	gap := float64(spread*(d.X+d.Y+d.Z)) / 3 * 0.32
	up := solid.Vec{Z: 1}
	for i := range solids {
		s := &solids[i]
		name := string(s.Part)
		switch {
		case name == "roof":
			s.Shift = up.Scale(1.6 * gap)
		case strings.HasPrefix(name, "roof/"):
			level := solid.Vec{X: s.Out.X, Y: s.Out.Y}
			s.Shift = level.Scale(0.8 * gap).Add(up.Scale(1.6 * gap))
		case name == "floor" || strings.HasPrefix(name, "floor/"):
			s.Shift = s.Out.Scale(1.4 * gap)
		case strings.HasPrefix(name, "inner/"):
			s.Shift = solid.Vec{}
		case strings.HasPrefix(name, "free/"):
			s.Shift = away(solids, i, mid).Scale(1.8 * gap)
		default:
			s.Shift = s.Out.Scale(gap)
		}
	}
}

// drawApart moves parts that are mostly hidden farther along their way, some
// times over, so that each can be seen and pointed at; those that have not
// been moved, inside the box, are lifted. Where no part has been moved, none is.
func drawApart(solids []Solid, v View) *scene {
	s := newScene(solids, v)
	apart := false
	for _, q := range solids {
		apart = apart || q.Shift != (solid.Vec{})
	}
	lo, hi := extent(solids)
	for range 6 {
		again := false
		for i := range solids {
			if !apart || solids[i].Of == "" && s.visibleShare(i) >= 0.3 || solids[i].Of != "" && s.visibleOf(solids[i].Of) >= 0.3 {
				continue
			}
			again = true
			if solids[i].Shift == (solid.Vec{}) {
				solids[i].Shift = solid.Vec{Z: (hi.Z - lo.Z) / 4}
			} else {
				solids[i].Shift = solids[i].Shift.Scale(1.2)
			}
		}
		if !again {
			break
		}
		s = newScene(solids, v)
	}
	return s
}

// visibleOf is visibleShare of that piece of a made-up part that shows most.
func (s *scene) visibleOf(of box.Part) float64 {
	most := 0.0
	for i := range s.solids {
		if s.solids[i].Of == of {
			most = math.Max(most, s.visibleShare(i))
		}
	}
	return most
}

// visibleShare is how much can be seen of those faces of a solid that are
// turned to the viewer and not small, of 1.
func (s *scene) visibleShare(owner int) float64 {
	const across = 10
	most := 0.0
	for _, i := range s.front {
		if f := s.faces[i]; f.owner == owner {
			most = math.Max(most, float64(f.area*f.nd))
		}
	}
	shown, all := 0.0, 0.0
	for _, i := range s.front {
		f := s.faces[i]
		total := float64(f.area * f.nd)
		if f.owner != owner || total < most/8 {
			continue
		}
		if in, open := s.sample(f, across); in > 0 {
			all += total
			shown += float64(total*float64(len(open))) / float64(in)
		}
	}
	if all == 0 {
		return 0
	}
	return shown / all
}

// sample spreads points over a face on the screen, some across squared over
// its extents: how many lie in the face, and those of them that are in sight.
func (s *scene) sample(f *face, across int) (in int, open []pt) {
	w, h := f.hi.x-f.lo.x, f.hi.y-f.lo.y
	for iy := range across {
		for ix := range across {
			q := pt{
				f.lo.x + float64(w*(float64(ix)+0.5))/float64(across),
				f.lo.y + float64(h*(float64(iy)+0.5))/float64(across),
			}
			if !f.covers(q) {
				continue
			}
			in++
			if !s.behind(s.on(f, q)) {
				open = append(open, q)
			}
		}
	}
	return in, open
}

// traces are the ways of the parts that have been moved straight out, or
// straight up: from the middle of each back to abreast of the box's middle, so
// that the ways of opposite parts are one line. Only what is in sight is kept.
func (s *scene) traces() []piece {
	lo, hi := extent(s.solids)
	mid := lo.Lerp(hi, 0.5)
	var out []piece
	seen := map[box.Part]bool{}
	for i, q := range s.solids {
		n := q.Shift.Len()
		if q.Of != "" { // one way for all its pieces
			if seen[q.Of] {
				continue
			}
			seen[q.Of] = true
		}
		if n == 0 || q.Mesh == nil || strings.HasPrefix(string(q.Part), "free/") {
			continue
		}
		a, b := extent(s.solids[i : i+1])
		if q.Of != "" {
			var all []Solid
			for _, o := range s.solids {
				if o.Of == q.Of {
					all = append(all, o)
				}
			}
			a, b = extent(all)
		}
		p := a.Lerp(b, 0.5)
		dir := q.Shift.Scale(1 / n)
		if math.Abs(dir.Dot(q.Out)) < 0.99 && dir.Z < 0.99 {
			continue // a slope's way would end in mid-air
		}
		from := p.Add(q.Shift)
		to := p.Sub(dir.Scale(math.Max(0, dir.Dot(p.Sub(mid)))))
		for _, v := range without(span{0, 1}, s.hidden(from, to)) {
			out = append(out, piece{Trace, i, from.Lerp(to, v.a), from.Lerp(to, v.b)})
		}
	}
	return out
}

// extent is the upright box round the solids in place.
func extent(solids []Solid) (lo, hi solid.Vec) {
	lo = solid.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	hi = lo.Scale(-1)
	for _, s := range solids {
		if s.Mesh == nil {
			continue
		}
		for _, v := range s.Mesh.Vertices {
			lo = solid.Vec{X: math.Min(lo.X, v.X), Y: math.Min(lo.Y, v.Y), Z: math.Min(lo.Z, v.Z)}
			hi = solid.Vec{X: math.Max(hi.X, v.X), Y: math.Max(hi.Y, v.Y), Z: math.Max(hi.Z, v.Z)}
		}
	}
	if lo.X > hi.X {
		return solid.Vec{}, solid.Vec{}
	}
	return lo, hi
}
