package flat

import (
	"math"

	"holt.example/box/outline"
)

// legendWords are the kinds of work in a legend. Never changed.
var legendWords = [kinds]string{
	Bore: "hole", Fixing: "screw or nail", Opening: "opening", Pocket: "pocket", Rebate: "rebate", Housing: "housing",
	Groove: "groove", Notch: "notch", Mark: "mark", Engrave: "engraved line", Grain: "grain",
}

// legend says how a drawing is read, in lines of at most width from x on, the
// first one's baseline at y. Kinds of work are written in their colours.
func legend(items []Item, x, y, width float64, l Layer, part int) []Item {
	var have [kinds]bool
	round, bevels := false, false
	for _, it := range items {
		have[it.Layer.Kind] = true
		round = round || it.Shape == Disc
	}
	for _, it := range items {
		bevels = bevels || it.Layer.Dashed()
	}
	sentences := []string{"Thick line: cut."}
	if bevels {
		sentences = append(sentences, "Dashed: the far face, what lies inside, the bottom of slanting work.")
	}
	if round {
		sentences = append(sentences, "At 30, 50: from the left and the lower end of the face that is up.")
	}
	sentences = append(sentences, "Sizes are exact, to 0.1; the sizes to cut to by hand are in the list.")
	var out []Item
	put := func(s string, x float64, ink Kind) {
		out = append(out, Item{Shape: Label, Layer: l, From: outline.Point{X: Grid(x), Y: Grid(y)}, Part: part,
			Text: Writing{Value: s, Height: small, Ink: ink}})
	}
	line := ""
	for _, s := range sentences {
		if line != "" && Width(line+" "+s, small) > width {
			put(line, x, Profile)
			line, y = "", y-float64(small*pitch)
		}
		if line != "" {
			line += " "
		}
		line += s
	}
	put(line, x, Profile)
	y -= float64(small * pitch)
	at := x
	for k := range kinds {
		if !have[k] || legendWords[k] == "" {
			continue
		}
		if at == x {
			put("Colours:", at, Profile)
			at += Width("Colours:", small) + small/2
		}
		n := Width(legendWords[k], small) + small
		if at+n > x+width {
			at, y = x+small, y-float64(small*pitch)
		}
		put(legendWords[k], at, Kind(k))
		at += n
	}
	return out
}

// tall is the height of the lines of a legend from the first baseline to the
// last.
func tall(items []Item) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, it := range items {
		lo, hi = math.Min(lo, it.From.Y), math.Max(hi, it.From.Y)
	}
	return hi - lo
}
