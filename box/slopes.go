package box

import (
	"math"

	"holt.example/box/solid"
	"holt.example/joints"
)

// floorPlane is the inner plane of every floor: z = 0.
var floorPlane = solid.NewPlane(solid.Vec{Z: -1}, 0)

// roofFaces adds a face for each slope; pitches and planes follow when the
// size is known.
func (s *shell) roofFaces() {
	add := func(part Part, nh [2]float64, rank int) {
		s.faces = append(s.faces, face{part: part, kind: roofFace, nh: nh, rank: rank})
	}
	var over Overhangs
	path := ""
	switch r := s.d.Roof.(type) {
	case Flat:
		add(Roof, [2]float64{}, 40)
		over, path = r.Over, "Roof.Flat"
	case Pent:
		add(Roof, s.faces[0].nh, 40)
		over, path = r.Over, "Roof.Pent"
	case Gable:
		f := s.faces[0].nh
		if r.Run == LeftToRight {
			add(RoofFront, f, 40)
			add(RoofBack, [2]float64{-f[0], -f[1]}, 41)
		} else {
			add(RoofLeft, [2]float64{f[1], -f[0]}, 40)
			add(RoofRight, [2]float64{-f[1], f[0]}, 41)
		}
		over, path = r.Over, "Roof.Gable"
	case Hip:
		for i := 0; i < s.walls; i++ {
			name := RoofN(i + 1)
			if s.rect() {
				name = [4]Part{RoofFront, RoofRight, RoofBack, RoofLeft}[i]
			}
			rank := 40
			if s.laps(i) {
				rank = 41
			}
			add(name, s.faces[i].nh, rank)
		}
		over, path = r.Over, "Roof.Hip"
	case NoRoof:
		s.faces = append(s.faces, face{part: Roof, kind: roofFace, open: true})
		return
	default:
		return
	}
	for i := 0; i < s.walls; i++ {
		s.faces[i].over = s.sideOf(i, over, path)
	}
}

// roofs are the indices of the roof's faces.
func (s *shell) roofs() []int {
	var r []int
	for i := s.floor + 1; i < len(s.faces); i++ {
		r = append(r, i)
	}
	return r
}

// pitchOf works out the pitch of a slope in degrees.
func (s *shell) pitchOf(f *face) float64 {
	pick := func(p Deg, def float64, rise MM, run float64, path string) float64 {
		if rise == 0 {
			if p == 0 {
				return def
			}
			return float64(p)
		}
		x := atan(float64(rise) / run)
		s.c.within(path+".Rise", x, minPitch, maxPitch, "deg", "pitch that comes of the rise over a run of "+num(run))
		return x
	}
	switch r := s.d.Roof.(type) {
	case Pent:
		return pick(r.Pitch, 10, r.Rise, s.extent(f.nh[0], f.nh[1]), "Roof.Pent")
	case Gable:
		return pick(r.Pitch, 45, r.Rise, s.extent(f.nh[0], f.nh[1])/2, "Roof.Gable")
	case Hip:
		run := math.Inf(1)
		for i := range s.faces[:s.walls] {
			run = math.Min(run, s.extent(s.faces[i].nh[0], s.faces[i].nh[1])/2)
		}
		p := pick(r.Pitch, 45, r.Rise, run, "Roof.Hip")
		if r.SidePitch != 0 && (f.part == RoofLeft || f.part == RoofRight) {
			p = float64(r.SidePitch)
		}
		return p
	}
	return 0
}

// eavesOf gives the pitch and the thickness of the slope whose eaves run along
// wall i.
func (s *shell) eavesOf(i int) (pitch, t float64, ok bool) {
	for _, j := range s.roofs() {
		f := &s.faces[j]
		w := s.faces[i].nh
		if f.nh == [2]float64{} || float64(f.nh[0]*w[0])+float64(f.nh[1]*w[1]) > 1-1e-9 {
			return s.pitchOf(f), f.t, true
		}
	}
	return 0, 0, false
}

// roofPlanes puts every slope through its inner eaves line: the outermost line
// of the cavity's section at its height, in the direction of the slope.
func (s *shell) roofPlanes() bool {
	n := len(s.c.ps)
	top := s.corners(s.height)
	for k, j := range s.roofs() {
		f := &s.faces[j]
		f.pitch = s.pitchOf(f)
		sn, cs := sincos(f.pitch)
		e := math.Inf(-1)
		if _, hip := s.d.Roof.(Hip); hip {
			w := &s.faces[k]
			e = w.d + float64(s.height*tan(w.lean))
		} else {
			for _, p := range top {
				e = math.Max(e, float64(p[0]*f.nh[0])+float64(p[1]*f.nh[1]))
			}
		}
		f.in = solid.NewPlane(
			solid.Vec{X: f.nh[0] * sn, Y: f.nh[1] * sn, Z: cs},
			float64(s.height*cs)+float64(e*sn))
	}
	if h, ok := s.d.Roof.(Hip); ok && h.Level {
		s.levelEaves()
	}
	return len(s.c.ps) == n
}

// levelEaves shortens the overhangs of the steeper slopes of a hip until all
// eaves hang as low as the highest.
func (s *shell) levelEaves() {
	drop := func(i int, over float64) float64 {
		w, r := &s.faces[i], &s.faces[s.floor+1+i]
		_, cl := sincos(w.lean)
		return (w.t/cl + over) * tan(r.pitch)
	}
	least := math.Inf(1)
	for i := 0; i < s.walls; i++ {
		least = math.Min(least, drop(i, s.faces[i].over))
	}
	for i := 0; i < s.walls; i++ {
		w, r := &s.faces[i], &s.faces[s.floor+1+i]
		_, cl := sincos(w.lean)
		o := least/tan(r.pitch) - w.t/cl
		if o < 0 {
			s.c.add(Problem{Path: "Roof.Hip.Level", Code: "level", Got: num(o), Lo: 0, Hi: maxLength, Unit: "mm", Why: "levelling the eaves would draw the roof back behind the face of " + string(w.part), Try: "a larger overhang on the flatter slopes"})
			continue
		}
		w.over = math.Min(w.over, o)
	}
}

// overNormal is the overhang of the roof past a wall along its normal.
func (f *face) overNormal() float64 {
	_, cl := sincos(f.lean)
	return f.over * cl
}

// tooSteep reports, once, a slope whose bevels at the walls cannot be sawn: as
// what it is, a pitch, because no joint was given that could be at fault. Where tops
// and ends are square nothing is bevelled.
func (s *shell) tooSteep(e *edge) bool {
	roof, wall := &s.faces[e.over], &s.faces[e.under]
	if roof.kind == wallFace {
		roof, wall = wall, roof
	}
	if roof.kind != roofFace || wall.kind != wallFace || !(roof.pitch > maxBevel+1e-9) {
		return false
	}
	form, own, field := "", joint(nil), "Pitch"
	given := func(name string, j joint, rise MM) {
		if form, own = name, j; rise != 0 {
			field = "Rise"
		}
	}
	switch r := s.d.Roof.(type) {
	case Pent:
		given("Roof.Pent", r.Joint, r.Rise)
	case Gable:
		given("Roof.Gable", r.Joint, r.Rise)
	case Hip:
		given("Roof.Hip", r.Joint, r.Rise)
		if r.SidePitch != 0 && (roof.part == RoofLeft || roof.part == RoofRight) {
			field = "SidePitch"
		}
	}
	if form == "" || !isNil(own) || e.path != form+".Joint" {
		return false
	}
	bevelled := func(j joint) bool {
		keep := s.c
		s.c = &collector{}
		defer func() { s.c = keep }()
		s.section(j, e.path, s.corner(e))
		for _, p := range s.c.ps {
			if p.Unit == "deg" {
				return true
			}
		}
		return false
	}
	if !bevelled(e.joint) {
		return false
	}
	p := Problem{Path: form + "." + field, Code: "range", Got: num(roof.pitch), Lo: minPitch, Hi: maxBevel, Unit: "deg",
		Why: "the bevels of so steep a roof, where it meets the walls, cannot be sawn"}
	helps := true // unless the slope ends against a wall that runs on above it
	for i := range s.faces[:s.walls] {
		w := &s.faces[i]
		helps = helps && !(w.up() && math.Abs(float64(w.nh[0]*roof.nh[0])+float64(w.nh[1]*roof.nh[1])) > 1e-9)
	}
	if helps && !bevelled(joints.Butt{EndSquare: true, LapSquare: true}) {
		p.Try = "Tops: box.SquareTops, Ends: box.SquareEnds and an overhang, up to " + num(maxPitch)
	}
	s.c.add(p)
	return true
}
