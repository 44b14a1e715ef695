package species

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"holt.example/box"
)

// Admits lists the keys of the presets of a region, other than the one named,
// whose animals get through a round hole of a diameter in mm: those whose
// smallest hole is no larger. A hole that is right for one animal is wide enough
// for all of these. The order is that of All.
func Admits(diameter box.MM, region Region, other string) []string {
	var out []string
	each(func(p *Preset) {
		if p.Region == region && p.Group == Bird && p.Form == Hole && p.Key != other && p.Hole.HasLo && p.Hole.Lo <= float64(diameter)+tiny {
			out = append(out, p.Key)
		}
	})
	return out
}

// commonNames are the English names of presets, in the order of the keys, without
// what follows a comma in them.
func commonNames(keys []string) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		p, err := Get(k)
		if err != nil {
			continue // Admits gives keys of presets only
		}
		out[i], _, _ = strings.Cut(p.Common, ",")
	}
	return out
}

// tiny, in mm, is how far a measured value may pass a limit before it counts:
// far more than rounding makes, far less than anybody can measure.
const tiny = 1e-4

// Bit is a drill for a hole, with what it also lets in.
type Bit struct {
	Diameter box.MM
	// Chosen is true for the one nearest to the preset's own size.
	Chosen bool
	// Admits are the keys of other presets whose animals get in too; the ones
	// that a smaller bit of the list would keep out are in Extra as well.
	Admits, Extra []string
}

// Bits picks from the drills at hand those that make a round hole of a
// permitted size for the animal, smallest first; a size may stand twice in the
// list. The error is a *MissingError where the preset has no range for a round
// hole, a box.Problem with the code "no-bit" where no drill fits or one is no
// size at all.
func (p Preset) Bits(drills []box.MM) ([]Bit, error) {
	if p.Hole.Empty() || (p.Entry.Shape != RoundEntry && p.Entry.Shape != OvalEntry) {
		return nil, &MissingError{p.Key, "Hole", "no range of round holes is published"}
	}
	sorted := slices.Clone(drills)
	sort.Slice(sorted, func(i, j int) bool { return sorted[i] < sorted[j] })
	sorted = slices.Compact(sorted)
	var out []Bit
	for _, d := range sorted {
		if !(d > 0 && d < 1e4) {
			return nil, box.Problem{Path: "Workshop.Bits", Code: "no-bit", Got: fmt.Sprint(float64(d)), Lo: 0, Hi: 1e4, Unit: "mm", Why: "a drill has a size above zero"}
		}
		if float64(d) < p.Hole.Lo-tiny || p.Hole.HasHi && float64(d) > p.Hole.Hi+tiny {
			continue
		}
		b := Bit{Diameter: d, Admits: Admits(d, p.Region, p.Key)}
		if len(out) > 0 {
			for _, k := range b.Admits {
				if !slices.Contains(out[0].Admits, k) {
					b.Extra = append(b.Extra, k)
				}
			}
		}
		out = append(out, b)
	}
	if len(out) == 0 {
		hi := math.Inf(1)
		if p.Hole.HasHi {
			hi = p.Hole.Hi
		}
		return nil, box.Problem{Path: "Workshop.Bits", Code: "no-bit", Lo: p.Hole.Lo, Hi: hi, Unit: "mm",
			Why: "no drill at hand makes a hole for " + p.Common, Try: "a drill of " + num(float64(p.Entry.Width)) + " mm"}
	}
	best := 0
	for i, b := range out {
		if math.Abs(float64(b.Diameter-p.Entry.Width)) < math.Abs(float64(out[best].Diameter-p.Entry.Width)) {
			best = i
		}
	}
	out[best].Chosen = true
	return out, nil
}
