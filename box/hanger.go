package box

import "fmt"

// Hanger is the screw or nail in each hole that a box hangs by. The zero value says
// nothing of it: the list then asks for what goes through the hole.
type Hanger struct {
	What             string // "screw, stainless steel", "nail, aluminium" ...; "" is "screw"
	Diameter, Length MM     // 0 is not said; the diameter is no more than the hole's width
	// Proud is how far its head stands off the box: an aluminium nail in a living
	// tree is left proud, so that the tree can grow. 0 to 100.
	Proud MM
}

// check looks at the numbers; hole is the width of the narrowest hole.
func (h Hanger) check(c *collector, path string, hole float64) {
	if h.What != "" {
		c.name(path+".What", h.What)
	}
	if h.Diameter != 0 {
		c.within(path+".Diameter", float64(h.Diameter), 0.5, hole, "mm", "diameter of what goes through a hole of this width")
	}
	if h.Length != 0 {
		c.within(path+".Length", float64(h.Length), 5, 400, "mm", "length of a screw or nail; 0 is not said")
	}
	c.within(path+".Proud", float64(h.Proud), 0, 100, "mm", "how far a head stands off the box")
}

// hang lists n of them for a hole; the hint is for who has not said what they are.
func (s *shell) hang(n int, h Hanger, hole, what string, where []Part, why, hint string) {
	f := Fitting{What: what, Count: n, Size: "for a hole " + hole, Where: where, Why: why + hint, Hangs: true}
	if h != (Hanger{}) {
		f.Why = why
		f.What = h.What
		if f.What == "" {
			f.What = "screw"
		}
		f.Length, f.Width, f.Proud = h.Length, h.Diameter, h.Proud
		switch {
		case h.Diameter > 0 && h.Length > 0:
			f.Size = num(float64(h.Diameter)) + " x " + num(float64(h.Length))
		case h.Diameter > 0:
			f.Size = num(float64(h.Diameter)) + " thick"
		case h.Length > 0:
			f.Size += ", " + num(float64(h.Length)) + " long"
		}
		if h.Proud > 0 {
			f.Why += fmt.Sprintf("; left %s proud, so that the tree can grow", num(float64(h.Proud)))
		}
	}
	s.fit(f)
}

// narrowest is the width of what a shape lets through.
func narrowest(s Shape) float64 {
	if k, ok := s.(Keyhole); ok {
		return float64(k.Slot)
	}
	quiet := &collector{}
	o, ok := shapeOutline(quiet, "", s)
	if !ok {
		return maxLength // reported with the shape
	}
	e := o.Extents()
	return min(e.Width(), e.Height())
}
