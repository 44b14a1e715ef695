package box

import (
	"fmt"
	"math"
	"reflect"
	"strings"
)

// check looks at the literal alone: every number in range, every choice known,
// nothing missing. Geometry comes after it.
func (d Design) check(c *collector) {
	c.name("Name", d.Name)
	onlyFree := d.Size == nil && len(d.Free) > 0
	c.board("Board", d.Board, true)
	for _, p := range sortedParts(d.Boards) {
		c.board(fmt.Sprintf("Boards[%q]", string(p)), d.Boards[p], true)
	}
	if d.Chord != 0 {
		c.within("Chord", float64(d.Chord), 1e-4, 10, "mm", "largest distance between a round feature and its facets")
	}
	d.checkMadeUp(c)
	d.checkFixings(c)
	d.checkFittings(c)
	d.checkFree(c)
	if onlyFree {
		d.checkNoBox(c)
		return
	}
	d.checkSize(c)
	d.checkWalls(c)
	c.enum("Corners.Laps", int(d.Corners.Laps), int(Pinwheel), "box.FrontBack")
	d.checkRoof(c)
	d.checkFloor(c)
	d.checkFeatures(c)
	d.checkOpens(c)
	d.checkMakers(c)
	d.checkJoints(c)
}

// checkMakers looks at the numbers of inner and outer elements.
func (d Design) checkMakers(c *collector) {
	s := &shell{d: &d, c: c}
	for _, side := range []CutSide{FromInner, FromOuter} {
		s.eachMaker(side, func(path string, x maker) { x.check(&d, c, path) })
	}
}

// checkJoints looks at the joints' own numbers before there is a corner to ask
// them about.
func (d Design) checkJoints(c *collector) {
	c.finite("Corners.Joint", d.Corners.Joint)
	for i, b := range d.Joints {
		path := fmt.Sprintf("Joints[%d]", i)
		c.finite(path+".Joint", b.Joint)
		c.holds(path, b.Holds)
	}
	switch f := d.Floor.(type) {
	case FloorBetween:
		c.finite("Floor.FloorBetween.Joint", f.Joint)
	case FloorUnder:
		c.finite("Floor.FloorUnder.Joint", f.Joint)
	}
	switch r := d.Roof.(type) {
	case Flat:
		c.finite("Roof.Flat.Joint", r.Joint)
	case Pent:
		c.finite("Roof.Pent.Joint", r.Joint)
	case Gable:
		c.finite("Roof.Gable.Joint", r.Joint)
		c.finite("Roof.Gable.Ridge", r.Ridge)
	case Hip:
		c.finite("Roof.Hip.Joint", r.Joint)
		c.finite("Roof.Hip.Hips", r.Hips)
	}
}

// finite looks for numbers in a joint's fields that are none.
func (c *collector) finite(path string, j joint) {
	if isNil(j) {
		return
	}
	v := reflect.Indirect(reflect.ValueOf(j))
	if v.Kind() != reflect.Struct {
		return
	}
	for i := 0; i < v.NumField(); i++ {
		f := v.Field(i)
		if !f.CanFloat() || !v.Type().Field(i).IsExported() {
			continue
		}
		if x := f.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			c.add(Problem{Path: path + "." + v.Type().Field(i).Name, Code: "joint", Got: num(x), Why: "this is no number"})
		}
	}
}

// checkFeatures looks at the numbers of features before there is a part to
// hold against them.
func (d Design) checkFeatures(c *collector) {
	s := &shell{d: &d, c: c}
	drop := func(Part, feat) {}
	for i, f := range d.Features {
		path := fmt.Sprintf("Features[%d]", i)
		checkOnce(c, path, f)
		switch f := f.(type) {
		case Entrance:
			n := len(c.ps)
			shapeOutline(c, path+".Entrance.Shape", f.Shape)
			if r, ok := f.Shape.(Round); ok && len(c.ps) > n && r.Diameter > 0 && r.Diameter < minLength {
				c.ps[n].Try = inches(float64(r.Diameter))
			}
			c.atLeast0(path+".Entrance.Above", f.Above, "height of the opening's lowest point over the cavity floor")
			c.offset(path+".Entrance.Right", f.Right, "place of the opening, from the middle of the wall")
		case Vents:
			f.On = []Part{}
			s.vents(path+".Vents", f, nil, drop)
		case Drains:
			s.drains(path+".Drains", f, nil, drop)
		case CornerCuts:
			if f.Size != 0 {
				c.within(path+".CornerCuts.Size", float64(f.Size), minLength, maxLength, "mm", "size of a corner cut")
			}
		case form:
			if !isPointer(f) {
				f.lower(s, typed(path, f), map[Part]*part{})
			}
		}
	}
}

// checkOnce refuses a feature that is put onto a part twice.
func checkOnce(c *collector, path string, f Feature) {
	var on []Part
	switch f := f.(type) {
	case Vents:
		on = f.On
	case DripGroove:
		on = f.On
	case EavesVents:
		on = f.On
	case Edging:
		on = f.On
	case PartMarks:
		on = f.On
	}
	seen := map[Part]bool{}
	for k, p := range on {
		if seen[p] {
			c.addf(fmt.Sprintf("%s.On[%d]", typed(path, f), k), "twice", "%.60s is named twice", p)
		}
		seen[p] = true
	}
}

// footprintOK reports whether the walls of the design can be counted.
func (c *collector) footprintOK(d *Design) bool {
	for _, p := range c.ps {
		if strings.HasPrefix(p.Path, "Footprint") {
			return false
		}
	}
	return d.Footprint != nil || d.Size != nil
}

func (d Design) checkSize(c *collector) {
	rect := d.Footprint == nil
	wd := func(path, of string, w, dd MM) {
		if rect {
			c.length(path+".Width", w, "width "+of+", from left to right")
			c.length(path+".Depth", dd, "depth "+of+", from front to back")
			return
		}
		if w != 0 {
			c.addf(path+".Width", "twice", "the footprint says the width: leave it 0")
		}
		if dd != 0 {
			c.addf(path+".Depth", "twice", "the footprint says the depth: leave it 0")
		}
	}
	switch s := d.Size.(type) {
	case nil:
		c.add(Problem{Path: "Size", Code: "missing", Why: "say which sizes are fixed", Try: "box.Cavity{Width: 120, Depth: 120, Height: 240}"})
	case Cavity:
		wd("Size.Cavity", "of the cavity at the floor", s.Width, s.Depth)
		c.length("Size.Cavity.Height", s.Height, "height from the floor to the lowest inner eaves")
	case Outside:
		wd("Size.Outside", "over the outer faces", s.Width, s.Depth)
		c.length("Size.Outside.Height", s.Height, "height from the walls' lower edge to the lowest outer eaves")
	case BoardWidth:
		c.length("Size.BoardWidth.Width", s.Width, "width of the boards")
		if s.Sides != 0 {
			c.length("Size.BoardWidth.Sides", s.Sides, "width of the boards for the sides")
		}
		c.length("Size.BoardWidth.Height", s.Height, "height of the cavity")
		if !rect {
			c.addf("Size.BoardWidth", "footprint", "the width of boards fixes a rectangle only; a polygon's footprint must be given as a cavity")
		}
	default:
		c.strange("Size", s, "size")
	}
	switch f := d.Footprint.(type) {
	case nil:
	case Regular:
		c.within("Footprint.Regular.Sides", float64(f.Sides), 3, 24, "", "number of sides")
		c.length("Footprint.Regular.Across", f.Across, "distance across the footprint, from a side to the opposite one")
	case Polygon:
		checkPolygon(c, f)
	default:
		c.strange("Footprint", f, "footprint")
	}
}

func checkPolygon(c *collector, f Polygon) {
	n := len(f.Points)
	if !c.within("Footprint.Polygon.Points", float64(n), 3, 24, "points", "number of corners") {
		return
	}
	sound := true
	for i, p := range f.Points {
		sound = c.offset(fmt.Sprintf("Footprint.Polygon.Points[%d].X", i), p.X, "place of a corner") && sound
		sound = c.offset(fmt.Sprintf("Footprint.Polygon.Points[%d].Y", i), p.Y, "place of a corner") && sound
	}
	if !sound {
		return
	}
	total := 0.0
	for i := range f.Points {
		a, b, e := f.Points[i], f.Points[(i+1)%n], f.Points[(i+2)%n]
		l := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		m := math.Hypot(float64(e.X-b.X), float64(e.Y-b.Y))
		if !(l >= minLength) {
			c.add(Problem{Path: fmt.Sprintf("Footprint.Polygon.Points[%d]", i), Code: "range", Got: num(l), Lo: minLength, Hi: maxLength, Unit: "mm", Why: "a side this short is no wall"})
			return
		}
		turn := float64((b.X-a.X)*(e.Y-b.Y)) - float64((b.Y-a.Y)*(e.X-b.X))
		if !(turn > 1e-9*l*m) {
			c.addf(fmt.Sprintf("Footprint.Polygon.Points[%d]", (i+1)%n), "not-convex", "the footprint turns right or runs straight on here: list the corners anticlockwise seen from above, of a convex shape")
			return
		}
		total += math.Asin(math.Min(1, turn/(l*m)))
		if dot := float64((b.X-a.X)*(e.X-b.X)) + float64((b.Y-a.Y)*(e.Y-b.Y)); dot < 0 {
			total += math.Pi - 2*math.Asin(math.Min(1, turn/(l*m)))
		}
	}
	if math.Abs(total-2*math.Pi) > 1e-6 {
		c.addf("Footprint.Polygon.Points", "not-convex", "the footprint winds round more than once")
	}
}

func (d Design) checkWalls(c *collector) {
	seen := map[Part]bool{}
	for i, w := range d.Walls {
		path := fmt.Sprintf("Walls[%d]", i)
		if seen[w.On] {
			c.addf(path+".On", "twice", "%s is described twice", w.On)
		}
		seen[w.On] = true
		c.within(path+".Lean", float64(w.Lean), -maxLean, maxLean, "deg", "lean of a wall")
		c.atLeast0(path+".Above", w.Above, "how far the wall runs on above the roof")
		c.atLeast0(path+".Below", w.Below, "how far the wall runs on below the floor")
		if w.Open && (w.Above != 0 || w.Below != 0) {
			c.addf(path+".Open", "contradiction", "an open wall has no part that could run on")
		}
	}
}

func (c *collector) pitch(path string, p Deg, rise MM) {
	if p != 0 && rise != 0 {
		c.addf(path+".Rise", "twice", "give the pitch or the rise, not both")
	}
	if p != 0 {
		c.within(path+".Pitch", float64(p), minPitch, maxPitch, "deg", "pitch of the roof; a roof without slope is Flat{}")
	}
	if rise != 0 {
		c.length(path+".Rise", rise, "rise of the roof over the inside run")
	}
}

func (c *collector) over(path string, o Overhangs) {
	c.atLeast0(path+".Over.Front", o.Front, "overhang past the front")
	c.atLeast0(path+".Over.Back", o.Back, "overhang past the back")
	c.atLeast0(path+".Over.Left", o.Left, "overhang past the left wall")
	c.atLeast0(path+".Over.Right", o.Right, "overhang past the right wall")
	c.atLeast0(path+".Over.All", o.All, "overhang past the walls that say none of their own")
}

func (d Design) checkRoof(c *collector) {
	tops := func(path string, t Tops, e RoofEnds) {
		c.enum(path+".Tops", int(t), int(SquareTops), "box.Bevelled")
		c.enum(path+".Ends", int(e), int(SquareEnds), "box.Plumb")
	}
	switch r := d.Roof.(type) {
	case nil:
		c.add(Problem{Path: "Roof", Code: "missing", Why: "say which roof", Try: "box.Pent{}, or box.NoRoof{} for none"})
	case Flat:
		c.over("Roof.Flat", r.Over)
	case Pent:
		c.pitch("Roof.Pent", r.Pitch, r.Rise)
		c.over("Roof.Pent", r.Over)
		tops("Roof.Pent", r.Tops, r.Ends)
	case Gable:
		c.pitch("Roof.Gable", r.Pitch, r.Rise)
		c.over("Roof.Gable", r.Over)
		tops("Roof.Gable", r.Tops, r.Ends)
		c.enum("Roof.Gable.Run", int(r.Run), int(LeftToRight), "box.FrontToBack")
	case Hip:
		c.pitch("Roof.Hip", r.Pitch, r.Rise)
		if r.SidePitch != 0 {
			c.within("Roof.Hip.SidePitch", float64(r.SidePitch), minPitch, maxPitch, "deg", "pitch of the left and right slopes")
			if d.Footprint != nil {
				c.addf("Roof.Hip.SidePitch", "footprint", "a polygon has no left and right slopes: leave it 0")
			}
		}
		c.over("Roof.Hip", r.Over)
		tops("Roof.Hip", r.Tops, r.Ends)
	case NoRoof:
	default:
		c.strange("Roof", r, "roof")
	}
}

func (d Design) checkFloor(c *collector) {
	switch f := d.Floor.(type) {
	case nil:
		c.add(Problem{Path: "Floor", Code: "missing", Why: "say which floor", Try: "box.FloorBetween{}, or box.NoFloor{} for none"})
	case FloorBetween:
		c.atLeast0("Floor.FloorBetween.Raise", f.Raise, "how far the floor is raised")
		c.within("Floor.FloorBetween.Play", float64(f.Play), 0, 20, "mm", "play of the floor to each wall; 0 is what its joint needs")
	case FloorUnder:
		c.over("Floor.FloorUnder", f.Over)
	case NoFloor:
	default:
		c.strange("Floor", f, "floor")
	}
}

func sortedParts(m map[Part]Board) []Part {
	ps := make([]Part, 0, len(m))
	for p := range m {
		ps = append(ps, p)
	}
	for i := 1; i < len(ps); i++ {
		for j := i; j > 0 && ps[j] < ps[j-1]; j-- {
			ps[j], ps[j-1] = ps[j-1], ps[j]
		}
	}
	return ps
}

// isNil reports whether a joint is missing, also when it is a nil pointer.
func isNil(j joint) bool {
	if j == nil {
		return true
	}
	v := reflect.ValueOf(j)
	return v.Kind() == reflect.Pointer && v.IsNil()
}
