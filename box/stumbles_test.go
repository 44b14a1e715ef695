package box_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
)

// What a newcomer stumbles over, each by what is said of it or done instead.

// only is the one problem of a design.
func only(t *testing.T, name string, d box.Design) box.Problem {
	t.Helper()
	_, ps := tryResolve(t, name, d)
	require.Len(t, ps, 1, "%s: %v", name, ps)
	return ps[0]
}

// A text that is too long says so once, as a whole, and tries a height that does.
// "NO 17" is 23.5 units of a sixth of its height long (4+2+4+2+2+2+1.5+2+4), and a
// tenth of it more for the width of the line: 4.0167 heights. The front is 150 wide.
func TestTextThatIsTooLong(t *testing.T) {
	for _, x := range []struct {
		height, width box.MM
		turn          box.Deg
		got, why, try string
	}{
		// 160.67 long: (160.67 - 150)/2 = 5.33 past; 150/4.0167 = 37.3.
		{40, 0, 0, "40 high", `text "No 17", 160.7 wide at Height 40, comes 5.3 past the edge of front, which has 150 there`, "Height: 37"},
		{40, 0, 180, "40 high", `text "No 17", 160.7 wide at Height 40, comes 5.3 past the edge of front, which has 150 there`, "Height: 37"},
		// 38 x 23.5/6 = 148.83 and the line of 3: 151.83; (150-3)/(23.5/6) = 37.53.
		{38, 3, 0, "38 high", `text "No 17", 151.8 wide at Height 38, comes 0.9 past the edge of front, which has 150 there`, "Height: 37"},
		// Upright there is room for it: the front is 255 high, 240 of them over the floor's
		// level, and 120 up from the lower edge of the face.
		{70, 0, 90, "70 high", `text "No 17", 281.2 wide at Height 70, comes 20.6 past the edge of front, which has 255 there`, "Height: 59"},
	} {
		p := only(t, x.why, with(box.Text{On: box.Front, Text: "No 17", Height: x.height, Width: x.width, At: box.Anchor{Up: 120, Turn: x.turn}}))
		assert.Equal(t, "Features[0].Text", p.Path)
		assert.Equal(t, "off-part", p.Code)
		assert.Equal(t, x.got, p.Got)
		assert.Equal(t, x.why, p.Why)
		assert.Equal(t, x.try, p.Try)
	}
	// What is tried does resolve, and a millimetre more does not.
	resolve(t, with(box.Text{On: box.Front, Text: "No 17", Height: 37, At: box.Anchor{Up: 120}}))
	only(t, "38", with(box.Text{On: box.Front, Text: "No 17", Height: 38, At: box.Anchor{Up: 120}}))
	// Where only the place is wrong nothing is said of the width; where no height helps,
	// nothing is tried.
	p := only(t, "beside", with(box.Text{On: box.Front, Text: "7", Height: 30, At: box.Anchor{Right: 90, Up: 100}}))
	assert.NotContains(t, p.Why, "which has")
	assert.Empty(t, p.Try)
	// The hole begins 25 over the text's middle.
	p = only(t, "into the hole", with(box.Entrance{Shape: box.Round{Diameter: 32}, Above: 100}, box.Text{On: box.Front, Text: "7", Height: 60, At: box.Anchor{Up: 75}}))
	assert.Equal(t, "feature-meets-feature", p.Code)
	assert.Contains(t, p.Why, `text "7", 46 wide at Height 60, on front runs into the entrance of Features[0].Entrance`)
	assert.Equal(t, "Height: 45", p.Try) // half a capital and half a line, 0.55 heights: 45.45
}
