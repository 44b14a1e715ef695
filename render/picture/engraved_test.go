package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
)

// inked is the length of a class of lines on the page, in mm of the box.
func inked(p *Picture, c Class) float64 {
	sum := 0.0
	for _, l := range p.Lines {
		if l.Class == c {
			sum += l.Length() / p.Scale
		}
	}
	return sum
}

// Seen straight from the front, engraved lines have their own length; those on
// the inner face, and those behind what stands before them, are not seen.
func TestEngravedLines(t *testing.T) {
	line := []outline.Path{{{X: -20}, {X: 20}}}
	half := []outline.Path{{{X: -20, Bulge: 1}, {X: 20}}} // a half circle below
	front := []View{{Name: "front"}}
	draw := func(f ...box.Feature) *Picture {
		d := pent()
		d.Features = append(d.Features, f...)
		p, err := Assembled(resolve(t, d), Options{Views: front, Plain: true})
		require.NoError(t, err)
		return p
	}
	at := box.Anchor{Up: 60}
	assert.Zero(t, inked(draw(), Engraved))
	// The page is drawn to a scale that is a plain number, so 1e-6 is all rounding.
	assert.InDelta(t, 40, inked(draw(box.Engrave{On: box.Front, Lines: line, At: at}), Engraved), 1e-6)
	// pi 20, less what chords of at most 0.03 mm fall short by: with n chords
	// (pi/n)^2/24 of it, and 20 (1 - cos(pi/2n)) < 0.03 makes n 32.
	arc := inked(draw(box.Engrave{On: box.Front, Lines: half, At: at}), Engraved)
	assert.InDelta(t, math.Pi*20, arc, math.Pi*20*math.Pi*math.Pi/32/32/24+1e-6)
	assert.Zero(t, inked(draw(box.Engrave{On: box.Front, Lines: line, At: at, From: box.FromInner}), Engraved))
	// Where a board stands before the right half, the left half stays.
	d := pent()
	d.Features = append(d.Features, box.Engrave{On: box.Front, Lines: line, At: at})
	d.Free = []box.Free{{Name: "board", Outline: outline.Rectangle(0, 0, 40, 200), At: box.Place{Y: -120}}}
	p, err := Assembled(resolve(t, d), Options{Views: front, Plain: true})
	require.NoError(t, err)
	assert.InDelta(t, 20, inked(p, Engraved), 1e-6)
}

// What opens takes its engraving along: an angle of 90 about the upright axis
// turns the side's face to the viewer.
func TestEngravedLinesAreMovedAlong(t *testing.T) {
	d := pent()
	d.Opens = []box.Opening{box.Hinged{Part: box.Front, Headroom: 12}}
	d.Features = append(d.Features, box.Engrave{On: box.Front, Lines: []outline.Path{{{X: -20}, {X: 20}}}, At: box.Anchor{Up: 60}})
	shut := resolve(t, d)
	open, err := shut.Opened(box.Front, 60)
	require.NoError(t, err)
	p, err := Assembled(open, Options{Views: []View{{Name: "front"}}, Plain: true})
	require.NoError(t, err)
	// Its hinge is on the left, so that it swings to the left: a line of 40 is
	// seen at 60 degrees, 20 long.
	assert.InDelta(t, 20, inked(p, Engraved), 1e-3)
}
