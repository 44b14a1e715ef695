package box

import "fmt"

// opener is an opening that can look at itself.
type opener interface {
	Opening
	// check looks at its numbers before there is a part to hold against them.
	check(c *collector, path string)
	// on lists the parts that it names, by the field that names them.
	on(s *shell) []onPart
}

// eachOpening calls do for the openings, with their places in the design.
func (d *Design) eachOpening(do func(path string, o opener)) {
	for i, o := range d.Opens {
		if o, ok := o.(opener); ok && !isPointer(o) {
			do(openPath(i, o), o)
		}
	}
}

func openPath(i int, o Opening) string {
	return typed(fmt.Sprintf("Opens[%d]", i), o)
}

// checkOpens looks at the numbers of openings.
func (d *Design) checkOpens(c *collector) {
	for i, o := range d.Opens {
		if _, ok := o.(opener); !ok || isPointer(o) {
			c.strange(fmt.Sprintf("Opens[%d]", i), o, "opening")
		}
	}
	names := map[string]bool{}
	for _, f := range d.Free {
		names[f.Name] = true
	}
	d.eachOpening(func(path string, o opener) {
		o.check(c, path)
		if name := openName(o); name != "" {
			if names[name] {
				c.addf(path+".Name", "twice", "another free part has the name %.60q", name)
			}
			names[name] = true
		}
	})
}

// openName is the name of the free part that an opening makes, "" for none.
func openName(o Opening) string {
	or := func(name, dflt string) string {
		if name == "" {
			return dflt
		}
		return name
	}
	switch o := o.(type) {
	case Inspection:
		return or(o.Name, "cover")
	case Stopper:
		return or(o.Name, "stopper")
	case TurnButton:
		return or(o.Name, "button")
	}
	return ""
}

// optional checks a number that may be left out.
func (c *collector) optional(path string, x, lo, hi float64, unit, why string) bool {
	return x == 0 || c.within(path, x, lo, hi, unit, why+"; 0 leaves it to the library")
}

const maxPlay = 20.0

func (c *collector) openAngle(path string, a Deg) {
	c.optional(path+".Angle", float64(a), 1, 270, "deg", "angle to which a part opens")
}

func (c *collector) openPlay(path string, play MM) {
	c.within(path+".Play", float64(play), 0, maxPlay, "mm", "gap round a part that opens")
}

func (c *collector) headroom(path string, h MM) {
	c.within(path+".Headroom", float64(h), 0, 300, "mm", "gap under the roof")
}

func (o Hinged) check(c *collector, path string) {
	c.openAngle(path, o.Angle)
	c.openPlay(path, o.Play)
	c.headroom(path, o.Headroom)
	switch h := o.Hinge.(type) {
	case nil:
	case RubberStrip:
		c.optional(path+".Hinge.RubberStrip.Width", float64(h.Width), 20, 300, "mm", "width of the strip")
		c.optional(path+".Hinge.RubberStrip.Thickness", float64(h.Thickness), 0.5, 10, "mm", "thickness of the strip")
	case Leather:
		c.optional(path+".Hinge.Leather.Width", float64(h.Width), 10, 300, "mm", "width of a piece")
		c.optional(path+".Hinge.Leather.Length", float64(h.Length), 20, 300, "mm", "length of a piece")
		c.optional(path+".Hinge.Leather.Thickness", float64(h.Thickness), 0.5, 10, "mm", "thickness of the leather")
		c.optional(path+".Hinge.Leather.Count", float64(h.Count), 1, 20, "", "number of pieces")
	case Butts:
		c.optional(path+".Hinge.Butts.Height", float64(h.Height), 10, 300, "mm", "height of a leaf")
		c.optional(path+".Hinge.Butts.Width", float64(h.Width), 5, 300, "mm", "width of a leaf")
		c.optional(path+".Hinge.Butts.Thickness", float64(h.Thickness), 0.3, 5, "mm", "thickness of a leaf")
		c.optional(path+".Hinge.Butts.Count", float64(h.Count), 2, 10, "", "number of hinges")
		c.optional(path+".Hinge.Butts.Screws", float64(h.Screws), 1, 6, "", "screws in a leaf")
		if h.Metal != "" {
			c.name(path+".Hinge.Butts.Metal", h.Metal)
		}
	default:
		c.strange(path+".Hinge", h, "hinge")
	}
}

func (o Pivoted) check(c *collector, path string) {
	c.optional(path+".Below", float64(o.Below), 1, maxLength, "mm", "distance of the nails from the top")
	c.openAngle(path, o.Angle)
	c.openPlay(path, o.Play)
	c.headroom(path, o.Headroom)
	c.optional(path+".Diameter", float64(o.Diameter), 1, 12, "mm", "diameter of the nails")
	c.optional(path+".Length", float64(o.Length), 5, 500, "mm", "length of the nails")
}

func (o Sliding) check(c *collector, path string) {
	c.optional(path+".Depth", float64(o.Depth), 0.1, maxThickness, "mm", "depth of the edges in the grooves")
	c.optional(path+".Play", float64(o.Play), 0.05, maxPlay, "mm", "play in the grooves")
	c.optional(path+".Beyond", float64(o.Beyond), 1, maxThickness, "mm", "how far the neighbours run on past the part")
}

func (o Removable) check(c *collector, path string) {
	c.optional(path+".Screws", float64(o.Screws), 1, 20, "", "screws along an edge")
	c.optional(path+".Diameter", float64(o.Diameter), 1, 12, "mm", "diameter of the screws")
	c.openPlay(path, o.Play)
}

func (o Inspection) check(c *collector, path string) {
	c.name(path+".Name", openName(o))
	c.optional(path+".Width", float64(o.Width), 10, maxLength, "mm", "width of the opening")
	c.optional(path+".Height", float64(o.Height), 10, maxLength, "mm", "height of the opening")
	c.offset(path+".Right", o.Right, "place of the opening, from the middle of the wall")
	c.optional(path+".Sill", float64(o.Sill), 10, maxLength, "mm", "height of the sill that holds the nest back")
	c.optional(path+".Lap", float64(o.Lap), 8, 300, "mm", "lap of the cover over the wall")
	c.board(path+".Board", o.Board, false)
}

func (o Stopper) check(c *collector, path string) {
	c.name(path+".Name", openName(o))
	c.optional(path+".Lap", float64(o.Lap), 2, 100, "mm", "lap of the plate over the edge of the entrance")
	c.board(path+".Board", o.Board, false)
}

func (o TurnButton) check(c *collector, path string) {
	c.name(path+".Name", openName(o))
	c.offset(path+".Along", o.Along, "place of the button, from the middle of the seam")
	c.optional(path+".Length", float64(o.Length), 20, 300, "mm", "length of the button")
	c.optional(path+".Width", float64(o.Width), 8, 100, "mm", "width of the button")
	c.board(path+".Board", o.Board, false)
}

func (o HookAndEye) check(c *collector, path string) {
	c.offset(path+".Along", o.Along, "place of the hook, from the middle of the seam")
}

func (o Hinged) on(s *shell) []onPart {
	out := []onPart{{".Part", o.Part}}
	if at := s.hangsAt(o); at != "" {
		out = append(out, onPart{".At", at})
	}
	return append(out, onParts(".With", o.With)...)
}

func (o Pivoted) on(*shell) []onPart {
	return append([]onPart{{".Part", o.Part}}, onParts(".With", o.With)...)
}
func (o Sliding) on(*shell) []onPart {
	return append([]onPart{{".Part", o.Part}}, onParts(".With", o.With)...)
}
func (o Removable) on(*shell) []onPart {
	return append([]onPart{{".Part", o.Part}}, onParts(".With", o.With)...)
}
func (o Inspection) on(*shell) []onPart { return []onPart{{".On", o.On}} }
func (o Stopper) on(s *shell) []onPart  { return []onPart{{".On", s.frontOr(o.On)}} }
func (o TurnButton) on(*shell) []onPart { return []onPart{{".Part", o.Part}, {".At", o.At}} }
func (o HookAndEye) on(*shell) []onPart { return []onPart{{".Part", o.Part}, {".At", o.At}} }

// hangsAt is the neighbour at which a part hangs, "" where it must be said.
func (s *shell) hangsAt(o Hinged) Part {
	if o.At != "" {
		return o.At
	}
	switch o.Part {
	case Roof, Floor, Left, Right:
		if s.rect() {
			return Back
		}
	case Front, Back:
		return Left
	case RoofLeft, RoofRight, RoofFront, RoofBack:
		if _, gable := s.d.Roof.(Gable); gable {
			return map[Part]Part{RoofLeft: RoofRight, RoofRight: RoofLeft, RoofFront: RoofBack, RoofBack: RoofFront}[o.Part]
		}
	}
	return ""
}

// checkOpenParts looks at the parts that openings name.
func (s *shell) checkOpenParts(known map[Part]bool, solids []string) {
	free := map[Part]bool{}
	for _, f := range s.d.Free {
		free[FreePart(f.Name)] = true
	}
	shell := map[Part]bool{}
	var shells []string
	for i := range s.faces {
		if f := &s.faces[i]; !f.open {
			shell[f.part] = true
			shells = append(shells, string(f.part))
		}
	}
	moves := map[Part]string{}
	s.d.eachOpening(func(path string, o opener) {
		sound := true
		if name := openName(o); name != "" && known[FreePart(name)] {
			s.c.addf(path+".Name", "twice", "another part has the name %.60q", name)
		}
		for _, on := range o.on(s) {
			with := len(on.field) > 5 && on.field[:6] == ".With["
			switch {
			case with && !known[on.part] && !free[on.part]:
				s.unknown(path+on.field, on.part, solids)
			case with && shell[on.part]:
				s.c.addf(path+on.field, "fixed", "%s belongs to the box: only inner and free parts move with a part that opens", on.part)
			case !with && !shell[on.part]:
				s.unknown(path+on.field, on.part, shells)
				sound = false
			}
		}
		if h, ok := o.(Hinged); ok && shell[h.Part] && s.hangsAt(h) == "" {
			s.c.add(Problem{Path: path + ".At", Code: "missing", Why: fmt.Sprintf("say at which neighbour %.60q hangs", string(h.Part))})
		}
		if p := movedPart(o); p != "" && sound {
			if first, twice := moves[p]; twice {
				s.c.addf(path+".Part", "twice", "%s opens already, by %s", p, first)
			}
			moves[p] = path
		}
	})
}

// movedPart is the part of the shell that an opening moves, "" if it moves none.
func movedPart(o Opening) Part {
	switch o := o.(type) {
	case Hinged:
		return o.Part
	case Pivoted:
		return o.Part
	case Sliding:
		return o.Part
	case Removable:
		return o.Part
	}
	return ""
}
