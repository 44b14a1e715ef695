package species

import (
	"testing"

	"holt.example/box"
)

// TestTipsStrip: a strip is under the nails that follow it, and under no others: 13 go
// through 3 of strip and 11 of roof, 14, and through the roof alone they do not.
func TestTipsStrip(t *testing.T) {
	l, err := survey(resolve(t, good().With(func(d *box.Design) {
		d.Boards[box.AllRoof] = box.Board{Thickness: 11, Material: "exterior plywood", Grain: box.GrainNone}
	})), MustGet("great_tit"), Site{})
	if err != nil {
		t.Fatal(err)
	}
	r, _ := RuleOf("points")
	strip := box.Fitting{What: "rubber strip, 3 thick"}
	clout := box.Fitting{What: "clout nail", Length: 13, Where: []box.Part{box.Roof}}
	for want, fittings := range map[string][]box.Fitting{
		"":    {strip, clout, strip, clout},
		"11":  {strip, clout, clout},
		"11 ": {clout, strip},
		"11a": {strip, {What: "felt"}, clout},
	} {
		l.fittings = fittings
		fs := l.tips(r)
		if want == "" && len(fs) != 0 || want != "" && (len(fs) != 1 || fs[0].Hi != 11) {
			t.Errorf("%v: %+v", fittings, fs)
		}
	}
}

func TestThickOf(t *testing.T) {
	for what, want := range map[string]float64{
		"rubber strip, 3 thick": 3, "leather, 2.5 thick": 2.5, "felt": 0, "": 0, "3 thick": 0,
		"cord, 3 thickish": 0, "felt, -3 thick": 0, "felt, NaN thick": 0, "felt, 1e300 thick": 0,
	} {
		if got := thickOf(what); got != want {
			t.Errorf("%q is %v thick, want %v", what, got, want)
		}
	}
}
