package box

import (
	"math"

	"holt.example/box/outline"
)

// Tool is a cutter. The zero value means that any cutter that fits will do, or,
// for engraved lines, a sharp V-cutter of 60 degrees.
type Tool struct {
	Diameter MM  // of the widest cut: 0.1 to 200; of a saw, the kerf
	VAngle   Deg // included angle at the tip of a V-cutter, 10 to 170; 0 is a flat cutter
	Tip      MM  // flat at the tip of a V-cutter; 0 is sharp
}

// vTool is what lines are engraved with if nothing is said (common practice).
var vTool = Tool{VAngle: 60}

// WidthAt is the width of the groove that the tool cuts at a depth: for a
// V-cutter w = tip + 2 depth tan(angle/2), as published for routing, else
// its diameter.
func (t Tool) WidthAt(depth MM) MM {
	if t.VAngle == 0 {
		return t.Diameter
	}
	return t.Tip + MM(2*float64(float64(depth)*tan(float64(t.VAngle)/2)))
}

// DepthFor is the depth at which a V-cutter's groove is so wide: depth = (w -
// tip) / (2 tan(angle/2)). It is negative for a groove narrower than the tip, and
// NaN for a flat cutter, which has one width at every depth.
func (t Tool) DepthFor(width MM) MM {
	if t.VAngle == 0 {
		return MM(math.NaN())
	}
	return MM(float64(width-t.Tip) / (2 * tan(float64(t.VAngle)/2)))
}

// check looks at the numbers alone.
func (t Tool) check(c *collector, path string) bool {
	n := len(c.ps)
	if t.Diameter != 0 {
		c.within(path+".Diameter", float64(t.Diameter), 0.1, 200, "mm", "diameter of a cutter; 0 is any")
	}
	if t.VAngle != 0 {
		c.within(path+".VAngle", float64(t.VAngle), 10, 170, "deg", "angle of a V-cutter; 0 is a flat one")
	}
	c.within(path+".Tip", float64(t.Tip), 0, 200, "mm", "flat at the tip of a V-cutter")
	if t.VAngle == 0 && t.Tip != 0 && len(c.ps) == n {
		c.addf(path+".Tip", "contradiction", "only a V-cutter has a tip: say its VAngle")
	}
	return len(c.ps) == n
}

// fits sees that the cutter goes into the outline somewhere.
func (t Tool) fits(c *collector, path string, o outline.Contour) bool {
	if t.Diameter == 0 || t.VAngle != 0 || roomFor(o, float64(t.Diameter)/2) {
		return true
	}
	lo, hi := 0.0, float64(t.Diameter)/2
	for hi-lo > 1e-4 {
		if m := (lo + hi) / 2; roomFor(o, m) {
			lo = m
		} else {
			hi = m
		}
	}
	c.add(Problem{Path: path + ".Diameter", Code: "narrow", Got: num(float64(t.Diameter)), Lo: 0.1, Hi: math.Floor(float64(lo*200)+0.05) / 100, Unit: "mm",
		Why: "the opening is narrower than the cutter"})
	return false
}

// roomFor reports whether a disc of radius r goes into the contour: squares are
// quartered as long as one of their points could be far enough from the
// boundary. A disc that fits by less than 1e-4 mm may pass for one that does.
func roomFor(o outline.Contour, r float64) bool {
	if _, d, ok := o.IsCircle(1e-9); ok {
		return r <= d/2+1e-9
	}
	type square struct {
		c outline.Point
		h float64
	}
	e := o.Extents()
	if math.Min(e.Width(), e.Height()) < 2*r-1e-9 {
		return false
	}
	const slack = 1e-4
	todo := []square{{e.Centre(), math.Max(e.Width(), e.Height()) / 2}}
	for steps := 0; len(todo) > 0 && steps < 100000; steps++ {
		q := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		d := o.Distance(q.c)
		if o.Contains(q.c, 0) != outline.Inside {
			d = -d
		}
		if d >= r-slack {
			return true
		}
		if d+float64(q.h*math.Sqrt2) < r-slack {
			continue
		}
		for _, x := range [2]float64{-0.5, 0.5} {
			for _, y := range [2]float64{-0.5, 0.5} {
				todo = append(todo, square{outline.Point{X: q.c.X + float64(x*q.h), Y: q.c.Y + float64(y*q.h)}, q.h / 2})
			}
		}
	}
	return false
}

// groove settles how wide and deep a line is engraved, and with what. usual is
// the width if nothing is said.
func (c *collector) groove(path string, t Tool, width, depth MM, usual float64) (Tool, float64, float64, bool) {
	n := len(c.ps)
	t.check(c, path+".Tool")
	c.within(path+".Width", float64(width), 0, 200, "mm", "width of a line; 0 follows from the depth")
	c.within(path+".Depth", float64(depth), 0, maxThickness, "mm", "depth of a line; 0 follows from the width")
	if len(c.ps) > n {
		return t, 0, 0, false
	}
	if t == (Tool{}) {
		t = vTool
	}
	w, d := float64(width), float64(depth)
	if t.VAngle == 0 {
		if w != 0 && w != float64(t.Diameter) {
			c.add(Problem{Path: path + ".Width", Code: "contradiction", Got: num(w), Lo: float64(t.Diameter), Hi: float64(t.Diameter), Unit: "mm",
				Why: "a flat cutter makes a line as wide as itself"})
		}
		if d == 0 {
			d = 1
		}
		c.within(path+".Depth", d, 0.1, maxThickness, "mm", "depth of a line")
		return t, float64(t.Diameter), d, len(c.ps) == n
	}
	switch {
	case w == 0 && d == 0:
		w = usual
		d = float64(t.DepthFor(MM(w)))
	case d == 0:
		d = float64(t.DepthFor(width))
	case w == 0:
		w = float64(t.WidthAt(depth))
	default:
		if want := float64(t.WidthAt(depth)); math.Abs(want-w) > 1e-3 {
			c.add(Problem{Path: path + ".Width", Code: "contradiction", Got: num(w), Lo: want, Hi: want, Unit: "mm",
				Why: "the width follows from the depth and the angle of the cutter: give one of the two"})
		}
	}
	least := float64(t.Tip) + 0.01
	most := 200.0
	if t.Diameter != 0 {
		most = float64(t.Diameter)
	}
	if width == 0 && depth != 0 { // speak of what was given
		if c.within(path+".Depth", d, float64(t.DepthFor(MM(least))), float64(t.DepthFor(MM(most))), "mm", "depth of a line: the cutter must be wide enough") {
			return t, w, d, len(c.ps) == n
		}
		return t, 0, 0, false
	}
	c.within(path+".Width", w, least, most, "mm", "width of a line: between the tip and the diameter of the cutter")
	return t, w, d, len(c.ps) == n
}

// removed is the volume that a tool takes along the strokes, mm3: the area that
// a disc sweeps, over the depth (Simpson's rule, exact for squares). Where
// strokes cross, the common place counts for both.
func removed(strokes []outline.Path, t Tool, width, depth float64) float64 {
	top := width / 2
	low := top
	if t.VAngle != 0 {
		low = float64(t.Tip) / 2
	}
	v := 0.0
	for _, p := range strokes {
		v += float64(depth*(p.Swept(top)+4*p.Swept((top+low)/2)+p.Swept(low))) / 6
	}
	return v
}
