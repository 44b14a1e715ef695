package box

import (
	"fmt"
	"math"
	"reflect"
	"slices"
)

// MadeUp makes up a part that is wider than its board: of strips that run along
// the grain, side by side, all of them equal and as few as the boards allow. A
// part that one board covers stays whole. Each strip is a part by itself, with
// its share of joints, openings and marks: front/1 is the first strip of the
// front, from the left seen from outside, or from below where the grain runs
// across. Plan.Piece gives the part as a whole under its own name.
type MadeUp struct {
	// Of is a wall, the floor, a roof slope, or a group, AllWalls or AllRoof. A
	// single part's entry beats its group's.
	Of Part
	// Joint is what joins the strips: EdgeGlued, LooseTongue, TongueGroove or
	// Shiplap; nil means EdgeGlued.
	Joint EdgeJoint
	// Width of the boards, over all: tongue or lap included. 0 means that of the
	// part's Board.
	Width MM
	// Least is what must show of each strip; 0 means that any width will do.
	Least MM
}

// EdgeJoint joins the strips of a made-up part: EdgeGlued, LooseTongue,
// TongueGroove or Shiplap.
type EdgeJoint interface {
	// check looks at the numbers alone.
	check(c *collector, path string)
	// profile is the joint in a part so thick, its problems reported at path.
	profile(c *collector, path string, t, least float64) (profile, bool)
	words() string
}

// EdgeGlued strips are planed square and glued edge to edge.
type EdgeGlued struct{}

// LooseTongue lets a strip of its own into grooves in both edges. The tongues
// are parts too: front/tongue/1 is between front/1 and front/2.
type LooseTongue struct {
	Width MM // of the tongue, 4 or more; 0 means as wide as the part is thick
	// Board that the tongues are cut from, as thick as the tongue; zero means of the
	// part's timber, about a quarter as thick as the part, in half millimetres: so
	// thin that a housing of the usual depth passes the tongue by.
	Board Board
	Play  MM // by which a groove is thicker and deeper than its half of the tongue; 0 means 0.2
}

// TongueGroove strips have a tongue on the edge to the right (or above) and a
// groove in the other. A board so wide covers its width less the tongue. The
// last strip has no tongue.
type TongueGroove struct {
	Tongue    MM   // length of the tongue, 2 or more; 0 means its thickness
	Thickness MM   // of the tongue, in the middle of the board; 0 means a third of the part's, to the nearest half millimetre
	Play      MM   // by which the groove is thicker and deeper than the tongue; 0 means 0.2
	Gap       MM   // left open between the strips, on both faces, for wood that swells
	Dry       bool // no glue: boarding that is free to move
}

// Shiplap strips are boarding: rebated to half their thickness, so that the
// outer half of each laps over the inner half of the one before it. Where the
// grain runs across, the upper board laps over the lower one outside, and rain
// runs off. A board covers its width less the lap. They are nailed, not glued.
type Shiplap struct {
	Lap MM // 3 or more
	Gap MM // left open between the strips, on both faces, for wood that swells
}

// StripN is the n-th strip of a made-up part, counted from 1.
func StripN(p Part, n int) Part { return Part(fmt.Sprintf("%s/%d", p, n)) }

// TongueN is the loose tongue between the n-th strip of a part and the next.
func TongueN(p Part, n int) Part { return Part(fmt.Sprintf("%s/tongue/%d", p, n)) }

// edgeJoint is the joint, glued where none is given.
func (m *MadeUp) edgeJoint() EdgeJoint {
	if v := reflect.ValueOf(m.Joint); m.Joint == nil || v.Kind() == reflect.Pointer && v.IsNil() {
		return EdgeGlued{}
	}
	return m.Joint
}

// mostStrips of one part.
const mostStrips = 200

// checkMadeUp looks at the numbers.
func (d Design) checkMadeUp(c *collector) {
	for i, m := range d.MadeUp {
		path := fmt.Sprintf("MadeUp[%d]", i)
		for _, o := range d.MadeUp[:i] {
			if o.Of == m.Of {
				c.addf(path+".Of", "twice", "%.60q is made up twice", string(m.Of))
				break
			}
		}
		if m.Width != 0 {
			c.length(path+".Width", m.Width, "width of the boards that strips are cut from")
		}
		c.atLeast0(path+".Least", m.Least, "least width that shows of a strip")
		switch j := m.edgeJoint(); j.(type) {
		case EdgeGlued, LooseTongue, TongueGroove, Shiplap, *EdgeGlued, *LooseTongue, *TongueGroove, *Shiplap:
			j.check(c, typed(path+".Joint", j))
		default: // a type that has one inside, perhaps nil
			c.strange(path+".Joint", j, "edge joint")
		}
	}
}

// checkMade sees that the parts that are to be made up exist.
func (s *shell) checkMade() {
	known := map[Part]bool{AllWalls: true, AllRoof: true}
	want := []string{string(AllWalls), string(AllRoof)}
	for i := range s.faces {
		if f := &s.faces[i]; !f.open {
			known[f.part] = true
			want = append(want, string(f.part))
		}
	}
	for i, m := range s.d.MadeUp {
		if !known[m.Of] {
			s.unknown(fmt.Sprintf("MadeUp[%d].Of", i), m.Of, want)
		}
	}
}

// madeUpOf is the entry for a face and its path: the part's own, else its
// group's.
func (s *shell) madeUpOf(f *face) (*MadeUp, string) {
	for _, name := range []Part{f.part, f.group()} {
		i := slices.IndexFunc(s.d.MadeUp, func(m MadeUp) bool { return name != "" && m.Of == name })
		if i >= 0 {
			return &s.d.MadeUp[i], fmt.Sprintf("MadeUp[%d]", i)
		}
	}
	return nil, ""
}

// courses is how a part is divided: strips that show from los[k] to his[k]
// across the grain, in the feature frame of its face.
type courses struct {
	los, his []float64
	cover    float64
	board    float64 // width of the boards
	prof     profile
	joint    EdgeJoint
}

// courses divides a part, or returns nil where it stays whole or cannot be
// divided.
func (s *shell) courses(m *MadeUp, path string, p *part) *courses {
	f := p.face
	c := &courses{board: float64(m.Width), joint: m.edgeJoint()}
	if c.board == 0 {
		c.board = float64(f.board.Width)
	}
	if c.board == 0 {
		s.c.add(Problem{Path: path + ".Width", Code: "missing", Got: string(f.part), Why: fmt.Sprintf("say how wide the boards for %s are", f.part), Try: "a Width here, or of its Board"})
		return nil
	}
	if p.grain(FromOuter) == [2]float64{} {
		s.c.addf(path+".Of", "no-grain", "strips run along the grain, and %s is of sheet stock, which has none: give its board a grain, or leave it whole", f.part)
		return nil
	}
	lo, hi := p.across()
	wide := hi - lo
	if wide <= c.board+1e-6 {
		return nil
	}
	var ok bool
	if c.prof, ok = c.joint.profile(s.c, typed(path+".Joint", c.joint), f.t, f.least); !ok {
		return nil
	}
	// n strips and the gaps between them are as wide as the part; all but the
	// last have a tongue or a lap besides.
	most, gap := c.board-c.prof.most, c.prof.gap
	if !(most >= minLength) {
		s.c.add(Problem{Path: path + ".Width", Code: "range", Got: num(c.board), Lo: c.prof.most + minLength, Hi: maxLength, Unit: "mm",
			Why: fmt.Sprintf("the tongue or lap between the strips of %s leaves nothing of so narrow a board", f.part)})
		return nil
	}
	count := math.Ceil((wide+gap)/(most+gap) - 1e-7)
	if !s.c.within(path+".Of", count, 2, mostStrips, "", fmt.Sprintf("strips of %s, %s wide, from boards of %s", f.part, num(round1(wide)), num(c.board))) {
		return nil
	}
	n := int(count)
	c.cover = (wide - float64(gap*float64(n-1))) / float64(n)
	if need := math.Max(float64(m.Least), c.prof.least); c.cover < need-1e-6 {
		x := Problem{Path: path + ".Least", Code: "narrow-strip", Got: num(math.Round(c.cover*1e4) / 1e4), Lo: need, Hi: maxLength, Unit: "mm",
			Why: fmt.Sprintf("%s is %s wide, and boards of %s make it up of %d strips that narrow", f.part, num(round1(wide)), num(c.board), n)}
		if k := math.Floor((wide + gap) / (need + gap)); k >= 2 {
			x.Try = "boards of at least " + num(math.Ceil(((wide-float64(gap*(k-1)))/k+c.prof.most)*10)/10)
		} else {
			x.Try = "boards of at least " + num(math.Ceil(wide*10)/10)
		}
		s.c.add(x)
		return nil
	}
	for k := range n {
		at := lo + float64(float64(k)*(c.cover+gap))
		c.los, c.his = append(c.los, roundTo(at, 30)), append(c.his, roundTo(at+c.cover, 30))
	}
	return c
}

// across is the reach of a part across its grain, in its feature frame.
func (p *part) across() (lo, hi float64) {
	d := p.acrossAxis()
	lo, hi = p.convex.Reach(d)
	o := d.Dot(p.face.frame.O)
	return lo - o, hi - o
}
