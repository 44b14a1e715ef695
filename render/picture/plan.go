package picture

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
)

// facets is how far, in mm, the facets of round holes may lie from the true
// curve in a picture: on paper, at the usual scales, a hundredth of a mm.
const facets = 0.03

// Assembled draws the box as it stands, closed or as posed.
func Assembled(plan *box.Plan, o Options) (*Picture, error) {
	o.Exploded = false
	return New(plan, o)
}

// Exploded draws the parts apart, each moved outward from its place: walls
// along their normals, the floor down, the roof up and outward.
func Exploded(plan *box.Plan, o Options) (*Picture, error) {
	o.Exploded = true
	return New(plan, o)
}

// New draws a plan: exploded if the options say so.
func New(plan *box.Plan, o Options) (*Picture, error) {
	if plan == nil {
		return nil, errors.New("picture: no plan")
	}
	filled, err := o.filled()
	if err != nil {
		return nil, err
	}
	solids, fronts, err := Solids(plan)
	if err != nil {
		return nil, err
	}
	note := "assembled"
	if o.Exploded {
		note = "exploded"
		Explode(solids, filled.Spread)
	}
	return Draw(plan.Name(), note, solids, fronts, o)
}

// Solids are a plan's parts in plan order, in place, and the directions that
// the entrances face.
func Solids(plan *box.Plan) (solids []Solid, fronts []solid.Vec, err error) {
	number, name := map[box.Part]int{}, map[box.Part]string{}
	for _, g := range plan.Groups() {
		words := make([]string, len(g.Parts))
		for i, p := range g.Parts {
			words[i] = string(p)
		}
		text := strings.Join(words, ", ")
		for _, p := range g.Parts {
			number[p], name[p] = g.Number, text
		}
	}
	for _, q := range plan.Pieces() {
		m, err := q.Body.Mesh(facets)
		if err != nil {
			return nil, nil, fmt.Errorf("picture: %s: %w", q.Part, err)
		}
		if q.Pose != q.Home {
			m = posed(m, q.Home, q.Pose)
		}
		out := q.Pose.W
		if q.Panel.Face != box.FromOuter {
			out = out.Scale(-1)
		}
		g := q.Panel.Grain
		solids = append(solids, Solid{
			Part: q.Part, Number: number[q.Part], Key: name[q.Part], Mesh: m, Out: out,
			Grain: q.Pose.U.Scale(g[0]).Add(q.Pose.V.Scale(g[1])),
			joint: prismEdges(q),
		})
		for _, op := range q.Panel.Ops {
			if op.Use == box.UseEntrance && op.InSolid {
				fronts = append(fronts, out)
				break
			}
		}
	}
	return solids, fronts, nil
}

// posed is the mesh moved from one frame to another.
func posed(m *solid.Mesh, from, to solid.Frame) *solid.Mesh {
	c := &solid.Mesh{Vertices: make([]solid.Vec, len(m.Vertices)), Triangles: m.Triangles}
	for i, v := range m.Vertices {
		c.Vertices[i] = to.Out(from.In(v))
	}
	return c
}

// prismEdges tells the edges that lie between two facets of a curved cut from
// real ones, by the true outlines of the part's prisms: an edge along the
// prism's axis is real where the outline has a corner, and only there.
func prismEdges(q box.Piece) func(a, b solid.Vec) bend {
	if len(q.Body.Prisms) == 0 {
		return nil
	}
	back := q.Pose != q.Home
	return func(a, b solid.Vec) bend {
		if back {
			a, b = q.Home.Out(q.Pose.In(a)), q.Home.Out(q.Pose.In(b))
		}
		for _, p := range q.Body.Prisms {
			u, v := p.Frame.In(a), p.Frame.In(b)
			if math.Abs(u.X-v.X) > flat || math.Abs(u.Y-v.Y) > flat {
				continue // not along the axis
			}
			if w := onOutline(p.Outline, (u.X+v.X)/2, (u.Y+v.Y)/2); w != unknown {
				return w
			}
		}
		return unknown
	}
}

// onOutline says what the outline does at a point: smooth along an arc or
// where one runs on into the next without a corner, sharp at a corner, unknown
// away from it.
func onOutline(c outline.Contour, x, y float64) bend {
	for i, v := range c {
		w := c[(i+1)%len(c)]
		before := c[(i+len(c)-1)%len(c)]
		if math.Hypot(v.X-x, v.Y-y) < 2*facets {
			// Directions in which the outline arrives and leaves: an arc's
			// chord turned by half its sweep, 2 atan(bulge).
			ax, ay := tangent(before, v, before.Bulge, 1)
			bx, by := tangent(v, w, v.Bulge, -1)
			if float64(ax*bx)+float64(ay*by) > 0.999 {
				return smooth
			}
			if math.Hypot(v.X-x, v.Y-y) < 10*flat {
				return sharp
			}
		}
		if v.Bulge == 0 {
			continue
		}
		// Centre and radius from the bulge b over the chord: the centre lies
		// (1-b^2)/(4b) chords to the left of its middle.
		dx, dy := w.X-v.X, w.Y-v.Y
		k := (1 - float64(v.Bulge*v.Bulge)) / float64(4*v.Bulge)
		cx, cy := (v.X+w.X)/2-float64(k*dy), (v.Y+w.Y)/2+float64(k*dx)
		r := math.Hypot(v.X-cx, v.Y-cy)
		if math.Abs(math.Hypot(x-cx, y-cy)-r) > 2*facets {
			continue
		}
		// On the arc's side of its chord.
		side := float64(dx*(y-v.Y)) - float64(dy*(x-v.X))
		if side == 0 || (side < 0) == (v.Bulge > 0) {
			return smooth
		}
	}
	return unknown
}

// tangent is the direction of the segment from v to w at its end (sign 1) or
// its start (sign -1).
func tangent(v, w outline.Vertex, bulge float64, sign float64) (x, y float64) {
	dx, dy := w.X-v.X, w.Y-v.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return 0, 0
	}
	dx, dy = dx/n, dy/n
	// Turned by a = 2 atan(b): cos a = (1-b2)/(1+b2), sin a = 2b/(1+b2).
	b2 := float64(bulge * bulge)
	c, s := (1-b2)/(1+b2), float64(sign*2*bulge)/(1+b2)
	return float64(dx*c) - float64(dy*s), float64(dx*s) + float64(dy*c)
}
