package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
)

// Edging takes the sharpness off arrises: free ones are rounded over, feather
// edges blunted. It is listed at each edge and is no part of the solid. The lower
// arris of a roof stays sharp, because the drip leaves there.
type Edging struct {
	On      []Part // nil means all parts
	Round   MM     // radius, on free arrises; 0 is none
	Blunt   MM     // width of the flat that is planed on feather edges, free or not; 0 is none
	Feather Deg    // arrises up to this angle are feather edges; 0 means 45
}

func (Edging) feature() {}

func (f Edging) on(*shell) []onPart { return onParts(".On", f.On) }

// edging is Edging with its numbers settled.
type edging struct {
	path         string
	on           map[Part]bool // nil: all
	round, blunt float64
	feather      float64
}

// Arris is one arris of an edge.
type Arris struct {
	Angle Deg  // of the wood, from face to edge: 90 is square
	Free  bool // no other part touches it
	Round MM   // radius to which it is rounded over; 0 is not at all
	Blunt MM   // width of the flat that is planed on it; 0 is not at all
}

func (f Edging) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	s.c.within(path+".Round", float64(f.Round), 0, 50, "mm", "radius of rounded arrises; 0 is none")
	s.c.within(path+".Blunt", float64(f.Blunt), 0, 20, "mm", "flat on feather edges; 0 is none")
	feather := float64(f.Feather)
	if feather == 0 {
		feather = 45
	}
	s.c.within(path+".Feather", feather, 5, 80, "deg", "angle of a feather edge; 0 is 45")
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	e := edging{path: path, round: float64(f.Round), blunt: float64(f.Blunt), feather: feather}
	if f.On != nil {
		e.on = map[Part]bool{}
		for _, p := range f.On {
			e.on[p] = true
		}
	}
	s.edging = append(s.edging, e)
}

// arrises fills in the arrises of a part's edges.
func (s *shell) arrises(p *part, pn *Panel, parts []*part) {
	for k, id := range p.edgeIDs {
		e := &pn.Edges[k]
		face, ok := p.convex.FaceOf(id)
		if !ok {
			continue
		}
		for side := range 2 {
			a := &e.Arrises[side]
			a.Angle = 90 - e.Bevel
			if side == 1 {
				a.Angle = 90 + e.Bevel
			}
			want := fromOuter
			if (pn.Face == FromInner) == (side == 0) {
				want = fromInner
			}
			for m, next := range face.Next {
				if next < 0 || p.from[next] != want {
					continue
				}
				from, to := face.Loop[m], face.Loop[(m+1)%len(face.Loop)]
				a.Free = !touchedLine(p, from, to, parts)
				drips := p.face.kind == roofFace && want == fromInner
				for _, x := range s.edging {
					if x.on != nil && !x.on[p.shellPart()] {
						continue
					}
					switch {
					case float64(a.Angle) <= x.feather+1e-9 && x.blunt > 0:
						if !drips || !a.Free {
							a.Blunt = MM(x.blunt)
						}
					case a.Free && !drips && x.round > 0:
						if s.c.within(x.path+".Round", x.round, 0, p.face.least/2, "mm", fmt.Sprintf("radius of rounded arrises: at most half the thickness of %s", p.face.part)) {
							a.Round = MM(x.round)
						}
					}
				}
			}
		}
	}
}

// touchedLine reports whether another part touches a line anywhere. What is cut
// out of the other part counts as wood: an arris in a notch is left alone.
func touchedLine(p *part, from, to solid.Vec, parts []*part) bool {
	const near, least = 1e-3, 0.1
	d := to.Sub(from)
	for _, q := range parts {
		if q == p {
			continue
		}
		lo, hi := 0.0, 1.0
		for _, h := range q.base {
			at, along := h.At(from)-near, h.N.Dot(d)
			switch {
			case math.Abs(along) < 1e-12:
				if at > 0 {
					hi = -1
				}
			case along > 0:
				hi = math.Min(hi, -at/along)
			default:
				lo = math.Max(lo, -at/along)
			}
		}
		if (hi-lo)*d.Len() > least {
			return true
		}
	}
	return false
}
