package species

import (
	"errors"
	"math"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/joints"
)

// firstBox is that of the README, of spruce.
func firstBox() box.Design {
	return box.Design{
		Name: "first box", Board: box.Board{Thickness: 18, Measured: 17.8, Material: "Norway spruce"},
		Size:    box.Cavity{Width: 120, Depth: 120, Height: 220},
		Roof:    box.Pent{Pitch: 12, Over: box.Overhangs{Front: 40, Left: 15, Right: 15}},
		Floor:   box.FloorBetween{Raise: 10},
		Corners: box.Corners{Joint: joints.Rebate{}},
	}
}

// TestSeamsUnfixed: the first box has twelve seams: four corners, four round the
// floor, four under the roof. Screws of 4 x 60 fit all. Where a length leaves some
// without a row, each of them is named, with a range in which 60 lies, and a row of
// that length there keeps the rules of length.
func TestSeamsUnfixed(t *testing.T) {
	plan := resolve(t, firstBox())
	for length, rows := range map[box.MM]int{16: 4, 60: 12, 80: 8, 120: 8, 300: 0} {
		with := FixWith{Fasteners: []Fastener{{Kind: "screw", Diameter: 4, Length: length, Pilot: 3}}}
		fs, err := Fixings(plan, with)
		if err != nil || len(fs) != rows {
			t.Fatalf("%v: %d rows, %v", length, len(fs), err)
		}
		d, gs, err := Fasten(firstBox(), with)
		var ps box.Problems
		if errors.As(err, &ps); len(ps) != 12-rows || len(gs) != rows || len(d.Fixings) != rows {
			t.Errorf("%v: %d rows, %v", length, len(gs), err)
		}
		for _, p := range ps {
			if p.Code != "seam-unfixed" || p.Path != "FixWith.Fasteners" || !(p.Lo <= 60 && p.Hi >= 60) {
				t.Errorf("%v: %v", length, p)
			}
			if !strings.Contains(p.Error(), "want ") {
				t.Errorf("%v: %v", length, p)
			}
		}
		got, err := CheckFixings(plan, fs)
		seams := 0
		for _, f := range got {
			if f.Code == "seam-unfixed" {
				seams++
				if f.Severity != box.Warning || !(f.Lo <= 60 && f.Hi >= 60) || !math.IsNaN(f.Got) || !strings.Contains(f.Why, "4 mm thick and") {
					t.Errorf("%v: %+v", length, f)
				}
			}
		}
		// Without any fixing they are not chosen yet.
		if want := 12 - rows; err != nil || seams != want && rows > 0 || rows == 0 && len(got) != 0 {
			t.Errorf("%v: %d seams told, %v, %v", length, seams, got, err)
		}
		animal, err := Get("great_tit")
		if err != nil {
			t.Fatal(err)
		}
		told := 0
		rev, err := Review(plan, animal, Site{Fixings: fs})
		for _, f := range rev {
			if f.Code == "seam-unfixed" {
				told++
			}
		}
		if err != nil || told != seams {
			t.Errorf("%v: Review names %d of %d, %v", length, told, seams, err)
		}
	}
}

// TestFixingsTryTheNext: with screws of 80 and 60 at hand a box of 12 seams gets 12 rows,
// although the 80 that are chosen first where they serve leave no room for others.
func TestFixingsTryTheNext(t *testing.T) {
	plan := resolve(t, firstBox())
	for _, ls := range [][]box.MM{{80, 60}, {60, 120}, {300, 60}} {
		var with FixWith
		for _, l := range ls {
			with.Fasteners = append(with.Fasteners, Fastener{Kind: "screw", Diameter: 4, Length: l, Pilot: 3})
		}
		if fs, err := Fixings(plan, with); err != nil || len(fs) != 12 {
			t.Errorf("%v: %d rows, %v", ls, len(fs), err)
		}
	}
}
