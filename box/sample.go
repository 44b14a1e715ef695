package box

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"

	"holt.example/joints"
)

// sampleLength is the length of a test piece along its edge.
const sampleLength = 60

// sample is a joint of a design, to be tried out on two offcuts.
type sample struct {
	joint      joint
	path       string
	a, b       Board // with the grain as it runs at the edge
	partA      Part
	partB      Part
	theta      float64
	runOn      float64
	length     float64
	sec        joints.Section
	clearances []MM // nil: it has none to choose
}

// TestPieces are samples of the joints of a design, to be cut first and from
// the same boards: of each joint two offcuts, 60 mm along the edge, with the
// thicknesses, the angle and the run of the grain that they have in the box. A
// joint with a play of its own (joints.Fitted: housing, comb, and rebate, whose
// lip then stands proud) is there once for each clearance; without clearances
// given, for 0.1, 0.2 and 0.3. A butt and a mitre have none and are there once.
// Fingers of a comb keep their width, so that its sample is a whole number of
// them long; stops are at most a quarter of the sample.
//
// Of a joint between the strips of made-up parts there are two short strips, and
// the loose tongue if it has one; a loose tongue, and a tongue and groove, have a
// play too.
//
// The offcut that the clearance is cut into carries the sample's number and its
// clearance, engraved on its inner face: "1: 0.2". On boards under 3 it does not.
//
// Joints that would give the same offcuts are there once, under the parts that
// meet in the first of them: "free/2 rebate 0.1 front" with "free/2 rebate 0.1
// left". The plan is written like any other.
func (d Design) TestPieces(clearances ...MM) (*Plan, error) {
	c := &collector{}
	if len(clearances) == 0 {
		clearances = []MM{0.1, 0.2, 0.3}
	}
	for i, x := range clearances {
		path := fmt.Sprintf("clearances[%d]", i)
		c.within(path, float64(x), 0, 5, "mm", "room in a joint")
		for _, y := range clearances[:i] {
			if x == y {
				c.addf(path, "twice", "the clearance %s is there already", num(float64(x)))
			}
		}
	}
	_, s, _, err := d.solve(nil)
	if err != nil {
		return nil, err
	}
	samples := s.samples(clearances)
	strips := s.stripSamples()
	if len(samples)+len(strips) == 0 {
		c.addf("Size", "no-joints", "there are no joints to try: every part stands by itself")
	}
	if len(c.ps) > 0 {
		return nil, c.err()
	}
	out := &Plan{name: d.Name + ", test pieces", chord: s.chord(), index: map[Part]int{}, words: map[Part][]string{}}
	var parts []*part
	pitch := 0.0
	for i := range samples {
		pitch = math.Max(pitch, samples[i].room())
	}
	for i := range strips {
		pitch = math.Max(pitch, strips[i].room())
	}
	row, number := 0, 0
	// add solves one sample at each of its clearances, side by side to the back.
	add := func(fits []MM, path, stands string, solve func(number int, play MM, at Point, chord MM) (*Plan, []*part, error)) error {
		for k, play := range append([]MM(nil), fits...) {
			at := Point{MM(float64(number%12) * pitch), MM(float64(row+k) * pitch)}
			p, ps, err := solve(number+1, play, at, d.Chord)
			if err != nil {
				var qs Problems
				if !errors.As(err, &qs) {
					return err
				}
				for _, q := range qs {
					q.Path = strings.Replace(q.Path, stands, path, 1)
					c.add(q)
				}
				continue
			}
			out.take(p)
			parts = append(parts, ps...)
		}
		if number++; number%12 == 0 {
			row += len(clearances)
		}
		return nil
	}
	for i := range samples {
		x := &samples[i]
		if err := add(x.fits(), x.path, "Corners.Joint", x.solve); err != nil {
			return nil, err
		}
	}
	for i := range strips {
		x := &strips[i]
		if err := add(x.fits(clearances), x.path, "MadeUp[0]", x.solve); err != nil {
			return nil, err
		}
	}
	if len(c.ps) > 0 {
		return nil, c.err()
	}
	s.group(out, parts)
	return out, nil
}

// take adds the parts of another plan.
func (p *Plan) take(q *Plan) {
	for _, x := range q.pieces {
		p.index[x.Part] = len(p.pieces)
		p.pieces = append(p.pieces, x)
	}
	for name, words := range q.words {
		p.words[name] = words
	}
	p.wholes = append(p.wholes, q.wholes...)
	p.seams = append(p.seams, q.seams...)
	p.voids = append(p.voids, q.voids...)
	p.findings = append(p.findings, q.findings...)
}

// partWord is the name of a part within that of another.
func partWord(p Part) string { return strings.ReplaceAll(string(p), "/", "-") }

// sampleMark is the number of a sample and its clearance, engraved on the offcut
// that the clearance is cut into; very thin boards go without.
func sampleMark(number int, play MM, b Board, at Anchor) []Feature {
	if b.least() < 3 {
		return nil
	}
	text := fmt.Sprint(number)
	if !math.IsNaN(float64(play)) {
		text += ": " + num(float64(play))
	}
	return []Feature{Text{On: WallN(1), Text: text, Height: 6, From: FromInner, At: at}}
}

// nameMark puts the mark on the part by its new name.
func nameMark(fs []Feature, p Part) {
	for i, f := range fs {
		t := f.(Text)
		t.On = p
		fs[i] = t
	}
}

// fits are the clearances of a sample; NaN where there is nothing to choose.
func (x *sample) fits() []MM {
	if x.clearances == nil {
		return []MM{MM(math.NaN())}
	}
	return x.clearances
}

// samples lists the joints of the shell, each once.
func (s *shell) samples(clearances []MM) []sample {
	var out []sample
next:
	for _, e := range append(append([]*edge(nil), s.edges...), s.inner...) {
		if !e.ok {
			continue
		}
		x := s.sampleOf(e)
		if _, ok := x.joint.(joints.Fitted); ok {
			x.clearances = clearances
		}
		for i := range out {
			if out[i].same(&x) {
				continue next
			}
		}
		out = append(out, x)
	}
	return out
}

// sampleOf makes a sample of an edge.
func (s *shell) sampleOf(e *edge) sample {
	a, b := &s.faces[e.over], e.second(s)
	x := sample{joint: e.joint, path: e.path, a: sampleBoard(a, e), b: sampleBoard(b, e), partA: a.part, partB: b.part,
		theta: math.Round(e.theta*1e6) / 1e6, length: sampleLength}
	if x.path == "" {
		x.path = "Joints"
	}
	switch j := x.joint.(type) {
	case *joints.Comb:
		x.joint = *j
	case *joints.Housing:
		x.joint = *j
	case *joints.Rebate:
		x.joint = *j
	}
	switch j := x.joint.(type) {
	case joints.Comb:
		n := len(e.sec.A.Lose) + len(e.sec.B.Lose)
		wide := e.length / float64(n)
		k := min(n, max(3, int(math.Round(sampleLength/wide))))
		if (n-k)%2 != 0 { // both ends keep their owners
			k++
		}
		j.Fingers = k
		x.joint, x.length = j, wide*float64(k)
	case joints.Housing:
		j.Stop, j.StopFrom, j.StopTo = min(j.Stop, sampleLength/4), min(j.StopFrom, sampleLength/4), min(j.StopTo, sampleLength/4)
		x.joint = j
	}
	// As short as the joint allows past the corner.
	c := x.corner()
	for _, run := range []float64{0, math.Ceil(math.Max(a.t, b.t)) + 1, e.run, a.t} {
		c.RunOn, x.runOn = MM(run), run
		if sec, err := askQuietly(x.joint, c); err == nil {
			x.sec = sec
			break
		}
	}
	return x
}

// corner is where the sample's offcuts meet.
func (x *sample) corner() joints.Corner {
	return joints.Corner{TA: MM(x.a.most()), TB: MM(x.b.most()), LeastA: MM(x.a.least()), LeastB: MM(x.b.least()),
		Theta: Deg(x.theta), Length: MM(x.length), RunOn: MM(x.runOn)}
}

// same reports whether two samples would give the same offcuts.
func (x *sample) same(y *sample) bool {
	return x.a == y.a && x.b == y.b && x.theta == y.theta && math.Abs(x.length-y.length) < 1e-6 && x.runOn == y.runOn && reflect.DeepEqual(x.sec, y.sec)
}

// sampleBoard is the board of a face with its grain told from the edge, which
// stands upright in the sample.
func sampleBoard(f *face, e *edge) Board {
	b := f.board
	p := part{face: f}
	g := p.grain(FromOuter)
	switch along := math.Abs(float64(g[0]*f.frame.U.Dot(e.dir)) + float64(g[1]*f.frame.V.Dot(e.dir))); {
	case g == [2]float64{}:
		b.Grain = GrainNone
	case along > math.Sqrt2/2:
		b.Grain = GrainUp
	default:
		b.Grain = GrainAcross
	}
	return b
}

// arm is the size of an offcut away from the edge: at least as long as the
// sample, and enough that no end takes half of it.
func (x *sample) arm() float64 {
	sn, _ := sincos(x.theta)
	return math.Max(sampleLength, 4*math.Max(x.a.most(), x.b.most())/sn)
}

// room is the space that the sample takes up on the floor, every way.
func (x *sample) room() float64 {
	sn, _ := sincos(x.theta)
	return 2*x.arm() + (x.a.most()+x.b.most()+x.runOn+5)/sn + 40
}

// solve resolves the sample as a box of two walls, open on all other sides.
// The corner stands at the place given; the open sides are square to the walls.
func (x *sample) solve(number int, play MM, at Point, chord MM) (*Plan, []*part, error) {
	name := fmt.Sprintf("%d %s", number, x.sec.Name)
	if !math.IsNaN(float64(play)) {
		name += " " + num(float64(play))
	}
	arm := x.arm()
	sn, cs := sincos(180 - x.theta)
	hsn, hcs := sincos(180 - x.theta/2) // the bisector, into the corner
	_, half := sincos(x.theta / 2)
	corner := func(r, c, s float64) Point { return Point{at.X + MM(float64(r*c)), at.Y + MM(float64(r*s))} }
	d := Design{
		Name: name, Board: x.a, Boards: map[Part]Board{WallN(2): x.b}, Chord: chord,
		Size: Cavity{Height: MM(x.length)},
		Footprint: Polygon{[]Point{
			corner(arm, -1, 0), at, corner(arm, cs, sn), corner(arm/half, hcs, hsn),
		}},
		Walls:   []Wall{{On: WallN(3), Open: true}, {On: WallN(4), Open: true}},
		Corners: Corners{Joint: sampleJoint{x.fitted(play), MM(x.runOn)}},
		Floor:   NoFloor{}, Roof: NoRoof{},
	}
	d.Features = sampleMark(number, play, x.a, Anchor{Datum: FromLeft, Right: MM(arm / 2), Up: MM(x.length / 2)})
	end := func(p Part) Part { return FreePart(name + " " + partWord(p)) }
	p, _, parts, err := d.solve(func(s *shell) {
		s.faces[0].part, s.faces[1].part = end(x.partA), end(x.partB)
		nameMark(s.d.Features, end(x.partA))
	})
	return p, parts, err
}

// askQuietly asks a joint for its section, checked. A panic is an error here.
func askQuietly(j joint, c joints.Corner) (sec joints.Section, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = errPanic
		}
	}()
	if sec, err = j.Section(c); err == nil {
		err = joints.Check(c, sec)
	}
	return sec, err
}

var errPanic = errors.New("the joint panicked")

// fitted is the joint with a play. What a joint makes of itself is looked at no
// sooner than by Section.
func (x *sample) fitted(play MM) (j joint) {
	f, ok := x.joint.(joints.Fitted)
	if !ok || math.IsNaN(float64(play)) {
		return x.joint
	}
	defer func() {
		if r := recover(); r != nil || isNil(j) {
			j = unfit{}
		}
	}()
	return f.Fit(play)
}

// unfit stands for what a joint could not be fitted to.
type unfit struct{}

// Section refuses.
func (unfit) Section(joints.Corner) (joints.Section, error) {
	return joints.Section{}, errors.New("the joint's Fit gives no joint")
}

// sampleJoint is a joint whose first part runs on as it does in the box.
type sampleJoint struct {
	joint
	runOn MM
}

// Section is that of the joint.
func (j sampleJoint) Section(c joints.Corner) (joints.Section, error) {
	c.RunOn += j.runOn
	return j.joint.Section(c)
}
