package box

import (
	"errors"
	"math"

	"holt.example/box/outline"
)

// shapeOutline draws a shape around its own origin.
func shapeOutline(c *collector, path string, s Shape) (outline.Contour, bool) {
	n := len(c.ps)
	switch s := s.(type) {
	case nil:
		c.add(Problem{Path: path, Code: "missing", Why: "say the shape of the opening", Try: "box.Round{Diameter: 32}"})
	case Round:
		if c.length(path+".Round.Diameter", s.Diameter, "diameter of a round hole") {
			return outline.Circle(outline.Point{}, float64(s.Diameter)), true
		}
	case Rect:
		c.length(path+".Rect.Width", s.Width, "width of an opening")
		c.length(path+".Rect.Height", s.Height, "height of an opening")
		most := math.Min(float64(s.Width), float64(s.Height)) / 2
		c.within(path+".Rect.Corner", float64(s.Corner), 0, most, "mm", "radius of the corners, at most half the smaller side")
		if len(c.ps) == n {
			return outline.RoundedRectangle(-float64(s.Width)/2, -float64(s.Height)/2, float64(s.Width)/2, float64(s.Height)/2, float64(s.Corner)), true
		}
	case Slot:
		c.length(path+".Slot.Width", s.Width, "width of a slot")
		c.length(path+".Slot.Height", s.Height, "height of a slot")
		if len(c.ps) == n {
			return outline.Slot(outline.Point{}, float64(s.Width), float64(s.Height)), true
		}
	case Freeform:
		if checkOutline(c, path+".Freeform.Outline", s.Outline) {
			return s.Outline, true
		}
	default:
		c.addf(path, "unknown-value", "%T is not a shape", s)
	}
	return nil, false
}

// checkOutline sees that a contour given by the user is sound.
func checkOutline(c *collector, path string, o outline.Contour) bool {
	if err := o.Check(); err != nil {
		why := err.Error()
		var f *outline.Fault
		if errors.As(err, &f) {
			why = f.Error()
		}
		c.add(Problem{Path: path, Code: "outline", Why: why})
		return false
	}
	if o.Area() <= 0 {
		c.add(Problem{Path: path, Code: "outline", Why: "the outline runs clockwise: list it anticlockwise"})
		return false
	}
	e := o.Extents()
	for _, x := range []float64{e.Min.X, e.Min.Y, e.Max.X, e.Max.Y} {
		if !c.within(path, x, -maxLength, maxLength, "mm", "a place on the outline") {
			return false
		}
	}
	return true
}
