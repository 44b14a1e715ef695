package box

import (
	"errors"
	"fmt"
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
	case Oval:
		c.length(path+".Oval.Width", s.Width, "width of an oval")
		c.length(path+".Oval.Height", s.Height, "height of an oval")
		if len(c.ps) == n {
			return outline.Oval(outline.Point{}, float64(s.Width), float64(s.Height)), true
		}
	case Keyhole:
		return keyholeOutline(c, path+".Keyhole", s)
	case Arch:
		return archOutline(c, path+".Arch", s)
	case Regular:
		ok := c.within(path+".Regular.Sides", float64(s.Sides), 3, 24, "", "number of sides")
		if ok = c.length(path+".Regular.Across", s.Across, "distance across") && ok; ok {
			half := 180 / float64(s.Sides)
			_, cs := sincos(half)
			return outline.RegularPolygon(outline.Point{}, s.Sides, float64(s.Across)/2/cs, half-90), true
		}
	case Polygon:
		if !c.within(path+".Polygon.Points", float64(len(s.Points)), 3, 1000, "points", "number of corners") {
			return nil, false
		}
		ps := make([]outline.Point, len(s.Points))
		for i, p := range s.Points {
			c.offset(fmt.Sprintf("%s.Polygon.Points[%d].X", path, i), p.X, "place of a corner")
			c.offset(fmt.Sprintf("%s.Polygon.Points[%d].Y", path, i), p.Y, "place of a corner")
			ps[i] = outline.Point{X: float64(p.X), Y: float64(p.Y)}
		}
		if o := outline.Polygon(ps...); len(c.ps) == n && checkOutline(c, path+".Polygon.Points", o) {
			return o, true
		}
	case Freeform:
		if checkOutline(c, path+".Freeform.Outline", s.Outline) {
			return s.Outline, true
		}
	default:
		c.strange(path, s, "shape")
	}
	return nil, false
}

// archOutline is straight up to the springing; the arc over it has the bulge
// rise/(width/2).
func archOutline(c *collector, path string, a Arch) (outline.Contour, bool) {
	n := len(c.ps)
	c.length(path+".Width", a.Width, "width of an arch")
	c.length(path+".Height", a.Height, "height of an arch")
	w, h, rise := float64(a.Width), float64(a.Height), float64(a.Rise)
	if len(c.ps) > n {
		c.atLeast0(path+".Rise", a.Rise, "rise of an arch")
		return nil, false
	}
	if rise == 0 {
		rise = w / 2
		c.within(path+".Height", h, rise, maxLength, "mm", "height of a round-headed arch, at least half its width")
	} else {
		c.within(path+".Rise", rise, 0.1, math.Min(w/2, h), "mm", "rise of an arch, at most half its width and its height; 0 is half its width")
	}
	if len(c.ps) > n {
		return nil, false
	}
	bulge, spring := rise/(w/2), h/2-rise
	o := outline.Contour{{X: -w / 2, Y: -h / 2}, {X: w / 2, Y: -h / 2}, {X: w / 2, Y: spring, Bulge: bulge}, {X: -w / 2, Y: spring}}
	if h-rise <= outline.SideTest {
		o = outline.Contour{{X: -w / 2, Y: -h / 2}, {X: w / 2, Y: -h / 2, Bulge: bulge}}
	}
	return o, true
}

// checkOutline sees that a contour given by the user is sound.
func checkOutline(c *collector, path string, o outline.Contour) bool {
	if len(o) == 0 {
		c.add(Problem{Path: path, Code: "outline", Why: "give an outline, anticlockwise", Try: "outline.Rectangle(0, 0, 60, 40)"})
		return false
	}
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
