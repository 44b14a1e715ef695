package picture

import (
	"math"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// Hole is a hole right through a solid: its rim in the plane of the outer face,
// anticlockwise seen from outside, where the solid is before any shift.
type Hole struct {
	Rim      []solid.Vec
	Entrance bool // a view that shows it is preferred
}

// holesOf are the holes of a part in the pose that it has in the picture.
func holesOf(q box.Piece) []Hole {
	var out []Hole
	f := q.Pose
	outer := q.Panel.Face == box.FromOuter
	w := 0.0
	if !outer {
		w = -float64(q.Panel.Thickness)
	}
	for _, op := range q.Panel.Ops {
		if op.Side != box.SideThrough || !op.InSolid || op.InOutline { // a notch is no hole
			continue
		}
		r := op.Region
		if !outer && op.Bottom != nil {
			r = op.Bottom
		}
		for _, c := range r {
			if c.Area() <= 0 {
				continue
			}
			h := Hole{Entrance: op.Use == box.UseEntrance}
			for _, p := range c.Flatten(1) {
				h.Rim = append(h.Rim, f.Out(solid.Vec{X: p.X, Y: p.Y, Z: w}))
			}
			if !outer { // seen from behind, anticlockwise becomes clockwise
				for i, j := 0, len(h.Rim)-1; i < j; i, j = i+1, j-1 {
					h.Rim[i], h.Rim[j] = h.Rim[j], h.Rim[i]
				}
			}
			out = append(out, h)
		}
	}
	return out
}

// normal is the unit normal of the rim's plane.
func (h Hole) normal() solid.Vec {
	var n solid.Vec
	for i := range h.Rim {
		n = n.Add(h.Rim[i].Cross(h.Rim[(i+1)%len(h.Rim)]))
	}
	if n.Len() == 0 {
		return n
	}
	return n.Unit()
}

// points are spread over the hole, in its rim's plane, and round it a little way
// off: a hole whose rim just comes out from under the eaves looks like a fault.
func (h Hole) points() []solid.Vec {
	if len(h.Rim) < 3 {
		return nil
	}
	const across = 5
	n := h.normal()
	u := h.Rim[1].Sub(h.Rim[0])
	if u.Len() == 0 || n.Len() == 0 {
		return nil
	}
	f := solid.Frame{O: h.Rim[0], U: u.Unit(), V: n.Cross(u.Unit()), W: n}
	var flat []outline.Point
	for _, p := range h.Rim {
		q := f.In(p)
		flat = append(flat, outline.Point{X: q.X, Y: q.Y})
	}
	c := outline.Polygon(flat...)
	b := c.Extents()
	var out []solid.Vec
	mid := b.Centre()
	for _, p := range flat {
		out = append(out, f.Out(solid.Vec{X: mid.X + float64(1.1*(p.X-mid.X)), Y: mid.Y + float64(1.1*(p.Y-mid.Y))}))
	}
	for iy := range across {
		for ix := range across {
			p := outline.Point{
				X: b.Min.X + float64(b.Width()*(float64(ix)+0.5))/across,
				Y: b.Min.Y + float64(b.Height()*(float64(iy)+0.5))/across,
			}
			if c.Contains(p, 0) == outline.Inside {
				out = append(out, f.Out(solid.Vec{X: p.X, Y: p.Y}))
			}
		}
	}
	return out
}

// hatch is a hole as it lies on the screen.
type hatch struct {
	owner  int
	rim    []seg
	lo, hi pt
	n      solid.Vec
	d      float64 // n.p = d in its plane
	nd     float64
}

// hatches are the holes of all solids that are not edge-on.
func (s *scene) hatches() []hatch {
	var out []hatch
	for i, q := range s.solids {
		for _, h := range q.Holes {
			if len(h.Rim) < 3 {
				continue
			}
			c := hatch{owner: i, n: h.normal(), lo: pt{math.Inf(1), math.Inf(1)}, hi: pt{math.Inf(-1), math.Inf(-1)}}
			c.nd = c.n.Dot(s.ax.d)
			if !(math.Abs(c.nd) > 1e-6) {
				continue
			}
			c.d = c.n.Dot(h.Rim[0].Add(q.Shift))
			for k := range h.Rim {
				g := seg{s.ax.screen(h.Rim[k].Add(q.Shift)), s.ax.screen(h.Rim[(k+1)%len(h.Rim)].Add(q.Shift))}
				c.rim = append(c.rim, g)
				c.lo, c.hi = lower(c.lo, g.a), upper(c.hi, g.a)
			}
			out = append(out, c)
		}
	}
	return out
}

// through reports whether a point of a solid is seen through a hole of another
// one: the line of sight passes the hole before it comes to the point.
func (s *scene) through(hs []hatch, owner int, p solid.Vec) bool {
	q := s.ax.screen(p)
	for i := range hs {
		h := &hs[i]
		if h.owner == owner || q.x < h.lo.x || q.x > h.hi.x || q.y < h.lo.y || q.y > h.hi.y {
			continue
		}
		// How far towards the viewer the plane is met.
		if (h.d-h.n.Dot(p))/h.nd > flat && (&face{rims: h.rim}).covers(q) {
			return true
		}
	}
	return false
}
