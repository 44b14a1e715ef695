package box_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
)

// refusal is a design that cannot be made, and what is said about it.
type refusal struct {
	name       string
	change     func(*box.Design)
	path, code string
	says       string  // part of the sentence
	lo, hi     float64 // of the range, if hi is not 0
}

func checkRefusals(t *testing.T, base box.Design, xs []refusal) {
	t.Helper()
	for _, x := range xs {
		_, ps := tryResolve(t, x.name, base.With(x.change))
		found := false
		for _, p := range ps {
			if p.Path != x.path || p.Code != x.code {
				continue
			}
			found = true
			assert.Contains(t, p.Error(), x.says, x.name)
			if x.hi != 0 {
				assert.InDelta(t, x.lo, p.Lo, 1e-6, x.name)
				assert.InDelta(t, x.hi, p.Hi, 1e-6, x.name)
			}
		}
		assert.True(t, found, "%s: no %s at %s in:\n%v", x.name, x.code, x.path, ps)
	}
}

// What geometry forbids, each with its place in the design and its range.
func TestWhatCannotBeMade(t *testing.T) {
	checkRefusals(t, orchard, []refusal{
		{"pitch 89.9", func(d *box.Design) { d.Roof = box.Pent{Pitch: 89.9} }, "Roof.Pent.Pitch", "range", "89.9", 1, 75},
		{"pitch 90", func(d *box.Design) { d.Roof = box.Gable{Pitch: 90} }, "Roof.Gable.Pitch", "range", "90", 1, 75},
		{"pitch below", func(d *box.Design) { d.Roof = box.Hip{Pitch: 0.5} }, "Roof.Hip.Pitch", "range", "roof without slope is Flat{}", 1, 75},
		// 341 up over half of 120: atan(341/60) = 80.02 degrees.
		{"rise too steep", func(d *box.Design) { d.Roof = box.Gable{Rise: 341} }, "Roof.Gable.Rise", "range", "run of 60", 1, 75},
		{"pitch and rise", func(d *box.Design) { d.Roof = box.Pent{Pitch: 10, Rise: 30} }, "Roof.Pent.Rise", "twice", "not both", 0, 0},
		// 14.6 less a lip of 6.
		{"joint deeper than its board", func(d *box.Design) { d.Corners.Joint = joints.Rebate{Depth: 15} }, "Corners.Joint.Depth", "joint", "lip", 0.1, 8.6},
		{"housing deeper than its board", func(d *box.Design) { d.Floor = box.FloorBetween{Raise: 20, Joint: joints.Housing{Depth: 20}} },
			"Floor.FloorBetween.Joint.Depth", "joint", "too deep", 0.4, 8.4}, // 8.6 less play 0.2; two plays at least
		{"edge's own joint", func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Joint: joints.Rebate{Depth: 9}}}
		}, "Joints[0].Joint.Depth", "joint", "front", 0.1, 8.6},
		{"even comb", func(d *box.Design) { d.Corners.Joint = joints.Comb{Fingers: 4} }, "Corners.Joint.First", "joint", "even count", 0, 0},
		{"hole wider than its wall", func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 130}, Above: 50}}
		},
			"Features[0].Entrance", "off-cavity", "130 across", 0, 0},
		{"hole off to the side", func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 50, Right: 50}}
		},
			"Features[0].Entrance", "off-cavity", "reaches 6 past", 0, 0}, // 50 + 16 - 60
		{"hole too high", func(d *box.Design) {
			d.Features = []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 230}}
		},
			"Features[0].Entrance", "off-cavity", "reaches 22 past", 0, 0}, // 230 + 32 - 240
		{"cut off the part", func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.Left, At: box.Anchor{Right: 500, Up: 50}, Shape: box.Round{Diameter: 10}}}
		}, "Features[0].Cut", "off-part", "left", 0, 0},
		{"pocket through", func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.Left, At: box.Anchor{Up: 50}, Shape: box.Round{Diameter: 10}, Depth: 14.5}}
		}, "Features[0].Cut.Depth", "range", "left", 0.1, 14.1}, // half a millimetre stays
		{"two in one place", func(d *box.Design) {
			hole := box.Cut{On: box.Left, At: box.Anchor{Up: 50}, Shape: box.Round{Diameter: 10}}
			d.Features = []box.Feature{hole, hole}
		}, "Features[1].Cut", "feature-meets-feature", "Features[0]", 0, 0},
		{"cut into a joint", func(d *box.Design) {
			d.Features = []box.Feature{box.Cut{On: box.Front, At: box.Anchor{Right: 65, Up: 50}, Shape: box.Round{Diameter: 10}}}
		}, "Features[0].Cut", "feature-meets-joint", "rebate with right", 0, 0},
		{"no shape", func(d *box.Design) { d.Features = []box.Feature{box.Entrance{Above: 170}} }, "Features[0].Entrance.Shape", "missing", "", 0, 0},
		// Outside 280 high: 14.6 + 300 below the floor.
		{"floor raised through the roof", func(d *box.Design) {
			d.Size, d.Floor = box.Outside{Width: 150, Depth: 150, Height: 280}, box.FloorBetween{Raise: 300}
		}, "Size.Outside.Height", "too-small", "whole height", 0, 0},
		{"boards thicker than the outside", func(d *box.Design) { d.Size = box.Outside{Width: 29, Depth: 150, Height: 280} }, "Size", "no-cavity", "", 0, 0},
		// They meet at 240 x tan 16 = 68.8 over 60.
		{"walls close", func(d *box.Design) {
			d.Walls, d.Roof = []box.Wall{{On: box.Left, Lean: -16}, {On: box.Right, Lean: -16}}, box.Flat{}
		}, "Walls[0].Lean", "lost-face", "the walls meet 209.2 above the cavity floor, before they reach roof", -11.7, 0},
		{"wall lost", func(d *box.Design) { // the back leans in under the front's top: 120/tan 40 = 143 of 240
			d.Walls, d.Roof = []box.Wall{{On: box.Back, Lean: -40}}, box.Flat{}
		}, "Walls[0].Lean", "lost-face", "the walls meet 143 above", -25.9, 0},
		{"lean", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Back, Lean: 61}} }, "Walls[0].Lean", "range", "", -60, 60},
		{"open and running on", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Back, Open: true, Below: 5}} }, "Walls[0].Open", "contradiction", "", 0, 0},
		{"wall twice", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Left, Lean: 1}, {On: box.Left}} }, "Walls[1].On", "twice", "left", 0, 0},
		{"on an open wall", func(d *box.Design) { d.Walls = []box.Wall{{On: box.Front, Open: true}} }, "Features[0].Entrance.On", "open", "front", 0, 0},
		{"no floor to drain", func(d *box.Design) { d.Floor, d.Features = box.NoFloor{}, []box.Feature{box.Drains{}} }, "Features[0].Drains", "open", "", 0, 0},
		{"board thicker than the cavity", func(d *box.Design) { d.Board = thick(130) }, "Board.Thickness", "thicker-than-cavity", "130", 0.5, 120},
		{"one of them", func(d *box.Design) { d.Boards = map[box.Part]box.Board{box.AllWalls: thick(121)} }, `Boards["walls"].Thickness`, "thicker-than-cavity", "121", 0.5, 120},
		{"not convex", func(d *box.Design) {
			d.Walls, d.Size = nil, box.Cavity{Height: 200}
			d.Footprint = box.Polygon{Points: []box.Point{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 100, Y: 50}, {X: 100, Y: 200}}}
		}, "Footprint.Polygon.Points[2]", "not-convex", "", 0, 0},
		{"clockwise", func(d *box.Design) {
			d.Walls, d.Size = nil, box.Cavity{Height: 200}
			d.Footprint = box.Polygon{Points: []box.Point{{X: 0, Y: 0}, {X: 0, Y: 200}, {X: 200, Y: 200}}}
		}, "Footprint.Polygon.Points[1]", "not-convex", "", 0, 0},
		{"partition outside", func(d *box.Design) { d.Inner = []box.Inner{box.Partition{Name: "p", At: 55}} },
			"Inner[0].Partition.At", "outside", "", -52.7, 52.7}, // 60 less half of 14.6
		{"free part in a wall", func(d *box.Design) {
			d.Free = []box.Free{{Name: "plug", Board: thick(10), Outline: square40(), At: box.Place{Y: -62}}}
		}, "Free[0]", "overlap", "front", 0, 0},
	})
	p, ps := tryResolve(t, "pitch 0", orchard.With(func(d *box.Design) { d.Roof = box.Pent{}; d.Walls = nil }))
	require.NotNil(t, p, "%v", ps) // 0 is the default of 10 degrees: 120/cos 10 ...
	assert.InDelta(t, 149.2/math.Cos(10*math.Pi/180)+14.6*math.Tan(10*math.Pi/180), float64(piece(t, p, box.Roof).Length), 1e-6)
}

// Names: any printable text, and no other.
func TestHostileNames(t *testing.T) {
	for _, name := range []string{"a/b", `..\..\etc`, `"quoted" 'n' <b>&amp;`, "=1+1", "ÄÖ 鳥 🐦", ".", "-", "con", strings.Repeat("x", 200)} {
		for _, set := range namesOf {
			_, ps := tryResolve(t, name, orchard.With(func(d *box.Design) { set.put(d, name) }))
			assert.Empty(t, ps, "%s: %q", set.path, name)
		}
	}
	for _, x := range []struct{ name, code string }{
		{"", "no-name"}, {"two\nlines", "control-character"}, {"bell\a", "control-character"}, {"nul\x00", "control-character"}, {"\x7f", "control-character"},
		{"\u0085", "control-character"}, {"\xff\xfe", "control-character"}, {strings.Repeat("x", 201), "long-name"}, {strings.Repeat("\x00", 10_000), "long-name"},
	} {
		for _, set := range namesOf {
			if x.name == "" && set.optional {
				continue
			}
			_, ps := tryResolve(t, x.name, orchard.With(func(d *box.Design) { set.put(d, x.name) }))
			require.NotEmpty(t, ps, "%s: %q", set.path, x.name)
			assert.Equal(t, [2]string{set.path, x.code}, [2]string{ps[0].Path, ps[0].Code}, "%q", x.name)
			assert.Less(t, len(ps.Error()), 2000, "%s", set.path)
		}
	}
}

func square40() outline.Contour { return outline.Rectangle(0, 0, 40, 40) }

var namesOf = []struct {
	path     string
	put      func(*box.Design, string)
	optional bool
}{
	{"Name", func(d *box.Design, s string) { d.Name = s }, false},
	{"Board.Material", func(d *box.Design, s string) { d.Board.Material = s }, true},
	{"Inner[0].Partition.Name", func(d *box.Design, s string) { d.Inner = []box.Inner{box.Partition{Name: s, Height: 60}} }, false},
	{"Free[0].Name", func(d *box.Design, s string) {
		d.Free = []box.Free{{Name: s, Board: thick(10), Outline: square40(), At: box.Place{Y: 500}}}
	}, false},
	{"Features[0].Cut.Name", func(d *box.Design, s string) {
		d.Features = []box.Feature{box.Cut{On: box.Left, At: box.Anchor{Up: 50}, Shape: box.Round{Diameter: 10}, Name: s}}
	}, true},
}

// A part that the design does not have is named, with the nearest one that it
// has where a slip of the pen is likely.
func TestUnknownParts(t *testing.T) {
	for _, x := range []struct {
		path   string
		change func(*box.Design, box.Part)
		slip   box.Part
		try    string
	}{
		{"Walls[0].On", func(d *box.Design, p box.Part) { d.Walls[0].On = p }, "bcak", "back"},
		{"Joints[0].Over", func(d *box.Design, p box.Part) { d.Joints = []box.Between{{Over: p, Under: box.Left}} }, "fornt", "front"},
		{"Joints[0].Under", func(d *box.Design, p box.Part) { d.Joints = []box.Between{{Over: box.Front, Under: p}} }, "lefft", "left"},
		{`Boards["rigt"]`, func(d *box.Design, p box.Part) { d.Boards = map[box.Part]box.Board{p: thick(9)} }, "rigt", "right"},
		{"Features[0].Entrance.On", func(d *box.Design, p box.Part) {
			d.Features = []box.Feature{box.Entrance{On: p, Shape: box.Round{Diameter: 32}}}
		}, "Front", "front"},
		{"Features[0].Vents.On[0]", func(d *box.Design, p box.Part) { d.Features = []box.Feature{box.Vents{On: []box.Part{p}}} }, "lef", "left"},
		{"Features[0].Cut.On", func(d *box.Design, p box.Part) {
			d.Features = []box.Feature{box.Cut{On: p, Shape: box.Round{Diameter: 5}}}
		}, "rooof", "roof"},
	} {
		ps := problems(t, orchard.With(func(d *box.Design) { x.change(d, x.slip) }))
		assert.Equal(t, [3]string{x.path, "unknown-part", x.try}, [3]string{ps[0].Path, ps[0].Code, ps[0].Try}, "%v", ps)
		assert.Contains(t, ps[0].Why, "front", "the parts there are")
		if strings.HasPrefix(x.path, "Boards") {
			continue
		}
		ps = problems(t, orchard.With(func(d *box.Design) { x.change(d, "wall/7") }))
		assert.Equal(t, [3]string{x.path, "unknown-part", "front, right, back or left"}, [3]string{ps[0].Path, ps[0].Code, ps[0].Try}, "%v", ps)
		long := box.Part(strings.Repeat("front", 2000))
		ps = problems(t, orchard.With(func(d *box.Design) { x.change(d, long) }))
		assert.Less(t, len(ps.Error()), 2000, "%s", x.path)
	}
	// Polygons have no front, and rectangles no wall/1.
	ps := problems(t, box.Design{Name: "hexagon", Board: thick(15), Size: box.Cavity{Height: 200}, Footprint: box.Regular{Sides: 6, Across: 200},
		Floor: box.NoFloor{}, Roof: box.NoRoof{}, Features: []box.Feature{box.Entrance{On: box.Front, Shape: box.Round{Diameter: 30}}}})
	assert.Contains(t, ps[0].Why, "wall/1")
}

// mad is a joint of a user's own that answers what it is told to.
type mad struct {
	answer func(joints.Corner) (joints.Section, error)
}

func (m mad) Section(c joints.Corner) (joints.Section, error) { return m.answer(c) }

// lost is one with a pointer receiver that would crash on nil.
type lost struct{ depth box.MM }

func (l *lost) Section(c joints.Corner) (joints.Section, error) {
	return joints.Rebate{Depth: l.depth}.Section(c)
}

// A user's joint that returns nonsense is a problem at that joint's path, and
// nothing worse.
func TestJointsThatReturnNonsense(t *testing.T) {
	t.Parallel()
	butt := func(c joints.Corner, change func(*joints.Section)) (joints.Section, error) {
		s, err := joints.Butt{}.Section(c)
		change(&s)
		return s, err
	}
	many := func(n int) []joints.Line {
		ls := make([]joints.Line, n)
		for i := range ls {
			ls[i] = joints.Line{A: 1, B: float64(i) / float64(n), K: 1e4}
		}
		return ls
	}
	for name, answer := range map[string]func(joints.Corner) (joints.Section, error){
		"nothing":  func(joints.Corner) (joints.Section, error) { return joints.Section{}, nil },
		"an error": func(joints.Corner) (joints.Section, error) { return joints.Section{}, errors.New("not today") },
		"a long error": func(joints.Corner) (joints.Section, error) {
			return joints.Section{}, errors.New(strings.Repeat("no ", 9999))
		},
		"a nil fault": func(joints.Corner) (joints.Section, error) { var f *joints.Fault; return joints.Section{}, f },
		"a panic":     func(joints.Corner) (joints.Section, error) { panic("boo") },
		"an index":    func(c joints.Corner) (joints.Section, error) { return joints.Section{}, make([]error, 1)[int(c.Theta)] },
		"NaN": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.A.Keep[0].K = math.NaN() })
		},
		"infinite": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.B.Keep[0].K = math.Inf(1) })
		},
		"no normal": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.A.Keep[0] = joints.Line{} })
		},
		"both take all": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.B.Keep[0].K = float64(c.TA) })
		},
		"a gap": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.B.Keep[0].K = -0.01 })
		},
		"huge lists": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) {
				for range 20000 {
					s.A.Lose = append(s.A.Lose, joints.Zone{Lines: many(50), From: 1, To: 2})
				}
			})
		},
		"huge keep": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.A.Keep = append(s.A.Keep, many(200_000)...); s.B.Keep = nil })
		},
		"backward zone": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.Void = []joints.Zone{{From: 5, To: 4}} })
		},
		"unknown end": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.Ends[1] = 7 })
		},
		"negative play": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.Play = -1 })
		},
		"NaN play": func(c joints.Corner) (joints.Section, error) {
			return butt(c, func(s *joints.Section) { s.Greatest = box.MM(math.NaN()) })
		},
	} {
		nonsense(t, name, answer)
	}
}

// nonsense puts a joint wherever a joint may be.
func nonsense(t *testing.T, name string, answer func(joints.Corner) (joints.Section, error)) {
	t.Helper()
	for path, change := range map[string]func(*box.Design){
		"Corners.Joint":            func(d *box.Design) { d.Corners.Joint = mad{answer} },
		"Floor.FloorBetween.Joint": func(d *box.Design) { d.Floor = box.FloorBetween{Joint: mad{answer}} },
		"Roof.Pent.Joint":          func(d *box.Design) { d.Roof = box.Pent{Joint: &mad{answer}}; d.Walls = nil },
		"Joints[0].Joint": func(d *box.Design) {
			d.Joints = []box.Between{{Over: box.Front, Under: box.Left, Joint: mad{answer}}}
		},
		"Inner[0].Partition.Joint": func(d *box.Design) { d.Inner = []box.Inner{box.Partition{Name: "p", Height: 50, Joint: mad{answer}}} },
	} {
		_, ps := tryResolve(t, name, orchard.With(change))
		if !assert.NotEmpty(t, ps, "%s at %s is accepted", name, path) {
			continue
		}
		for _, p := range ps {
			assert.Equal(t, path, p.Path, "%s: %v", name, p)
		}
		assert.Less(t, len(ps.Error()), 20000, "%s", name)
	}
}

// Interfaces left nil, or holding a nil pointer: what may be left out is left
// out, and the rest is a problem.
func TestNilEverywhere(t *testing.T) {
	checkRefusals(t, orchard, []refusal{
		{"size", func(d *box.Design) { d.Size = nil }, "Size", "missing", "Cavity", 0, 0},
		{"roof", func(d *box.Design) { d.Roof = nil }, "Roof", "missing", "NoRoof{}", 0, 0},
		{"floor", func(d *box.Design) { d.Floor = nil }, "Floor", "missing", "NoFloor{}", 0, 0},
		{"inner", func(d *box.Design) { d.Inner = []box.Inner{nil} }, "Inner[0]", "unknown-value", "", 0, 0},
		{"feature", func(d *box.Design) { d.Features = []box.Feature{nil} }, "Features[0]", "unknown-value", "", 0, 0},
		{"size pointer", func(d *box.Design) { d.Size = (*box.Cavity)(nil) }, "Size", "unknown-value", "*box.Cavity", 0, 0},
		{"footprint pointer", func(d *box.Design) { d.Footprint = (*box.Regular)(nil) }, "Footprint", "unknown-value", "", 0, 0},
		{"roof pointer", func(d *box.Design) { d.Roof = (*box.Pent)(nil) }, "Roof", "unknown-value", "", 0, 0},
		{"floor pointer", func(d *box.Design) { d.Floor = (*box.FloorUnder)(nil) }, "Floor", "unknown-value", "", 0, 0},
		{"inner pointer", func(d *box.Design) { d.Inner = []box.Inner{(*box.Partition)(nil)} }, "Inner[0]", "unknown-value", "", 0, 0},
		{"feature pointer", func(d *box.Design) { d.Features = []box.Feature{(*box.Entrance)(nil)} }, "Features[0]", "unknown-value", "", 0, 0},
		{"shape pointer", func(d *box.Design) { d.Features = []box.Feature{box.Entrance{Shape: (*box.Round)(nil)}} }, "Features[0].Entrance.Shape", "unknown-value", "", 0, 0},
	})
	want := resolve(t, orchard.With(func(d *box.Design) { d.Corners.Joint = nil }))
	for _, j := range []joints.Joint{(*lost)(nil), (*joints.Rebate)(nil), (*mad)(nil)} {
		p := resolve(t, orchard.With(func(d *box.Design) { d.Corners.Joint = j }))
		assert.Equal(t, want.Seams(), p.Seams(), "%T", j)
	}
	// A pointer that leads somewhere is a joint like any other.
	a, b := resolve(t, orchard.With(func(d *box.Design) { d.Corners.Joint = &lost{5} })), resolve(t, orchard.With(func(d *box.Design) { d.Corners.Joint = joints.Rebate{Depth: 5} }))
	assert.Equal(t, a.Seams(), b.Seams())
	// A design with nothing in it: everything that is required is asked for.
	ps := problems(t, box.Design{})
	var paths []string
	for _, p := range ps {
		paths = append(paths, p.Path)
	}
	assert.Subset(t, paths, []string{"Name", "Board.Thickness", "Size", "Roof", "Floor"})
}
