package layout

import (
	"math"
	"sort"
)

// tick is the step, in mm, in which lengths are counted: that of the written
// coordinates.
const tick = 1e-4

// ticksUp and ticksDown count a length in ticks, a part up and stock down; a
// thousandth of a tick either way is rounding.
func ticksUp(x float64) int64   { return int64(math.Ceil(x/tick - 1e-3)) }
func ticksDown(x float64) int64 { return int64(math.Floor(x/tick + 1e-3)) }

// stretch is a clear run of a board, in mm from its left end.
type stretch struct{ from, to float64 }

// stretches are the clear runs of a board for a part that tolerates what p
// does. A cut takes its kerf out of the defect, or beyond it if that is
// narrower.
func stretches(s *Stock, p *Part, kerf float64) []stretch {
	type gap struct{ from, to float64 }
	var gaps []gap
	for i := range s.Defects {
		d := &s.Defects[i]
		if avoids(p, d) && d.Box.Max.X > s.End && d.Box.Min.X < s.Length-s.End {
			gaps = append(gaps, gap{d.Box.Min.X, d.Box.Max.X})
		}
	}
	sort.Slice(gaps, func(i, j int) bool {
		if gaps[i].from != gaps[j].from {
			return gaps[i].from < gaps[j].from
		}
		return gaps[i].to < gaps[j].to
	})
	var out []stretch
	at := s.End
	for _, g := range gaps {
		if g.from > at {
			out = append(out, stretch{at, g.from})
			at = math.Max(g.to, g.from+kerf)
			continue
		}
		at = math.Max(at, g.to)
	}
	if end := s.Length - s.End; end > at {
		out = append(out, stretch{at, end})
	}
	return out
}
