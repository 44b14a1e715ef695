package bom

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

// randomDesign is a rectangular box of upright walls; everything else is left
// to chance.
func randomDesign(r *rand.Rand) box.Design {
	figure := func(lo, hi float64) box.MM {
		x := lo + (hi-lo)*r.Float64()
		switch r.IntN(3) {
		case 0:
			x = math.Round(x*2) / 2
		case 1:
			x = math.Round(x*10) / 10
		}
		return box.MM(x)
	}
	board := func() box.Board { return box.Board{Thickness: figure(12, 22)} }
	d := box.Design{
		Name: "by chance", Board: board(),
		Size: box.Cavity{Width: figure(90, 200), Depth: figure(90, 200), Height: figure(120, 300)},
	}
	if r.IntN(2) == 0 {
		d.Boards = map[box.Part]box.Board{box.Left: board(), box.Back: board(), box.Floor: board()}
	}
	d.Corners.Laps = box.Laps(r.IntN(3))
	switch r.IntN(5) {
	case 0:
		d.Corners.Joint = joints.Rebate{}
	case 1:
		d.Corners.Joint = joints.Rebate{Depth: figure(3, 5)}
	case 2:
		d.Corners.Joint = joints.Mitre{}
	case 3:
		d.Corners.Joint = joints.Comb{}
	}
	floor := box.FloorBetween{Raise: figure(5, 30)}
	switch r.IntN(3) {
	case 0:
		floor.Joint = joints.Housing{}
	case 1:
		floor.Joint = joints.Housing{Depth: figure(2, 4), Swell: figure(0, 1)}
	}
	d.Floor = floor
	switch r.IntN(4) {
	case 0:
		d.Roof = box.NoRoof{}
	case 1:
		d.Roof = box.Flat{Over: box.Overhangs{All: figure(0, 40)}}
	case 2:
		d.Roof = box.Pent{Over: box.Overhangs{Front: figure(0, 40)}}
	case 3:
		d.Roof = box.Gable{Over: box.Overhangs{All: figure(0, 40)}}
	}
	return d
}

// across is the cut size of an item across its panel.
func (it Item) across() float64 {
	if it.Grain == "across" {
		return float64(it.CutLength)
	}
	return float64(it.CutWidth)
}

func (it Item) upward() float64 {
	if it.Grain == "across" {
		return float64(it.CutWidth)
	}
	return float64(it.CutLength)
}

// edgeTo is the edge of part p at which it meets q.
func edgeTo(it Item, p, q box.Part) (Edge, bool) {
	for k, n := range it.Parts {
		if n != p {
			continue
		}
		for _, e := range it.Edges {
			if k < len(e.Neighbours) && e.Neighbours[k] == q {
				return e, true
			}
		}
	}
	return Edge{}, false
}

// cutFor is the depth, as it is to be set, of the cut that p takes into host; 0
// without one.
func cutFor(l List, host, p box.Part) float64 {
	it := l.Items[itemOf(l, host)]
	for _, w := range it.Work {
		if slices.Contains(w.Guests, p) && (w.Kind == box.OpRebate || w.Kind == box.OpHousing || w.Kind == box.OpGroove) {
			return float64(w.Depth)
		}
	}
	return 0
}

// TestResolvedBoxesRebuilt rebuilds resolved boxes from nothing but their
// rounded lists: cut sizes, depths to set, and who laps over whom.
func TestResolvedBoxesRebuilt(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	built, housed, refused := 0, 0, 0
	for range 250 {
		d := randomDesign(r)
		plan, err := d.Resolve()
		if err != nil {
			refused++
			continue
		}
		built++
		step := [2]float64{0.1, 0.5}[r.IntN(2)]
		l := New(plan, Options{Step: box.MM(step)})
		// A wall sets its two neighbours apart by its cut length less what it
		// covers of them, or by that less the cuts that it enters.
		apart := func(a, n1, n2 box.Part) float64 {
			it := l.Items[itemOf(l, a)]
			x := it.across()
			for _, n := range [2]box.Part{n1, n2} {
				e, ok := edgeTo(it, a, n)
				if !ok {
					t.Fatalf("%+v: %s has no edge to %s: %+v", d, a, n, it.Edges)
				}
				switch {
				case e.Guest:
					x -= cutFor(l, n, a)
				case e.Bevel != 0: // mitred: the outer face covers the neighbour
					x -= math.Max(float64(e.Adds), float64(e.Adds)+math.Abs(float64(e.Run)))
				default:
					x -= float64(e.Adds)
				}
			}
			return x
		}
		f := l.Items[itemOf(l, box.Floor)]
		for _, axis := range []struct {
			walls, ends [2]box.Part
			size, true0 float64
		}{
			{[2]box.Part{box.Front, box.Back}, [2]box.Part{box.Left, box.Right}, f.across(), float64(l.Inside.Width)},
			{[2]box.Part{box.Left, box.Right}, [2]box.Part{box.Front, box.Back}, f.upward(), float64(l.Inside.Depth)},
		} {
			into := cutFor(l, axis.ends[0], box.Floor) + cutFor(l, axis.ends[1], box.Floor)
			if into > 0 {
				housed++
			}
			room := math.Min(apart(axis.walls[0], axis.ends[0], axis.ends[1]), apart(axis.walls[1], axis.ends[0], axis.ends[1]))
			if gap := room + into - axis.size; gap < -1e-6 {
				t.Errorf("%+v, step %v: floor %v does not go into %v + %v", d, step, axis.size, room, into)
			}
			// In its place in the plan: not over, and with no more to spare
			// than two steps and the play that the design asks for.
			play := 0.0
			for _, n := range axis.ends {
				e, _ := edgeTo(f, box.Floor, n)
				play += cutFor(l, n, box.Floor) - float64(e.Adds)
			}
			if gap := axis.true0 + into - axis.size; gap < -1e-6 || gap > 2*step+math.Max(play, 0)+0.2+1e-6 {
				t.Errorf("%+v, step %v: floor %v leaves %v (play %v)", d, step, axis.size, gap, play)
			}
		}
		// Parts that are equal, or mirror images, are cut alike.
		for _, it := range l.Items {
			if it.MirrorOf > 0 {
				if o := l.Items[it.MirrorOf-1]; o.CutLength != it.CutLength || o.CutWidth != it.CutWidth {
					t.Errorf("%+v: %v and its mirror image %v are cut apart: %v x %v, %v x %v", d, it.Parts, o.Parts, it.CutLength, it.CutWidth, o.CutLength, o.CutWidth)
				}
			}
		}
	}
	if built < 150 || housed < 50 {
		t.Errorf("%d boxes built, %d refused, %d floors housed: the test reaches too little", built, refused, housed)
	}
}
