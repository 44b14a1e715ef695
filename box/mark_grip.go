package box

import (
	"math"

	"holt.example/box/outline"
)

// GripGrooves are level grooves across the inner face below an entrance, by
// which the young climb out of a box of planed board: router grooves, or the
// kerfs of a saw. Depths of 1 to 3 every 10 to 20 are usual (common practice).
type GripGrooves struct {
	On      Part // "" means the front (wall/1 on a polygon); it has an entrance
	Count   int  // 0 means as many as there is room for; at most 200
	Spacing MM   // between centre lines; 0 means 15
	Depth   MM   // 0 means 2
	Width   MM   // of the kerf or the cutter; 0 means 3
	Length  MM   // over all; 0 means 60, or the cavity's width less 10 if that is less
	Below   MM   // from the entrance's lowest point down to the first groove's middle; 0 means Spacing
	Floor   MM   // from the cavity floor up to the last groove's middle at least; 0 means 30
	Tool    Tool // instead of Width: a V-cutter, or a flat one
}

func (GripGrooves) feature() {}

func (f GripGrooves) on(s *shell) []onPart { return []onPart{{".On", s.frontOr(f.On)}} }

func (f GripGrooves) lower(s *shell, path string, by map[Part]*part) {
	n := len(s.c.ps)
	step, depth := mmOr(f.Spacing, 15), mmOr(f.Depth, 2)
	below, floor := mmOr(f.Below, step), mmOr(f.Floor, 30)
	s.c.within(path+".Count", float64(f.Count), 0, 200, "", "grooves; 0 is as many as there is room for")
	s.c.within(path+".Spacing", step, 1, maxLength, "mm", "distance of grooves; 0 is 15")
	s.c.within(path+".Depth", depth, 0.1, maxThickness, "mm", "depth of a groove; 0 is 2")
	s.c.within(path+".Width", mmOr(f.Width, 3), 0.1, 200, "mm", "width of a groove; 0 is 3")
	s.c.within(path+".Length", mmOr(f.Length, 60), minLength, maxLength, "mm", "length of a groove; 0 is 60")
	s.c.within(path+".Below", below, 0, maxLength, "mm", "way from the entrance down to the first groove")
	s.c.within(path+".Floor", floor, 0, maxLength, "mm", "way from the floor up to the last groove")
	tool := f.Tool
	if tool == (Tool{}) {
		tool.Diameter = MM(mmOr(f.Width, 3))
	} else if f.Width != 0 {
		s.c.addf(path+".Width", "twice", "give the width or the tool, not both")
	}
	var w float64
	tool, w, _, _ = s.c.groove(path, tool, 0, MM(depth), 3)
	if len(s.c.ps) > n || len(by) == 0 {
		return
	}
	p := by[s.frontOr(f.On)]
	if p == nil || !s.depthIn(path+".Depth", depth, p) {
		return
	}
	// The entrance: on the inner face, so along it.
	low, mid, found := math.Inf(1), 0.0, false
	for i := range p.feats {
		if g := &p.feats[i]; g.use == UseEntrance {
			if e := g.outline.Extents(); e.Min.Y < low {
				low, mid, found = e.Min.Y, e.Centre().X, true
			}
		}
	}
	if !found {
		s.c.addf(path+".On", "no-entrance", "%s has no entrance that a ladder could lead to; list it before the grooves", p.face.part)
		return
	}
	face := p.cavityFace()
	bottom := floor
	if p.face.frame.V.Z > 1e-6 {
		bottom = (floor - p.face.frame.O.Z) / p.face.frame.V.Z
	}
	l := line{path: path, source: "grip groove", use: UseGrip, tool: tool, width: w, depth: depth, from: FromInner}
	for k := 0; k < 200 && (f.Count == 0 || k < f.Count); k++ {
		v := low - below - float64(float64(k)*step)
		if v < bottom-1e-9 {
			break
		}
		lo, hi := spanAt(face, v)
		half := math.Min(30, math.Min(hi-mid, mid-lo)-5)
		if f.Length != 0 {
			half = float64(f.Length) / 2
		}
		half -= w / 2 // the ends are round
		if !(half > 0) {
			s.c.add(Problem{Path: path + ".Length", Code: "no-room", Got: num(2 * half), Why: "there is no room for grooves beside the entrance's middle"})
			return
		}
		l.strokes = append(l.strokes, outline.Line(outline.Point{X: mid - half, Y: v}, outline.Point{X: mid + half, Y: v}))
	}
	if len(l.strokes) < max(f.Count, 1) {
		s.c.add(Problem{Path: path + ".Count", Code: "no-room", Got: num(float64(max(f.Count, 1))), Lo: 0, Hi: float64(len(l.strokes)), Unit: "grooves",
			Why: "grooves that have room between the entrance and the floor"})
		return
	}
	p.engraved = append(p.engraved, l)
}

// spanAt is the stretch of a level line that lies in a polygon; nothing is lo
// over hi.
func spanAt(o outline.Contour, v float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if !(math.Min(a.Y, b.Y) <= v && v <= math.Max(a.Y, b.Y)) {
			continue
		}
		xs := []float64{a.X, b.X}
		if a.Y != b.Y {
			xs = []float64{a.X + float64((b.X-a.X)*((v-a.Y)/(b.Y-a.Y)))}
		}
		for _, x := range xs {
			lo, hi = math.Min(lo, x), math.Max(hi, x)
		}
	}
	return lo, hi
}
