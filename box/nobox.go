package box

import "fmt"

// checkNoBox looks at a design of free parts alone: what needs a box is a problem
// there, and features go onto free parts. Were it left out silently, a forgotten
// Size would quietly make a design without its box.
func (d Design) checkNoBox(c *collector) {
	for _, x := range []struct {
		path  string
		there bool
		what  string
	}{
		{"Footprint", d.Footprint != nil, "the footprint is that of a box"},
		{"Walls", len(d.Walls) > 0, "walls belong to a box"},
		{"Roof", d.Roof != nil && d.Roof != NoRoof{}, "a roof is that of a box"},
		{"Floor", d.Floor != nil && d.Floor != NoFloor{}, "a floor is that of a box"},
		{"Joints", len(d.Joints) > 0, "joints are between the parts of a box"},
		{"Inner", len(d.Inner) > 0, "inner parts stand in a box"},
		{"Outer", len(d.Outer) > 0, "outer elements are fixed to a box"},
		{"Opens", len(d.Opens) > 0, "what opens is a part of a box"},
		{"MadeUp", len(d.MadeUp) > 0, "made-up parts are those of a box"},
	} {
		if x.there {
			c.add(Problem{Path: x.path, Code: "no-box", Why: x.what + ", and without a size this design has free parts only", Try: "Size: box.Cavity{...}"})
		}
	}
	free, names := map[Part]bool{}, []string{}
	for _, f := range d.Free {
		free[FreePart(f.Name)] = true
		names = append(names, string(FreePart(f.Name)))
	}
	s := &shell{d: &d, c: c}
	for i, f := range d.Features {
		path := fmt.Sprintf("Features[%d]", i)
		switch f.(type) {
		case Cut, Engrave, Text, Pattern, Rail, RoundCorners, Scallops, Edging, PartMarks:
			form := f.(form)
			form.lower(s, typed(path, f), map[Part]*part{})
			if m, ok := f.(PartMarks); ok && m.On == nil {
				c.add(Problem{Path: typed(path, f) + ".On", Code: "missing", Why: "say which free parts are marked"})
			}
			for _, on := range form.on(s) {
				if !free[on.part] {
					s.unknown(typed(path, f)+on.field, on.part, names)
				}
			}
		case Entrance, Vents, Drains, CornerCuts, form:
			c.add(Problem{Path: typed(path, f), Code: "no-box", Why: "this feature goes onto a part of a box, and without a size this design has free parts only", Try: "box.Cut"})
		default:
			c.addf(path, "unknown-value", "%T is not a feature", f)
		}
	}
}
