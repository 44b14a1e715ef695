package sdf

import (
	"errors"
	"fmt"
	"math"

	"github.com/deadsy/sdfx/sdf"
	v3 "github.com/deadsy/sdfx/vec/v3"

	"holt.example/box"
	"holt.example/box/solid"
)

// Model is the whole box, or the named parts of it, as it stands: in world
// coordinates, mm. A part that the plan does not have is an error.
func Model(plan *box.Plan, parts ...box.Part) (sdf.SDF3, error) {
	if plan == nil {
		return nil, errors.New("sdf: no plan")
	}
	if len(parts) == 0 {
		for _, q := range plan.Pieces() {
			parts = append(parts, q.Part)
		}
	}
	var u union
	for _, p := range parts {
		m, err := PartModel(plan, p)
		if err != nil {
			return nil, err
		}
		u.add(m)
	}
	if len(u.of) == 0 {
		return nil, errors.New("sdf: the plan has no parts")
	}
	return &u, nil
}

// PartModel is one part of a box, where it stands in the world.
func PartModel(plan *box.Plan, part box.Part) (sdf.SDF3, error) {
	if plan == nil {
		return nil, errors.New("sdf: no plan")
	}
	q, ok := plan.Piece(part)
	if !ok {
		return nil, fmt.Errorf("sdf: the plan has no part %q", string(part))
	}
	m, err := Body(q.Body)
	if err != nil {
		return nil, fmt.Errorf("sdf: %s: %w", q.Part, err)
	}
	if q.Pose == q.Home {
		return m, nil
	}
	return moved(m, q.Home, q.Pose), nil
}

// Body is the model of any body.
func Body(b solid.Body) (sdf.SDF3, error) {
	c := solid.Intersect(b.Base)
	if c.Empty() {
		return nil, errors.New("sdf: nothing is inside all planes of the base")
	}
	m := &body{base: b.Base, cutters: b.Cutters}
	first := true
	for _, f := range c.Faces {
		if f.ID < 0 {
			return nil, errors.New("sdf: the planes of the base do not bound it")
		}
		for _, p := range f.Loop {
			v := v3.Vec(p)
			if first {
				m.box, first = sdf.Box3{Min: v, Max: v}, false
			}
			m.box = m.box.Include(v)
		}
	}
	for i, p := range b.Prisms {
		q, err := newPrism(p)
		if err != nil {
			return nil, fmt.Errorf("sdf: prism %d: %w", i, err)
		}
		m.prisms = append(m.prisms, q)
	}
	return m, nil
}

// body is a convex solid less cutters and prisms.
type body struct {
	base    []solid.Plane
	cutters []solid.Cutter
	prisms  []*prism
	box     sdf.Box3
}

// BoundingBox is that of the base, which the cuts may not fill.
func (m *body) BoundingBox() sdf.Box3 { return m.box }

// Evaluate is the greatest height over the base's planes, and over the
// outsides of all that is taken away. Each of those changes by at most the way
// gone, and so does the greatest of them: being zero on the surface, it is
// nowhere farther from zero than the surface is.
func (m *body) Evaluate(p v3.Vec) float64 {
	v := solid.Vec(p)
	d := highest(m.base, v)
	for _, c := range m.cutters {
		d = math.Max(d, -highest(c, v))
	}
	for _, q := range m.prisms {
		d = q.cut(v, d)
	}
	return d
}

// highest is the greatest height of a point above any of the planes. It is
// the distance to the solid from inside, and at most that from outside. No
// plane at all takes away nothing.
func highest(planes []solid.Plane, v solid.Vec) float64 {
	if len(planes) == 0 {
		return math.Inf(1)
	}
	h := math.Inf(-1)
	for _, s := range planes {
		h = math.Max(h, s.At(v))
	}
	return h
}

// union is several models together.
type union struct {
	of  []sdf.SDF3
	at  []sdf.Box3
	box sdf.Box3
}

func (u *union) add(m sdf.SDF3) {
	b := m.BoundingBox()
	if len(u.of) == 0 {
		u.box = b
	} else {
		u.box = u.box.Extend(b)
	}
	u.of, u.at = append(u.of, m), append(u.at, b)
}

func (u *union) BoundingBox() sdf.Box3 { return u.box }

// Evaluate is the least of the parts' values. A part whose box is farther off
// than a value already found is not asked: it is farther off itself.
func (u *union) Evaluate(p v3.Vec) float64 {
	d := math.Inf(1)
	for i, m := range u.of {
		if away(u.at[i], p) < d {
			d = math.Min(d, m.Evaluate(p))
		}
	}
	return d
}

// away is the distance from a point to a box, 0 inside.
func away(b sdf.Box3, p v3.Vec) float64 {
	x := math.Max(0, math.Max(b.Min.X-p.X, p.X-b.Max.X))
	y := math.Max(0, math.Max(b.Min.Y-p.Y, p.Y-b.Max.Y))
	z := math.Max(0, math.Max(b.Min.Z-p.Z, p.Z-b.Max.Z))
	return math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z))
}

// pose is a model carried from one frame to another.
type pose struct {
	of       sdf.SDF3
	from, to solid.Frame
	box      sdf.Box3
}

func moved(m sdf.SDF3, from, to solid.Frame) *pose {
	q := &pose{of: m, from: from, to: to}
	b := m.BoundingBox()
	for i := range 8 {
		c := b.Min
		if i&1 != 0 {
			c.X = b.Max.X
		}
		if i&2 != 0 {
			c.Y = b.Max.Y
		}
		if i&4 != 0 {
			c.Z = b.Max.Z
		}
		v := v3.Vec(to.Out(from.In(solid.Vec(c))))
		if i == 0 {
			q.box = sdf.Box3{Min: v, Max: v}
		}
		q.box = q.box.Include(v)
	}
	return q
}

func (q *pose) BoundingBox() sdf.Box3 { return q.box }

func (q *pose) Evaluate(p v3.Vec) float64 {
	return q.of.Evaluate(v3.Vec(q.from.Out(q.to.In(solid.Vec(p)))))
}
