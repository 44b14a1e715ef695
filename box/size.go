package box

import (
	"fmt"
	"math"

	"holt.example/joints"
)

// solveSize gives every wall its inner line at z = 0 and the cavity its
// height, from whatever the design fixes.
func (s *shell) solveSize() bool {
	n := len(s.c.ps)
	s.lower = 0
	floor := &s.faces[s.floor]
	if f, ok := s.d.Floor.(FloorBetween); ok {
		s.lower = -(floor.t + float64(f.Raise))
	}
	switch z := s.d.Size.(type) {
	case Cavity:
		s.setRect(float64(z.Width), float64(z.Depth))
		s.height = float64(z.Height)
	case BoardWidth:
		s.boardWidth(z)
		s.height = float64(z.Height)
	case Outside:
		if s.rect() {
			s.setRect(float64(z.Width), float64(z.Depth))
		}
		for i := range s.faces[:s.walls] {
			f := &s.faces[i]
			_, cs := sincos(f.lean)
			f.d -= f.t/cs + float64(s.lower*tan(f.lean))
		}
		s.height = s.outsideHeight(float64(z.Height))
		if !(s.height >= minLength) {
			s.c.add(Problem{Path: "Size.Outside.Height", Code: "too-small", Got: num(float64(z.Height)), Lo: minLength - s.height + float64(z.Height), Hi: maxLength, Unit: "mm", Why: "floor and roof take up the whole height"})
		}
	}
	for i := range s.faces[:s.walls] {
		s.faces[i].in = s.faces[i].wallPlane()
	}
	floor.in = floorPlane
	if got := s.shortestWall(); !(got >= minLength) {
		s.c.add(Problem{Path: "Size", Code: "no-cavity", Got: num(got), Lo: minLength, Hi: maxLength, Unit: "mm", Why: "the thicknesses leave too little or no cavity between the walls", Try: s.centimetres()})
	}
	if len(s.c.ps) == n {
		s.checkThickness()
	}
	return len(s.c.ps) == n
}

// checkThickness refuses boards thicker than the whole cavity is wide and
// deep: a slip of the pen, not a wall.
func (s *shell) checkThickness() {
	most := math.Max(s.extent(1, 0), s.extent(0, 1))
	if try := s.centimetres(); try != "" {
		for i := range s.faces {
			if f := &s.faces[i]; !f.open && f.t > most {
				s.c.add(Problem{Path: s.sizePath(), Code: "thicker-than-cavity", Got: num(round1(s.extent(1, 0))) + " x " + num(round1(s.extent(0, 1))),
					Why: fmt.Sprintf("the cavity is narrower than its boards are thick, %s", num(f.t)), Try: try})
				return
			}
		}
	}
	for i := range s.faces {
		f := &s.faces[i]
		if f.open || f.t <= most {
			continue
		}
		path := "Board"
		if _, ok := s.d.Boards[f.part]; ok {
			path = fmt.Sprintf("Boards[%q]", string(f.part))
		} else if g := f.group(); g != "" {
			if _, ok := s.d.Boards[g]; ok {
				path = fmt.Sprintf("Boards[%q]", string(g))
			}
		}
		s.c.add(Problem{Path: path + f.board.decides(), Code: "thicker-than-cavity", Got: num(f.t), Lo: minThickness, Hi: most, Unit: "mm", Why: "the board is thicker than the cavity is wide and deep"})
	}
}

// sizePath is the place in the design that says how wide the box is.
func (s *shell) sizePath() string {
	switch s.d.Footprint.(type) {
	case Regular:
		return "Footprint.Regular.Across"
	case Polygon:
		return "Footprint.Polygon.Points"
	}
	switch s.d.Size.(type) {
	case Outside:
		return "Size.Outside"
	case BoardWidth:
		return "Size.BoardWidth"
	}
	return "Size.Cavity"
}

// centimetres are the sizes in millimetres, as something to try, of a box that is
// stated ten times too small for its boards: which are boards, up to 40 thick, where
// no enclosure is under 50 wide and deep. Else it is "".
func (s *shell) centimetres() string {
	for i := range s.faces {
		if s.faces[i].t > 40 {
			return ""
		}
	}
	const small = 50
	switch f := s.d.Footprint.(type) {
	case Regular:
		if f.Across < small {
			return "Across: " + num(10*float64(f.Across)) + ", if these are centimetres"
		}
		return ""
	case Polygon:
		for _, p := range f.Points {
			if math.Abs(float64(p.X)) >= small || math.Abs(float64(p.Y)) >= small {
				return ""
			}
		}
		return "points ten times as far apart, if these are centimetres"
	}
	say := func(w, d, h MM) string {
		if !(w < small && d < small) {
			return ""
		}
		return fmt.Sprintf("Width: %s, Depth: %s, Height: %s, if these are centimetres", num(10*float64(w)), num(10*float64(d)), num(10*float64(h)))
	}
	switch z := s.d.Size.(type) {
	case Cavity:
		return say(z.Width, z.Depth, z.Height)
	case Outside:
		return say(z.Width, z.Depth, z.Height)
	case BoardWidth:
		if z.Width < small && z.Sides < small {
			return fmt.Sprintf("Width: %s, Height: %s, if these are centimetres", num(10*float64(z.Width)), num(10*float64(z.Height)))
		}
	}
	return ""
}

// setRect spreads width and depth over the walls of a rectangle.
func (s *shell) setRect(w, d float64) {
	if !s.rect() {
		return
	}
	for i, x := range [4]float64{d, w, d, w} {
		s.faces[i].d = x / 2
	}
}

// shortestWall is the least length of a wall's inner line at z = 0; negative
// where the walls have changed sides.
func (s *shell) shortestWall() float64 {
	ps := s.corners(0)
	least := math.Inf(1)
	for i := range ps {
		n := s.faces[i].nh
		p, q := ps[(i+s.walls-1)%s.walls], ps[i]
		least = math.Min(least, float64((q[1]-p[1])*n[0])-float64((q[0]-p[0])*n[1]))
	}
	return least
}

// extent is the size of the cavity floor in a horizontal direction. For a
// polygon it is reckoned from the corners at z = 0.
func (s *shell) extent(x, y float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range s.corners(0) {
		v := float64(p[0]*x) + float64(p[1]*y)
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	return hi - lo
}

// corners are the corners of the cavity's section at height z, each between a
// wall and the next.
func (s *shell) corners(z float64) [][2]float64 {
	ps := make([][2]float64, s.walls)
	for i := range ps {
		a, b := &s.faces[i], &s.faces[(i+1)%s.walls]
		da, db := a.d+float64(z*tan(a.lean)), b.d+float64(z*tan(b.lean))
		det := float64(a.nh[0]*b.nh[1]) - float64(a.nh[1]*b.nh[0])
		ps[i] = [2]float64{(float64(da*b.nh[1]) - float64(db*a.nh[1])) / det, (float64(db*a.nh[0]) - float64(da*b.nh[0])) / det}
	}
	return ps
}

// boardWidth solves the cavity so that the walls are exactly as wide as the
// boards, whatever the corner joint adds.
func (s *shell) boardWidth(z BoardWidth) {
	for i := range s.faces[:s.walls] {
		f := &s.faces[i]
		if f.lean != 0 {
			s.c.add(Problem{Path: s.facePath(i) + ".Lean", Code: "taper", Got: num(f.lean), Why: "a wall beside a leaning one tapers and cannot be a whole board: give a cavity instead"})
		}
	}
	side := z.Sides
	if side == 0 {
		side = z.Width
	}
	var takes [4]float64 // what the corners add to each wall
	for i := 0; i < 4; i++ {
		j := (i + 1) % 4
		over, under := s.wallOrder(i, j)
		jt, path, over, under := s.jointOf(over, under)
		a, b := &s.faces[over], &s.faces[under]
		if a.open || b.open {
			continue
		}
		sec, ok := s.section(jt, path, joints.Corner{
			TA: MM(a.t), TB: MM(b.t), LeastA: MM(a.least), LeastB: MM(b.least),
			Theta: 90, Length: z.Height, ReachA: maxLength, ReachB: maxLength})
		if !ok {
			continue
		}
		takes[over] += math.Max(float64(sec.A.Inner), float64(sec.A.Outer))
		takes[under] += math.Max(float64(sec.B.Inner), float64(sec.B.Outer))
	}
	w, d := float64(z.Width)-takes[0], float64(side)-takes[1]
	if back := float64(z.Width) - takes[2]; math.Abs(back-w) > 1e-9 {
		s.c.addf("Size.BoardWidth.Width", "unequal", "front and back would need boards of different widths: their corners add %s and %s", num(takes[0]), num(takes[2]))
	}
	if left := float64(side) - takes[3]; math.Abs(left-d) > 1e-9 {
		s.c.addf("Size.BoardWidth.Sides", "unequal", "left and right would need boards of different widths: their corners add %s and %s", num(takes[3]), num(takes[1]))
	}
	s.setRect(w, d)
}

// eavesRise is how far the outer eaves of a wall lie above the inner ones,
// under a slope of the given pitch and thickness:
// (t/cos p - t_w tan p/cos l) / (1 + tan l tan p).
func (f *face) eavesRise(pitch, t float64) float64 {
	_, cp := sincos(pitch)
	_, cl := sincos(f.lean)
	return (t/cp - float64(f.t*tan(pitch))/cl) / (1 + float64(tan(f.lean)*tan(pitch)))
}

// outsideHeight turns the height to the lowest outer eaves line into the
// cavity's height.
func (s *shell) outsideHeight(outer float64) float64 {
	least := math.Inf(1)
	for i := range s.faces[:s.walls] {
		f := &s.faces[i]
		p, t, ok := s.eavesOf(i)
		if !ok {
			continue
		}
		least = math.Min(least, f.eavesRise(p, t))
	}
	if math.IsInf(least, 1) {
		s.c.add(Problem{Path: "Size.Outside", Code: "no-eaves", Why: "no wall stands along the eaves of this roof, so that the outer height is not determined", Try: "box.Cavity"})
		return 100
	}
	return outer + s.lower - least
}
