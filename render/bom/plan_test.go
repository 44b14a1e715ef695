package bom

import (
	"math"
	"slices"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/box/solid"
	"holt.example/joints"
)

// pent is the box of the design page's example, whose sizes geometry-2.md,
// section 2, works out.
func pent() box.Design {
	return box.Design{
		Name:     "orchard pent",
		Board:    box.Board{Thickness: 15, Measured: 14.6, Material: "larch"},
		Size:     box.Cavity{Width: 120, Depth: 120, Height: 240},
		Roof:     box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 20, Right: 20}},
		Walls:    []box.Wall{{On: box.Back, Above: 80, Below: 60}},
		Corners:  box.Corners{Joint: joints.Rebate{}, Laps: box.FrontBack},
		Floor:    box.FloorBetween{Raise: 20},
		Features: []box.Feature{box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170}},
	}
}

func resolve(t *testing.T, d box.Design) *box.Plan {
	t.Helper()
	p, err := d.Resolve()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPentBox(t *testing.T) {
	l := New(resolve(t, pent()), Options{Step: 0.5})
	for _, tt := range []struct {
		part          box.Part
		length, width box.MM // exact
		cutL, cutW    box.MM
	}{
		{box.Front, 274.6, 149.2, 274.5, 149.5},     // its top goes under the roof
		{box.Back, 435.032960, 149.2, 435.5, 149.5}, // laps over all that it meets
		{box.Left, 301.594683, 134, 301.5, 134},     // in two rebates, under the roof
		{box.Floor, 120, 120, 120, 120},             //
		{box.Roof, 181.603994, 189.2, 181.5, 189.5}, // butts against the back, free at the sides
	} {
		it := l.Items[itemOf(l, tt.part)]
		if math.Abs(float64(it.Length-tt.length)) > 1e-6 || math.Abs(float64(it.Width-tt.width)) > 1e-6 || it.CutLength != tt.cutL || it.CutWidth != tt.cutW {
			t.Errorf("%s: %v x %v cut to %v x %v, want %+v", tt.part, it.Length, it.Width, it.CutLength, it.CutWidth, tt)
		}
	}
	it := l.Items[itemOf(l, box.Left)]
	if it.Quantity != 2 || !slices.Contains(it.Parts, box.Right) || it.Face != "left: inside; right: outside" {
		t.Errorf("the sides are equal, one turned over: %d, %v, %s", it.Quantity, it.Parts, it.Face)
	}
	// 170 + 16 above the cavity's floor, 14.6 + 20 below it.
	if w := l.Items[0].Work[2].Words(); w != "hole 32 through, 220.5 up, centred (entrance)" {
		t.Errorf("entrance: %s", w)
	}
	if w := l.Items[0].Work[0].Words(); w != "rebate along the left edge, 7 deep, 14.6 wide, for right" {
		t.Errorf("rebate: %s", w)
	}
	// tan 12 x 14.6 = 3.1033
	if b := l.Items[0].bevels(); b != "upper 12 deg, gauge 3.1033, machined face longer" {
		t.Errorf("bevels: %s", b)
	}
}

// With a hole off centre the sides are mirror images; each says so of the
// other.
func TestMirroredSides(t *testing.T) {
	d := pent()
	d.Features = append(d.Features,
		box.Cut{On: box.Left, At: box.Anchor{Right: -20, Up: 100}, Shape: box.Rect{Width: 10, Height: 20}, Depth: 5, From: box.FromInner, Use: box.UsePocket},
		box.Cut{On: box.Right, At: box.Anchor{Right: 20, Up: 100}, Shape: box.Rect{Width: 10, Height: 20}, Depth: 5, From: box.FromInner, Use: box.UsePocket})
	l := New(resolve(t, d), Options{})
	a, b := l.Items[itemOf(l, box.Left)], l.Items[itemOf(l, box.Right)]
	if a.Number == b.Number || a.MirrorOf != b.Number || b.MirrorOf != a.Number || a.Hand != LeftHand || b.Hand != RightHand {
		t.Errorf("left: item %d, %s of %d; right: item %d, %s of %d", a.Number, a.Hand, a.MirrorOf, b.Number, b.Hand, b.MirrorOf)
	}
	if a.CutLength != b.CutLength || a.CutWidth != b.CutWidth {
		t.Errorf("mirror images are cut to %v x %v and %v x %v", a.CutLength, a.CutWidth, b.CutLength, b.CutWidth)
	}
}

func designs() map[string]box.Design {
	pinwheel := pent()
	pinwheel.Roof, pinwheel.Walls, pinwheel.Features = box.NoRoof{}, nil, nil
	pinwheel.Corners = box.Corners{Laps: box.Pinwheel}
	gable := pent()
	gable.Roof, gable.Walls = box.Gable{Pitch: 40, Over: box.Overhangs{All: 15}}, nil
	gable.Floor = box.FloorBetween{Joint: joints.Housing{}, Raise: 10}
	hip := gable
	hip.Roof, hip.Corners = box.Hip{Pitch: 35}, box.Corners{Joint: joints.Mitre{}}
	octagon := gable
	octagon.Size, octagon.Footprint = box.Cavity{Height: 200}, box.Regular{Sides: 8, Across: 150.3}
	octagon.Roof, octagon.Corners, octagon.Floor = box.NoRoof{}, box.Corners{}, box.FloorBetween{}
	octagon.Features = nil
	leaning := pent()
	leaning.Walls = []box.Wall{{On: box.Front, Lean: 5}, {On: box.Left, Lean: 3}}
	return map[string]box.Design{"pent": pent(), "pinwheel": pinwheel, "gable": gable, "hip": hip, "octagon": octagon, "leaning": leaning}
}

// TestFrames puts the corners of every part's solid into the frame that the
// list gives for it: there the part must lie between its machined and its far
// face and fill the silhouette. So an outside program can place the panels.
func TestFrames(t *testing.T) {
	for name, d := range designs() {
		plan := resolve(t, d)
		for _, it := range New(plan, Options{}).Items {
			for _, p := range it.Places {
				m, err := plan.Mesh(p.Part)
				if err != nil {
					t.Fatal(err)
				}
				lo, hi := [3]float64{1e9, 1e9, 1e9}, [3]float64{-1e9, -1e9, -1e9}
				for _, v := range m.Vertices {
					q := p.Home.In(v)
					for i, x := range [3]float64{q.X, q.Y, q.Z} {
						lo[i], hi[i] = math.Min(lo[i], x), math.Max(hi[i], x)
					}
				}
				along, across := float64(it.Length), float64(it.Width)
				if it.Grain == "up" {
					along, across = across, along
				}
				// 2e-4: mesh corners are joined within 1e-4.
				for i, want := range [3]float64{along, across, float64(it.Thickness)} {
					// On a bevelled end a rebate may take the tip off the blank.
					if diff := hi[i] - lo[i] - want; diff > 2e-4 || diff < -2e-4 && (name != "leaning" || diff < -0.5) {
						t.Errorf("%s: %s spans %v along axis %d of its frame, want %v", name, p.Part, hi[i]-lo[i], i, want)
					}
				}
				faces := append(append(outline.Region(nil), it.Machined...), it.Far...).Extents()
				if lo[0] < faces.Min.X-2e-4 || hi[0] > faces.Max.X+2e-4 || lo[1] < faces.Min.Y-2e-4 || hi[1] > faces.Max.Y+2e-4 {
					t.Errorf("%s: %s spans %v to %v in its frame, its faces %v", name, p.Part, lo, hi, faces)
				}
				if math.Abs(hi[2]) > 2e-4 {
					t.Errorf("%s: %s reaches %v above its machined face", name, p.Part, hi[2])
				}
				// The cavity lies on the far side of an outer machined face.
				if c := p.Home.In(centre()); (c.Z > 0) != (p.Face == box.FromInner) {
					t.Errorf("%s: %s: machined face %s, but the cavity's middle is at w = %v", name, p.Part, faceWord(p.Face), c.Z)
				}
			}
		}
	}
}

// TestListsOfPlans holds what every list must hold.
func TestListsOfPlans(t *testing.T) {
	for name, d := range designs() {
		plan := resolve(t, d)
		for _, step := range []box.MM{0.1, 0.5} {
			l := New(plan, Options{Step: step})
			seen := 0
			for i, it := range l.Items {
				seen += it.Quantity
				if it.Number != i+1 || it.Quantity != len(it.Parts) || it.Up == "" {
					t.Errorf("%s: item %d: number %d, %d of %v, up %q", name, i+1, it.Number, it.Quantity, it.Parts, it.Up)
				}
				guest := false
				for _, e := range it.Edges {
					guest = guest || e.Guest
					for _, n := range e.Neighbours {
						if slices.Contains(it.Parts, n) && it.Quantity == 1 {
							t.Errorf("%s: %v neighbours itself", name, it.Parts)
						}
					}
				}
				for _, s := range [2][2]box.MM{{it.Length, it.CutLength}, {it.Width, it.CutWidth}} {
					if diff := float64(s[1] - s[0]); diff > float64(step) || diff < -2*float64(step)-0.2 || !guest && diff < -near {
						t.Errorf("%s, step %v: %v: %v is cut to %v (guest: %v)", name, step, it.Parts, s[0], s[1], guest)
					}
				}
			}
			if seen != len(plan.Pieces()) {
				t.Errorf("%s: %d parts listed of %d", name, seen, len(plan.Pieces()))
			}
		}
	}
}

// The octagon's floor goes between walls four of which are cut short.
func TestOctagonFloor(t *testing.T) {
	bound := 0
	for k := range 24 {
		size := 140.3 + float64(k)*0.47
		d := designs()["octagon"]
		d.Footprint = box.Regular{Sides: 8, Across: box.MM(size)}
		l := New(resolve(t, d), Options{Step: 0.5})
		floor := l.Items[itemOf(l, box.Floor)]
		host, guest := l.Items[itemOf(l, box.WallN(1))], l.Items[itemOf(l, box.WallN(2))]
		// Between walls 1 and 5 walls 2, 3 and 4 stand at 45, 90 and 45
		// degrees: what their inner sides lose, the floor loses. All hosts grow
		// alike and all guests shrink alike.
		h, g := float64(host.CutWidth-host.Width), float64(guest.CutWidth-guest.Width)
		if h < -near || h > 0.5 || g > near || g < -0.5 {
			t.Fatalf("across %v: host grows by %v, guest by %v", size, h, g)
		}
		left := math.Min(math.Sqrt2*g+h, math.Sqrt2*h+g)
		got := float64(floor.CutWidth)
		if got > size+math.Min(left, 0)+near || got < size-1-near {
			t.Errorf("across %v: the walls leave %v, the floor is cut to %v", size, size+left, got)
		}
		if down(size, 0.5) > size+left+near {
			bound++
		}
	}
	if bound == 0 {
		t.Error("no floor had to give way: the test does not reach the rule")
	}
}

// In a pinwheel each of the four equal walls takes the next one.
func TestGuestsOfEqualParts(t *testing.T) {
	d := designs()["pinwheel"]
	d.Corners.Joint = joints.Rebate{}
	l := New(resolve(t, d), Options{})
	it := l.Items[0]
	if it.Quantity != 4 || len(it.Work) != 1 {
		t.Fatalf("%d walls with %d works", it.Quantity, len(it.Work))
	}
	// Front laps over right, right over back, back over left, left over front.
	next := map[box.Part]box.Part{box.Front: box.Right, box.Right: box.Back, box.Back: box.Left, box.Left: box.Front}
	for i, p := range it.Parts {
		if it.Work[0].Guests[i] != next[p] {
			t.Errorf("%s takes %s, want %s", p, it.Work[0].Guests[i], next[p])
		}
	}
}

// What stands between others, is cut off, or is alone.
func TestOtherParts(t *testing.T) {
	d := pent()
	d.Features = []box.Feature{box.CornerCuts{Size: 9.04}, box.Drains{}}
	d.Size = box.Cavity{Width: 120.1, Depth: 120, Height: 240}
	d.Inner = []box.Inner{box.Partition{Name: "half", Across: box.RunLeftToRight, Height: 100.26, Joint: joints.Housing{Depth: 4.97, Tight: true}}}
	d.Free = []box.Free{{Name: "batten", Outline: outline.Rectangle(-20, 0, 20, 400), At: box.Place{Y: 200}}}
	plan := resolve(t, d)
	l := New(plan, Options{Step: 0.5})

	floor := l.Items[itemOf(l, box.Floor)]
	jobs := floor.Jobs()
	// 16 and 104: twice the diameter from the walls, common practice.
	want := []string{
		"corner cut off, 9 along the lower edge and 9 along the right edge (drain)",
		"4 × hole 8 through: 16 up, 104 from the left; 16 up, 16 from the left; 104 up, 16 from the left; 104 up, 104 from the left (drain)",
	}
	if len(jobs) != 5 || jobs[0] != want[0] || jobs[4] != want[1] {
		t.Errorf("floor: %q, want %q", jobs, want)
	}
	sides := map[string]bool{}
	for _, j := range jobs[:4] {
		sides[j] = true
	}
	if len(sides) != 4 {
		t.Errorf("the corners are not told apart: %q", jobs)
	}

	// The housings are set to 4.9, so the partition reaches 4.9 into each: 120.1
	// + 9.8 = 129.9, down to 129.5, though it is 130.04 wide in the plan. Its top is free, its foot on the floor:
	// 100.26 down to 100.
	half := l.Items[itemOf(l, box.InnerPart("half"))]
	if half.CutWidth != 129.5 || half.CutLength != 100 || math.Abs(float64(half.Width)-130.04) > 1e-6 {
		t.Errorf("partition: %v x %v cut to %v x %v", half.Length, half.Width, half.CutLength, half.CutWidth)
	}
	if half.Up != "upper edge" || !strings.Contains(half.meetings(), "right: right (housing)") && !strings.Contains(half.meetings(), "right: left (housing)") {
		t.Errorf("partition: up %q, %q", half.Up, half.meetings())
	}
	left := l.Items[itemOf(l, box.Left)].Jobs()
	if len(left) != 1 || !strings.HasPrefix(left[0], "groove 4.9 deep, 14.6 wide, left side ") || !strings.HasSuffix(left[0], ", for inner/half") {
		t.Errorf("left: %q", left)
	}

	batten := l.Items[itemOf(l, box.FreePart("batten"))]
	if batten.Up != "upper side" || batten.CutLength != 400 || batten.CutWidth != 40 || batten.FaceEdge != "" {
		t.Errorf("batten: up %q, %v x %v, face edge %q", batten.Up, batten.CutLength, batten.CutWidth, batten.FaceEdge)
	}

	gable := New(resolve(t, designs()["gable"]), Options{})
	if up := gable.Items[itemOf(gable, box.Front)].Up; up != "upper right and upper left edges" {
		t.Errorf("under a gable: up %q", up)
	}
	if up := gable.Items[itemOf(gable, box.Floor)].Up; up != "level, lower edge to the front" {
		t.Errorf("floor: up %q", up)
	}
}

// centre is a place inside every cavity of these tests.
func centre() solid.Vec { return solid.Vec{Z: 60} }

// Strips are listed one by one. They round up together, since the part that they
// make up is trimmed: 149.2 in three strips is 49.7333 each, with a tongue of 5
// 54.7333.
func TestStripsInTheList(t *testing.T) {
	d := pent()
	d.MadeUp = []box.MadeUp{{Of: box.Front, Joint: box.TongueGroove{Tongue: 5}, Width: 60}}
	l := New(resolve(t, d), Options{})
	seen := 0
	for _, it := range l.Items {
		for _, p := range it.Parts {
			want, ok := map[box.Part]box.MM{"front/1": 54.8, "front/2": 54.8, "front/3": 49.8}[p]
			if !ok {
				continue
			}
			seen++
			if math.Abs(float64(it.CutWidth-want)) > 1e-6 {
				t.Errorf("%s: cut %v wide, want %v", p, it.CutWidth, want)
			}
			for _, e := range it.Edges {
				for _, n := range e.Neighbours {
					if strings.HasPrefix(string(n), "front/") && (e.Guest || e.Joint != "tongue and groove") {
						t.Errorf("%s at %s: guest %v, %s", p, n, e.Guest, e.Joint)
					}
					if n == box.Roof && e.Joint != "butt" {
						t.Errorf("%s at %s: %s", p, n, e.Joint)
					}
				}
			}
		}
	}
	if seen != 3 {
		t.Errorf("%d strips listed", seen)
	}
}
