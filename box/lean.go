package box

import (
	"fmt"
	"math"

	"holt.example/box/solid"
)

// blameLean tells faces that the cavity does not show by the wall that leans in over
// them, where it is that: how high the walls meet, and the leans that do.
func (d Design) blameLean(err error) error {
	ps, ok := err.(Problems)
	if !ok {
		return err
	}
	var rest Problems
	lost := ""
	for _, p := range ps {
		switch {
		case p.Code != "lost-face":
			rest = append(rest, p)
		case lost == "":
			lost = p.Got
		}
	}
	k := d.mostInward()
	if lost == "" || k < 0 {
		return err
	}
	// Of the shell alone: what else there is has no part in it.
	bare := Design{Name: d.Name, Board: d.Board, Boards: d.Boards, Chord: d.Chord, Size: d.Size, Footprint: d.Footprint,
		Walls: d.Walls, Corners: d.Corners, Joints: d.Joints, Roof: d.Roof, Floor: d.Floor}
	does := func(tenths int) bool {
		x := bare.With(func(d *Design) { d.Walls[k].Lean = Deg(float64(tenths) / 10) })
		_, _, _, err := x.solve(nil)
		return err == nil
	}
	bad, good := int(math.Floor(float64(d.Walls[k].Lean)*10)), 0
	if !does(good) { // not this wall alone
		bare = bare.With(func(d *Design) {
			for i := range d.Walls {
				d.Walls[i].Lean = max(d.Walls[i].Lean, 0)
			}
		})
		if !does(good) {
			return err
		}
		bad = good // nor is there a range, then, for one of them
	}
	for good-bad > 1 {
		if m := (good + bad) / 2; does(m) {
			good = m
		} else {
			bad = m
		}
	}
	w := d.Walls[k]
	p := Problem{Path: fmt.Sprintf("Walls[%d].Lean", k), Code: "lost-face", Got: num(float64(w.Lean)), Lo: float64(good) / 10, Hi: 0, Unit: "deg",
		Why: fmt.Sprintf("the cavity does not show %s: %s leans in too far", lost, w.On)}
	if z, ok := d.wallsMeet(); ok {
		p.Why = fmt.Sprintf("%s leans in so far that the walls meet %s above the cavity floor, before they reach %s", w.On, num(round1(z)), lost)
	}
	c := &collector{ps: append(rest, p)}
	return c.err()
}

// mostInward is the wall that leans in the most, -1 for none.
func (d Design) mostInward() int {
	k := -1
	for i, w := range d.Walls {
		if w.Lean < 0 && (k < 0 || w.Lean < d.Walls[k].Lean) {
			k = i
		}
	}
	return k
}

// wallsMeet is how high over the cavity floor the walls close over it, if they do.
func (d Design) wallsMeet() (z float64, ok bool) {
	s := &shell{d: &d, c: &collector{}}
	s.wallFaces()
	s.floorFace()
	s.roofFaces()
	for i := range s.faces {
		s.setBoard(&s.faces[i])
	}
	if !s.solveSize() {
		return 0, false
	}
	var planes []solid.Plane
	for i := range s.faces[:s.floor+1] {
		planes = append(planes, s.faces[i].in)
	}
	cav := solid.Intersect(planes)
	for _, f := range cav.Faces {
		if f.ID < 0 {
			return 0, false
		}
	}
	_, z = cav.Reach(solid.Vec{Z: 1})
	return z, !cav.Empty()
}
