package box_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"holt.example/box"
)

// A wall that leans in under the roof is told as such, with the height where the walls
// meet and the leans that do: the first of them does, a tenth of a degree more does not.
func TestWallsThatMeetBelowTheRoof(t *testing.T) {
	lean := func(roof box.RoofForm, ws ...box.Wall) box.Design {
		return plain.With(func(d *box.Design) {
			d.Size, d.Walls, d.Roof = box.Cavity{Width: 120, Depth: 120, Height: 220}, ws, roof
		})
	}
	for name, d := range map[string]box.Design{
		"front": lean(box.Flat{}, box.Wall{On: box.Front, Lean: -40}),
		"pent":  lean(box.Pent{Pitch: 12}, box.Wall{On: box.Left, Above: 0}, box.Wall{On: box.Front, Lean: -40}),
		"tent":  lean(box.Flat{}, box.Wall{On: box.Left, Lean: -30}, box.Wall{On: box.Right, Lean: -20}),
		"hip":   lean(box.Hip{}, box.Wall{On: box.Front, Lean: -45}),
	} {
		p := only(t, name, d)
		k := map[string]int{"pent": 1}[name]
		// One wall over 120: 120/tan 40 = 143; both: 120/(tan 30 + tan 20) = 127.5; 120/tan 45.
		meet := map[string]string{"front": "143", "pent": "143", "tent": fmt.Sprintf("%.1f", 120/(math.Tan(math.Pi/6)+math.Tan(math.Pi/9))), "hip": "120"}[name]
		assert.Equal(t, map[int]string{0: "Walls[0].Lean", 1: "Walls[1].Lean"}[k], p.Path, name)
		assert.Equal(t, "lost-face", p.Code, name)
		assert.Contains(t, p.Why, "leans in so far that the walls meet "+meet+" above the cavity floor", name)
		assert.Equal(t, 0.0, p.Hi, name)
		resolve(t, d.With(func(d *box.Design) { d.Walls[k].Lean = box.Deg(p.Lo) }))
		_, err := d.With(func(d *box.Design) { d.Walls[k].Lean = box.Deg(p.Lo - 0.1) }).Resolve()
		assert.Error(t, err, name)
	}
	// Two that lean in by 35 do not leave room for either alone, 220 tan 35 = 154 of 120:
	// they meet at 120/(2 tan 35) = 85.7, and no range of one would do.
	p := only(t, "both", lean(box.Flat{}, box.Wall{On: box.Left, Lean: -35}, box.Wall{On: box.Right, Lean: -35}))
	assert.Equal(t, "Walls[0].Lean", p.Path)
	assert.Contains(t, p.Why, "meet 85.7 above the cavity floor, before they reach roof")
	assert.Zero(t, p.Lo)
}
