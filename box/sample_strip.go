package box

import (
	"fmt"
	"math"
	"reflect"
)

// stripSample is a joint between strips, to be tried out on two short ones.
type stripSample struct {
	joint EdgeJoint
	path  string
	board Board
	part  Part
	prof  profile
	t     float64
}

// stripSamples lists the joints of made-up parts, each once.
func (s *shell) stripSamples() []stripSample {
	var out []stripSample
next:
	for _, w := range s.made {
		f := w.part.face
		b := f.board
		b.Grain, b.Width = GrainUp, 0
		x := stripSample{joint: w.joint, path: w.path, board: b, part: f.part, prof: w.prof, t: f.t}
		if p := reflect.ValueOf(w.joint); p.Kind() == reflect.Pointer {
			x.joint = p.Elem().Interface().(EdgeJoint)
		}
		for _, y := range out {
			if x.board == y.board && x.t == y.t && reflect.DeepEqual(x.joint, y.joint) {
				continue next
			}
		}
		out = append(out, x)
	}
	return out
}

// fits are the clearances of a sample; NaN where there is nothing to choose.
func (x *stripSample) fits(clearances []MM) []MM {
	switch x.joint.(type) {
	case LooseTongue, TongueGroove:
		return clearances
	}
	return []MM{MM(math.NaN())}
}

// fitted is the joint with a play.
func (x *stripSample) fitted(play MM) EdgeJoint {
	play = max(play, 1e-6) // 0 would be the usual play
	switch j := x.joint.(type) {
	case LooseTongue:
		j.Play = play
		return j
	case TongueGroove:
		j.Play = play
		return j
	}
	return x.joint
}

// cover is what shows of each strip.
func (x *stripSample) cover() float64 {
	return math.Max(sampleLength, math.Max(math.Ceil(x.prof.least), 4*x.t))
}

// room is the space that the sample takes up on the floor, every way.
func (x *stripSample) room() float64 { return 2*x.cover() + x.prof.gap + 2*x.t + 40 }

// solve resolves the sample as the one wall of a box: its two strips stand upright,
// with the joint above the place given.
func (x *stripSample) solve(number int, play MM, at Point, chord MM) (*Plan, []*part, error) {
	name := fmt.Sprintf("%d %s", number, x.joint.words())
	j := x.joint
	if !math.IsNaN(float64(play)) {
		name += " " + num(float64(play))
		j = x.fitted(play)
	}
	cover := x.cover()
	half := MM(cover + x.prof.gap/2)
	d := Design{
		Name: name, Board: x.board, Chord: chord,
		Size:      Cavity{Height: sampleLength},
		Footprint: Polygon{[]Point{{at.X - half, at.Y}, {at.X + half, at.Y}, {at.X + half, at.Y + 50}, {at.X - half, at.Y + 50}}},
		Walls:     []Wall{{On: WallN(2), Open: true}, {On: WallN(3), Open: true}, {On: WallN(4), Open: true}},
		Floor:     NoFloor{}, Roof: NoRoof{},
	}
	whole := FreePart(name + " " + partWord(x.part))
	d.MadeUp = []MadeUp{{Of: WallN(1), Joint: j, Width: MM(cover + x.prof.most)}}
	d.Features = sampleMark(number, play, x.board, Anchor{Datum: FromLeft, Right: MM(cover / 2), Up: sampleLength / 2})
	p, _, parts, err := d.solve(func(s *shell) {
		s.faces[0].part, s.d.MadeUp[0].Of = whole, whole
		nameMark(s.d.Features, whole)
	})
	return p, parts, err
}
