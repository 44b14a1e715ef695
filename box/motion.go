package box

import (
	"math"

	"holt.example/box/solid"
)

// motion is a turn about the line through o along d, by degrees, or a shift along
// d, by mm.
type motion struct {
	o, d solid.Vec
	turn bool
}

// none reports whether nothing moves.
func (m motion) none() bool { return m.d == (solid.Vec{}) }

// back is the motion the other way.
func (m motion) back() motion { return motion{m.o, m.d.Scale(-1), m.turn} }

// vec turns a direction.
func (m motion) vec(v solid.Vec, x float64) solid.Vec {
	if !m.turn || x == 0 {
		return v
	}
	sn, cs := sincos(x)
	along := m.d.Scale(m.d.Dot(v))
	across := v.Sub(along)
	return along.Add(across.Scale(cs)).Add(m.d.Cross(v).Scale(sn))
}

// point moves a place.
func (m motion) point(p solid.Vec, x float64) solid.Vec {
	if x == 0 {
		return p
	}
	if !m.turn {
		return p.Add(m.d.Scale(x))
	}
	return m.o.Add(m.vec(p.Sub(m.o), x))
}

// frame moves a frame. What comes of sines is rounded once, as planes are.
func (m motion) frame(f solid.Frame, x float64) solid.Frame {
	if x == 0 {
		return f
	}
	r := func(v solid.Vec, bits int) solid.Vec {
		return solid.Vec{X: roundTo(v.X, bits) + 0, Y: roundTo(v.Y, bits) + 0, Z: roundTo(v.Z, bits) + 0}
	}
	return solid.Frame{O: r(m.point(f.O, x), 30), U: r(m.vec(f.U, x), 40), V: r(m.vec(f.V, x), 40), W: r(m.vec(f.W, x), 40)}
}

// body moves a body, which then is not ready.
func (m motion) body(b solid.Body, x float64) solid.Body {
	planes := func(hs []solid.Plane) []solid.Plane {
		out := make([]solid.Plane, len(hs))
		for i, h := range hs {
			n := m.vec(h.N, x)
			out[i] = solid.Plane{N: n, D: n.Dot(m.point(h.N.Scale(h.D), x))}
		}
		return out
	}
	out := solid.Body{Base: planes(b.Base)}
	for _, c := range b.Cutters {
		out.Cutters = append(out.Cutters, planes(c))
	}
	for _, p := range b.Prisms {
		p.Frame = solid.Frame{O: m.point(p.Frame.O, x), U: m.vec(p.Frame.U, x), V: m.vec(p.Frame.V, x), W: m.vec(p.Frame.W, x)}
		out.Prisms = append(out.Prisms, p)
	}
	return out
}

// track is the height of a moving place over a plane through the origin: of a
// turn a + b cos x + c sin x, of a shift a + b x.
type track struct{ a, b, c float64 }

// along is the height n.p of the place p as it moves.
func (m motion) along(n, p solid.Vec) track {
	if !m.turn {
		return track{a: n.Dot(p), b: n.Dot(m.d)}
	}
	r := p.Sub(m.o)
	along := m.d.Scale(m.d.Dot(r))
	return track{n.Dot(m.o.Add(along)), n.Dot(r.Sub(along)), n.Dot(m.d.Cross(r))}
}

func (t track) at(m motion, x float64) float64 {
	if !m.turn {
		return t.a + float64(t.b*x)
	}
	sn, cs := sincos(x)
	return t.a + float64(t.b*cs) + float64(t.c*sn)
}

// most is the largest height from lo to hi, which is exact: at an end, or where
// the place passes right under the plane.
func (t track) most(m motion, lo, hi float64) float64 {
	best := math.Max(t.at(m, lo), t.at(m, hi))
	if m.turn && t.peaks(lo, hi) {
		best = t.a + math.Hypot(t.b, t.c)
	}
	return best
}

// least is the smallest height from lo to hi.
func (t track) least(m motion, lo, hi float64) float64 {
	return -track{-t.a, -t.b, -t.c}.most(m, lo, hi)
}

// peaks reports whether a turn from lo to hi degrees passes the highest place.
func (t track) peaks(lo, hi float64) bool {
	if t.b == 0 && t.c == 0 {
		return false
	}
	at := math.Atan2(t.c, t.b) * 180 / math.Pi
	return at+360*math.Ceil((lo-at)/360) <= hi
}
