package stl

import (
	"errors"
	"fmt"
	"io"

	"holt.example/box"
	"holt.example/box/solid"
)

// Options say how meshes are written. The zero value is binary, every part in
// its place in the world, opened as the plan's poses say.
type Options struct {
	// ASCII writes text, some five times as long. Every part is then a solid
	// with its name.
	ASCII bool
	// Flat lays a single part down on its panel: x and y are u and v, the
	// machined face is at z = 0 and the part below it. Write refuses it, since
	// all parts would lie in the same place.
	Flat bool
}

// Solid is a mesh with a name.
type Solid struct {
	Name string
	Mesh *solid.Mesh
}

var (
	errNoPlan = errors.New("stl: no plan")
	errFlat   = errors.New("stl: Flat is for a single part")
)

// Write writes all parts of a plan, in plan order.
func Write(w io.Writer, plan *box.Plan, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	if o.Flat {
		return errFlat
	}
	var solids []Solid
	for _, p := range plan.Pieces() {
		s, err := solidOf(plan, p, o)
		if err != nil {
			return err
		}
		solids = append(solids, s)
	}
	return Encode(w, plan.Name(), solids, o)
}

// WritePart writes one part of a plan. An unknown part is a box.Problem.
func WritePart(w io.Writer, plan *box.Plan, part box.Part, o Options) error {
	if plan == nil {
		return errNoPlan
	}
	p, ok := plan.Piece(part)
	if !ok {
		return fmt.Errorf("stl: %w", box.Problem{Path: name(string(part), 80), Code: "unknown-part", Why: "the plan has no such part"})
	}
	s, err := solidOf(plan, p, o)
	if err != nil {
		return err
	}
	return Encode(w, plan.Name()+" "+string(part), []Solid{s}, o)
}

// solidOf is the mesh of a part in its place.
func solidOf(plan *box.Plan, p box.Piece, o Options) (Solid, error) {
	m, err := plan.Mesh(p.Part)
	if err != nil {
		return Solid{}, fmt.Errorf("stl: part %.80q: %w", string(p.Part), err)
	}
	return Solid{string(p.Part), place(m, p, o)}, nil
}

// place moves a mesh from the closed box to where it is wanted; one that stays
// is returned as it is.
func place(m *solid.Mesh, p box.Piece, o Options) *solid.Mesh {
	to := p.Pose
	if o.Flat {
		to = solid.World()
	}
	if to == p.Home {
		return m
	}
	c := &solid.Mesh{Vertices: make([]solid.Vec, len(m.Vertices)), Triangles: m.Triangles}
	for i, v := range m.Vertices {
		c.Vertices[i] = to.Out(p.Home.In(v))
	}
	return c
}

// Encode writes meshes one after the other: in binary as one list of triangles
// under the title, in text as one solid each.
func Encode(w io.Writer, title string, solids []Solid, o Options) error {
	var b []byte
	if !o.ASCII {
		b = header(title)
	}
	total := 0
	for _, s := range solids {
		if s.Mesh == nil {
			return fmt.Errorf("stl: part %.80q: no mesh", s.Name)
		}
		facets, err := round(s.Mesh, !o.ASCII)
		if err != nil {
			return fmt.Errorf("stl: part %.80q: %w", s.Name, err)
		}
		total += len(facets)
		if o.ASCII {
			b = appendText(b, s.Name, facets)
		} else {
			b = appendBinary(b, facets)
		}
	}
	if total == 0 {
		return errors.New("stl: nothing to write")
	}
	if !o.ASCII {
		setCount(b, total)
	}
	if _, err := w.Write(b); err != nil {
		return fmt.Errorf("stl: %w", err)
	}
	return nil
}
