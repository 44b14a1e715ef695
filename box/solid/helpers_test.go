package solid

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12g, want %.12g +- %g", what, got, want, tol)
	}
}

// cuboid is the half-spaces of a box between two corners.
func cuboid(x0, y0, z0, x1, y1, z1 float64) []Plane {
	return []Plane{
		NewPlane(Vec{-1, 0, 0}, -x0), NewPlane(Vec{1, 0, 0}, x1),
		NewPlane(Vec{0, -1, 0}, -y0), NewPlane(Vec{0, 1, 0}, y1),
		NewPlane(Vec{0, 0, -1}, -z0), NewPlane(Vec{0, 0, 1}, z1),
	}
}

func random(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 7)) }

// anyFrame is a random right-handed frame.
func anyFrame(r *rand.Rand) Frame {
	w := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
	u := w.Cross(Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}).Unit()
	return Frame{Vec{r.Float64() * 50, r.Float64() * 50, r.Float64() * 50}, u, w.Cross(u), w}
}

func turnPlane(h Plane, f Frame) Plane {
	n := f.U.Scale(h.N.X).Add(f.V.Scale(h.N.Y)).Add(f.W.Scale(h.N.Z))
	return NewPlane(n, h.D+n.Dot(f.O))
}

// turned is the body carried from the world's axes into f.
func turned(b Body, f Frame) Body {
	var out Body
	for _, h := range b.Base {
		out.Base = append(out.Base, turnPlane(h, f))
	}
	for _, k := range b.Cutters {
		var c Cutter
		for _, h := range k {
			c = append(c, turnPlane(h, f))
		}
		out.Cutters = append(out.Cutters, c)
	}
	for _, p := range b.Prisms {
		g := p.Frame
		dir := func(v Vec) Vec { return f.Out(v).Sub(f.O) }
		p.Frame = Frame{f.Out(g.O), dir(g.U), dir(g.V), dir(g.W)}
		out.Prisms = append(out.Prisms, p)
	}
	return out
}

// randomPolyhedron has its faces at distance 40 to 70 from a centre.
func randomPolyhedron(r *rand.Rand, at Vec, size float64, faces int) []Plane {
	p := cuboid(at.X-size, at.Y-size, at.Z-size, at.X+size, at.Y+size, at.Z+size)
	for i := 0; i < faces; i++ {
		n := Vec{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}.Unit()
		p = append(p, NewPlane(n, n.Dot(at)+size*(0.6+0.5*r.Float64())))
	}
	return p
}

// randomBody is a random polyhedron less random open cutters.
func randomBody(r *rand.Rand) Body {
	b := Body{Base: randomPolyhedron(r, Vec{}, 50, r.IntN(8))}
	for k := r.IntN(5); k >= 0; k-- {
		at := Vec{r.Float64()*100 - 50, r.Float64()*100 - 50, r.Float64()*100 - 50}
		p := randomPolyhedron(r, at, 10+30*r.Float64(), r.IntN(4))
		r.Shuffle(len(p), func(i, j int) { p[i], p[j] = p[j], p[i] })
		b.Cutters = append(b.Cutters, p[:2+r.IntN(len(p)-1)])
	}
	return b
}

// holds tells whether a place is inside the body by its definition; ok is false
// within eps of a plane.
func (b Body) holds(p Vec, eps float64) (in, ok bool) {
	in = true
	for _, h := range b.Base {
		d := h.At(p)
		if math.Abs(d) < eps {
			return false, false
		}
		in = in && d < 0
	}
	for _, k := range b.Cutters {
		cut := true
		for _, h := range k {
			d := h.At(p)
			if math.Abs(d) < eps {
				return false, false
			}
			cut = cut && d < 0
		}
		in = in && !cut
	}
	return in, true
}

func (c Convex) holds(p Vec) bool {
	for _, f := range c.Faces {
		if f.N.Dot(p.Sub(f.Loop[0])) > 0 {
			return false
		}
	}
	return !c.Empty()
}
