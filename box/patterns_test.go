package box_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
)

// face is the machined outline of a part as a region.
func face(q box.Piece) outline.Region { return q.Panel.Machined }

// A pattern never leaves its part, nor its margin: convex boards, a tapering
// wall, a free part with arcs. Asked of the true shapes: every corner of every
// piece lies inside, and no boundary comes nearer to the outline than the margin
// (lines: by half their width more).
func TestPatternStaysOnItsPart(t *testing.T) {
	round := outline.RoundedRectangle(-70, -50, 70, 50, 30)
	waist := outline.Contour{{X: -70, Y: -50}, {X: 70, Y: -50}, {X: 70, Y: 50, Bulge: -0.3}, {X: -70, Y: 50}} // arched in above
	d := plain.With(func(d *box.Design) {
		d.Walls = []box.Wall{{On: box.Left, Lean: 12}}
		d.Roof = box.Pent{Pitch: 20}
		d.Free = []box.Free{{Name: "round", Outline: round, At: box.Place{Y: -500}}, {Name: "waist", Outline: waist, At: box.Place{Y: -700}}}
	})
	wave := []outline.Path{{{X: -15, Y: 0, Bulge: 0.5}, {X: 0, Y: 0, Bulge: -0.5}, {X: 15, Y: 0}}}
	for _, on := range []box.Part{box.Front, box.Left, box.Roof, "free/round", "free/waist"} {
		for _, margin := range []float64{0.7, 6} {
			at := box.Anchor{Right: 3, Up: 40, Turn: 10}
			if on[0] == 'f' && on[1] == 'r' && on[2] == 'e' {
				at.Up = 0
			}
			bond := box.Repeat{StepRight: 34, StepUp: 21, Brick: true}
			motif := resolve(t, d.With(func(d *box.Design) {
				d.Features = []box.Feature{box.Pattern{On: on, Motif: box.Oval{Width: 28, Height: 14}, At: at, Repeat: bond, Margin: box.MM(margin), Depth: 2}}
			}))
			q := piece(t, motif, on)
			n, clipped := 0, 0
			for _, op := range ops(t, motif, on, "ornament") {
				for _, c := range op.Region {
					n++
					if math.Abs(c.Area()-ovalArea(14, 7)) > 1e-6 {
						clipped++
					}
					for _, v := range c.Flatten(0.01) {
						require.NotEqual(t, outline.Outside, face(q).Contains(v, 1e-6), "%s", on)
					}
				}
				assert.GreaterOrEqual(t, op.Region.DistanceTo(face(q)), margin-1e-6, "%s", on)
			}
			assert.Greater(t, n, 8, "%s", on)
			assert.Greater(t, clipped, 2, "%s: nothing was clipped", on)

			lines := resolve(t, d.With(func(d *box.Design) {
				d.Features = []box.Feature{box.Pattern{On: on, Lines: wave, At: at, Repeat: bond, Margin: box.MM(margin), Width: 3}}
			}))
			q = piece(t, lines, on)
			op := ops(t, lines, on, "ornament")[0]
			whole, cut := wave[0].Length(), 0
			for _, s := range op.Strokes {
				if s.Length() < whole-1e-6 {
					cut++
				}
				for _, c := range face(q) {
					assert.GreaterOrEqual(t, s.DistanceTo(c), margin+1.5-1e-6, "%s", on)
				}
				for _, v := range s {
					assert.Equal(t, outline.Inside, face(q).Contains(v.At(), 0), "%s", on)
				}
			}
			assert.Greater(t, cut, 2, "%s", on)
		}
	}
}

// A square bond of squares of 10, 20 apart, fills the outer face of the front,
// 150 by 240 (top and bottom edges square), margin 5: columns at -60, -40 ... 60
// are whole, 7; those at +-80 reach from 75, beyond 70. Rows from 5 to 235 with the
// middle at 10 + 20k: 10, which spans 5 to 15, to 230, 12 whole ones. The front runs
// down to -15, past the floor's underside, and so -15 to -5 keeps its upper half.
func TestPatternFills(t *testing.T) {
	p := resolve(t, with(box.Pattern{On: box.Front, Motif: box.Rect{Width: 10, Height: 10}, At: box.Anchor{Up: 10},
		Repeat: box.Repeat{StepRight: 20, StepUp: 20}, Margin: 5, Depth: 2, Tool: box.Tool{Diameter: 4}}))
	os := ops(t, p, box.Front, "ornament")
	assert.Len(t, os, 7*13)
	for i, op := range os {
		want := 100.0
		if i < 7 {
			want = 50
		}
		assert.InDelta(t, want, op.Region.Area(), 1e-8)
		assert.Equal(t, box.Tool{Diameter: 4}, op.Tool)
		assert.Equal(t, box.OpPocket, op.Kind)
	}
	// The volume is that of the pockets: (84 * 100 + 7 * 50) * 2.
	assert.InDelta(t, 17500, gone(t, box.Pattern{On: box.Front, Motif: box.Rect{Width: 10, Height: 10}, At: box.Anchor{Up: 10},
		Repeat: box.Repeat{StepRight: 20, StepUp: 20}, Margin: 5, Depth: 2}), 1e-4)
	// A column moved so that it spans 67 to 77 keeps 3, less than a cutter of 4.
	p = resolve(t, with(box.Pattern{On: box.Front, Motif: box.Rect{Width: 10, Height: 10}, At: box.Anchor{Right: 72, Up: 100},
		Repeat: box.Repeat{Columns: 1, Rows: 3, StepUp: 20}, Margin: 5, Depth: 2, Tool: box.Tool{Diameter: 2}}))
	require.Len(t, ops(t, p, box.Front, "ornament"), 3)
	assert.InDelta(t, 30, ops(t, p, box.Front, "ornament")[0].Region.Area(), 1e-6)
	p = resolve(t, with(box.Pattern{On: box.Front, Motif: box.Rect{Width: 10, Height: 10}, At: box.Anchor{Right: 72, Up: 100},
		Repeat: box.Repeat{Columns: 1, Rows: 3, StepUp: 20}, Margin: 5, Depth: 2, Tool: box.Tool{Diameter: 4}}))
	assert.Empty(t, ops(t, p, box.Front, "ornament"))
	// Whole motifs only, and clear of the entrance.
	p = resolve(t, with(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 150},
		box.Pattern{On: box.Front, Motif: box.Round{Diameter: 10}, At: box.Anchor{Right: 2, Up: 10},
			Repeat: box.Repeat{StepRight: 13, StepUp: 13}, Margin: 5, Depth: 2, Whole: true, Clear: 7}))
	os = ops(t, p, box.Front, "ornament")
	assert.Greater(t, len(os), 100)
	hole := ops(t, p, box.Front, "entrance")[0].Region
	for _, op := range os {
		assert.InDelta(t, 25*math.Pi, op.Region.Area(), 1e-9)
		assert.GreaterOrEqual(t, op.Region.DistanceTo(hole), 7.0)
	}
}

// Three rings of 8 at 20, 35 and 50: every motif at its radius, the middle ring
// half a step round; facing motifs turn.
func TestRings(t *testing.T) {
	p := resolve(t, with(box.Pattern{On: box.Front, Motif: box.Rect{Width: 3, Height: 9}, At: box.Anchor{Up: 120},
		Rings: box.Rings{Count: 3, Each: 8, First: 20, Step: 15, Brick: true, Face: true}, Depth: 2}))
	os := ops(t, p, box.Front, "ornament")
	require.Len(t, os, 24)
	q := piece(t, p, box.Front)
	for i, op := range os {
		c := outside(q, op.Region.Centroid())
		r := 20 + 15*float64(i/8)
		assert.InDelta(t, r, math.Hypot(c.X, c.Y-120), 1e-9)
		turn := float64(i%8) / 8
		if i/8 == 1 {
			turn += 1.0 / 16
		}
		// Clockwise from the top.
		assert.InDelta(t, r*math.Sin(2*math.Pi*turn), c.X, 1e-9)
		// The long side points to the centre: 4.5 nearer.
		assert.InDelta(t, r-4.5, op.Region.Distance(outline.Point{Y: 120}), 1e-9)
	}
}

// A field of 100 by 60 with 4 balusters of 12: five openings of (100-48)/5 = 10.4.
// Slimmer by 4 in the middle: each bent side has a segment of chord 60 and rise
// 2, area (h/6w)(3h^2+4w^2) nearly; exactly r = (900+4)/4 = 226, a = asin(30/226),
// r^2 a - 30*224. Eight sides are bent.
func TestRail(t *testing.T) {
	rail := box.Rail{On: box.Left, Width: 100, Height: 60, At: box.Anchor{Up: 40, Level: box.LowestAbove}}
	p := resolve(t, with(rail))
	os := ops(t, p, box.Left, "ornament")
	require.Len(t, os, 5)
	area := 0.0
	for _, op := range os {
		e := op.Region.Extents()
		assert.InDelta(t, 10.4, e.Width(), 1e-9)
		assert.InDelta(t, 40, e.Min.Y, 1e-9)
		assert.InDelta(t, 100, e.Max.Y, 1e-9)
		assert.Equal(t, box.SideThrough, op.Side)
		area += op.Region.Area()
	}
	assert.InDelta(t, 52*60, area, 1e-9)
	rail.Waist, rail.Depth = 4, 3
	p = resolve(t, with(rail))
	area = 0
	for _, op := range ops(t, p, box.Left, "ornament") {
		area += op.Region.Area()
		assert.InDelta(t, 3, float64(op.To-op.From), 1e-9)
	}
	segment := 226*226*math.Asin(30.0/226) - 30*224
	assert.InDelta(t, 52*60+8*segment, area, 1e-6)
}

// Under an entrance of 32 at 170 with 15 to the first groove and between them:
// 155, 140 ... 35, not below 30; nine grooves, 60 over all and 3 wide, 2 deep:
// each (57*3 + 2.25 pi)*2.
func TestGripGrooves(t *testing.T) {
	p := resolve(t, with(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 170, Right: 10}, box.GripGrooves{}))
	q := piece(t, p, box.Front)
	os := ops(t, p, box.Front, "grip groove")
	require.Len(t, os, 1)
	op := os[0]
	require.Len(t, op.Strokes, 9)
	for i, s := range op.Strokes {
		e := s.Extents()
		assert.InDelta(t, 155-15*float64(i), e.Min.Y, 1e-9)
		assert.InDelta(t, 57, e.Width(), 1e-9)
		assert.InDelta(t, 10, outside(q, e.Centre()).X, 1e-9)
	}
	assert.Equal(t, box.FromInner, q.Panel.Face)
	assert.Equal(t, box.SideMachined, op.Side)
	assert.InDelta(t, 9*2*(57*3+2.25*math.Pi), op.Removed, 1e-6)
	assert.Equal(t, box.UseGrip, op.Use)
}

// "17" 30 high: 1 is 1.5 of 6 wide, 7 is 4, 2 between: 7.5/6*30 = 37.5 over all,
// centred. On the inner face it is mirrored in the feature frame, so that it reads
// in the panel, which is seen from there.
func TestText(t *testing.T) {
	for _, from := range []box.CutSide{box.FromOuter, box.FromInner} {
		p := resolve(t, with(box.Text{On: box.Front, Text: "17", At: box.Anchor{Right: 5, Up: 100}, From: from}))
		q := piece(t, p, box.Front)
		op := ops(t, p, box.Front, "text 17")[0]
		require.Equal(t, from, q.Panel.Face)
		require.Len(t, op.Strokes, 2)
		e := op.Strokes[0].Extents().Join(op.Strokes[1].Extents())
		assert.InDelta(t, 37.5, e.Width(), 1e-9)
		assert.InDelta(t, 30, e.Height(), 1e-9)
		assert.InDelta(t, 100, e.Centre().Y, 1e-9)
		assert.InDelta(t, 5, outside(q, e.Centre()).X, 1e-9)
		// Seen from the tool the 1 is to the left of the 7.
		assert.Less(t, op.Strokes[0].Extents().Max.X, op.Strokes[1].Extents().Min.X)
		assert.InDelta(t, 3, float64(op.Width), 1e-9)                     // a tenth
		assert.InDelta(t, 1.5*math.Sqrt(3), float64(op.To-op.From), 1e-9) // 3/(2 tan 30)
	}
	small := resolve(t, with(box.Text{On: box.Front, Text: "17", Height: 20, At: box.Anchor{Up: 100}}))
	require.Len(t, small.Findings(), 1)
	f := small.Findings()[0]
	assert.Equal(t, "small-letters", f.Code)
	assert.Equal(t, 25.0, f.Lo)
	assert.Empty(t, resolve(t, with(box.Text{On: box.Front, Text: "17", Height: 25, At: box.Anchor{Up: 100}})).Findings())
}

// Every letter has strokes within its own width and height (a comma hangs), no
// two letters are the same, and all can be engraved.
func TestLetters(t *testing.T) {
	seen := map[string]rune{}
	for _, r := range box.Letters() {
		if r == ' ' {
			continue
		}
		p := resolve(t, with(box.Text{On: box.Front, Text: string(r), Height: 60, At: box.Anchor{Up: 100}}))
		op := ops(t, p, box.Front, "text "+string(r))[0]
		key := ""
		for _, s := range op.Strokes {
			require.NoError(t, s.Check(), string(r))
			e := s.Extents()
			assert.GreaterOrEqual(t, e.Min.Y, 70-6.0-1e-9, string(r))
			assert.LessOrEqual(t, e.Max.Y, 130+1e-9, string(r))
			for _, v := range s {
				key += num(v.X) + num(v.Y) + num(v.Bulge)
			}
		}
		other, twice := seen[key]
		assert.False(t, twice, "%q and %q", r, other)
		seen[key] = r
	}
	for _, r := range "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789" {
		assert.Contains(t, box.Letters(), string(r))
	}
}

// Every part has its mark on the inner face, inside the face of the cavity, and
// clear of the grooves and the hole on the front.
func TestPartMarks(t *testing.T) {
	p := resolve(t, orchard.With(func(d *box.Design) {
		d.Features = append(d.Features, box.GripGrooves{}, box.Drains{}, box.PartMarks{Box: "orchard 3"})
	}))
	for _, q := range p.Pieces() {
		os := ops(t, p, q.Part, "part mark")
		require.Len(t, os, 1, q.Part)
		side := box.SideMachined
		if q.Panel.Face != box.FromInner {
			side = box.SideFar
		}
		assert.Equal(t, side, os[0].Side, q.Part)
		for _, s := range os[0].Strokes {
			for _, c := range q.Panel.Machined {
				require.GreaterOrEqual(t, s.DistanceTo(c), 2.0, q.Part)
			}
			for _, op := range q.Panel.Ops {
				for _, c := range op.Region {
					assert.Greater(t, s.DistanceTo(c), 1.0, "%s: %s", q.Part, op.Source)
				}
				for _, o := range op.Strokes {
					if op.Source != "part mark" {
						assert.False(t, o.Extents().Overlaps(s.Extents(), 1), q.Part)
					}
				}
			}
		}
	}
}

func num(x float64) string { return string(rune(int(math.Round(x*100)))) + "," }
