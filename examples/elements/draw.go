package main

import (
	"bytes"
	"fmt"
	"slices"

	"holt.example/box"
	"holt.example/box/solid"
	"holt.example/joints"
	"holt.example/render/picture"
)

// design puts the element on its box or board.
func (e element) design() box.Design {
	if d, ok := e.what.(box.Design); ok {
		return d
	}
	return e.on.With(func(d *box.Design) {
		d.Name = e.title
		switch x := e.what.(type) {
		case []box.Feature:
			d.Features = append(d.Features, x...)
		case box.Feature:
			d.Features = append(d.Features, x)
		case box.Footprint: // and a shape
			if d.Size == nil {
				d.Features = append(d.Features, box.Cut{On: box.FreePart("board"), Shape: x.(box.Shape)})
				return
			}
			d.Footprint = x
		case box.Shape:
			d.Features = append(d.Features, box.Cut{On: box.FreePart("board"), Shape: x})
		case []box.Opening:
			d.Opens = append(d.Opens, x...)
		case box.Opening:
			d.Opens = append(d.Opens, x)
		case box.Outer:
			if e.look.inside {
				d.Inner = append(d.Inner, e.what.(box.Inner))
				return
			}
			d.Outer = append(d.Outer, x)
		case box.Inner:
			d.Inner = append(d.Inner, x)
		case box.Free:
			d.Free = append(d.Free, x)
		case box.Wall:
			d.Walls = append(d.Walls, x)
		case []box.Wall:
			d.Walls = append(d.Walls, x...)
		case box.RoofForm:
			d.Roof = x
		case box.FloorForm:
			d.Floor = x
		case box.Size:
			d.Size = x
		case box.Fixing:
			d.Fixings = append(d.Fixings, x)
		case box.MadeUp:
			d.MadeUp = append(d.MadeUp, x)
		case joints.Joint:
			if f, ok := d.Floor.(box.FloorBetween); ok {
				f.Joint = x
				d.Floor = f
				return
			}
			d.Corners.Joint = x
		}
	})
}

// draw resolves the element and takes its picture.
func (e element) draw() (*box.Plan, []byte, error) {
	plan, err := e.design().Resolve()
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", e.title, err)
	}
	shown := plan
	for _, w := range plan.Ways() {
		by := w.Most * e.look.open
		if by == 0 {
			continue
		}
		if w.Turns {
			shown, err = shown.Opened(w.Part, box.Deg(by))
		} else {
			shown, err = shown.Drawn(w.Part, box.MM(min(by, 120)))
		}
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", e.title, err)
		}
	}
	solids, fronts, err := picture.Solids(shown)
	if err != nil {
		return nil, nil, err
	}
	solids = slices.DeleteFunc(solids, func(s picture.Solid) bool {
		in := func(ps []box.Part) bool { return slices.Contains(ps, s.Part) || slices.Contains(ps, s.Of) }
		return in(e.look.off) || e.look.only != nil && !in(e.look.only)
	})
	apart(solids, e.look.apart)
	o := picture.Options{Width: 72, Height: 72, Plain: true, Tint: true}
	if e.look.round != 0 || e.look.up != 0 {
		o.Views = []picture.View{{Name: "chosen", Round: e.look.round, Up: e.look.up}}
	}
	p, err := picture.Draw(e.title, "by holt", solids, fronts, o)
	if err != nil {
		return nil, nil, err
	}
	var b bytes.Buffer
	if err := p.WriteSVG(&b); err != nil {
		return nil, nil, err
	}
	return plan, b.Bytes(), nil
}

// apart draws the solids apart, level, by their distances from their middle.
func apart(solids []picture.Solid, k float64) {
	if k == 0 {
		return
	}
	middle := func(s picture.Solid) solid.Vec {
		lo, hi := s.Mesh.Vertices[0], s.Mesh.Vertices[0]
		for _, v := range s.Mesh.Vertices {
			lo = solid.Vec{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
			hi = solid.Vec{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
		}
		return lo.Lerp(hi, 0.5)
	}
	var sum solid.Vec
	for _, s := range solids {
		sum = sum.Add(middle(s))
	}
	mid := sum.Scale(1 / float64(len(solids)))
	for i := range solids {
		d := middle(solids[i]).Sub(mid)
		solids[i].Shift = solid.Vec{X: d.X, Y: d.Y}.Scale(k)
	}
}
