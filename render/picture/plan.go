package picture

import (
	"errors"
	"fmt"
	"strings"

	"holt.example/box"
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
			Holes: holesOf(q), Grooves: groovesOf(q),
			Part: q.Part, Of: q.Of, Number: number[q.Part], Key: name[q.Part], Mesh: m, Out: out,
			Grain: q.Pose.U.Scale(g[0]).Add(q.Pose.V.Scale(g[1])),
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
	c := &solid.Mesh{Vertices: make([]solid.Vec, len(m.Vertices)), Triangles: m.Triangles, Surface: m.Surface}
	for i, v := range m.Vertices {
		c.Vertices[i] = to.Out(from.In(v))
	}
	for _, f := range m.Surfaces {
		f.N = to.Out(from.In(from.O.Add(f.N))).Sub(to.O)
		c.Surfaces = append(c.Surfaces, f)
	}
	return c
}
