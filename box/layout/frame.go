package layout

import (
	"holt.example/box/outline"
	"math"
	"sort"
)

// frame is the tree of trims and defects of a stock; clear rectangles are
// marked with Place -1.
func (y *sawyer) frame(s int) Cut {
	st := &y.job.Stock[s]
	kerf := y.rules.Kerf
	usable := rect(st.End, st.Edge, st.Length-st.End, st.Width-st.Edge)
	var ds []outline.Box
	for i := range st.Defects {
		d := &st.Defects[i]
		for j := range y.job.Parts {
			if y.part[j] && avoids(&y.job.Parts[j], d) {
				ds = append(ds, d.Box)
				break
			}
		}
	}
	sort.SliceStable(ds, func(i, j int) bool { return ds[i].Min.X < ds[j].Min.X })
	in := around(usable, ds, kerf, 0)
	if st.End > 0 {
		out := Cut{Box: rect(0, st.Edge, st.Length, st.Width-st.Edge)}
		out.Into = trimmed(in, rect(0, st.Edge, st.End-kerf, st.Width-st.Edge), rect(st.Length-st.End+kerf, st.Edge, st.Length, st.Width-st.Edge))
		in = out
	}
	if st.Edge > 0 {
		out := Cut{Box: rect(0, 0, st.Length, st.Width), Rip: true}
		out.Into = trimmed(in, rect(0, 0, st.Length, st.Edge-kerf), rect(0, st.Width-st.Edge+kerf, st.Length, st.Width))
		in = out
	}
	return in
}

// trimmed is the piece between its two trims, as far as they are more than
// dust.
func trimmed(in Cut, before, after outline.Box) []Cut {
	var out []Cut
	if before.Width() > sameWidth && before.Height() > sameWidth {
		out = append(out, Cut{Box: before, Trim: true})
	}
	out = append(out, in)
	if after.Width() > sameWidth && after.Height() > sameWidth {
		out = append(out, Cut{Box: after, Trim: true})
	}
	return out
}

// around divides a rectangle by cuts that go round the defects, whichever way
// leaves the better rectangles.
func around(b outline.Box, ds []outline.Box, kerf float64, depth int) Cut {
	for i, d := range ds {
		x0, x1 := math.Max(d.Min.X, b.Min.X), math.Min(d.Max.X, b.Max.X)
		y0, y1 := math.Max(d.Min.Y, b.Min.Y), math.Min(d.Max.Y, b.Max.Y)
		if !(x0 < x1 && y0 < y1) {
			continue
		}
		if depth > 12 {
			return Cut{Box: b}
		}
		rest := ds[i+1:]
		across := Cut{Box: b}
		if x0-b.Min.X > sameWidth {
			across.Into = append(across.Into, around(rect(b.Min.X, b.Min.Y, x0, b.Max.Y), rest, kerf, depth+1))
		}
		if m0, m1 := inside(x0, b.Min.X, kerf), inside(-x1, -b.Max.X, kerf); m0 < -m1-sameWidth {
			mid := Cut{Box: rect(m0, b.Min.Y, -m1, b.Max.Y), Rip: true}
			mid.Into = bands(mid.Box, y0, y1, rest, kerf, depth)
			across.Into = append(across.Into, mid)
		}
		if r := math.Max(x1, math.Min(x0+kerf, b.Max.X)); b.Max.X-r > sameWidth {
			across.Into = append(across.Into, around(rect(r, b.Min.Y, b.Max.X, b.Max.Y), rest, kerf, depth+1))
		}
		along := Cut{Box: b, Rip: true}
		if y0-b.Min.Y > sameWidth {
			along.Into = append(along.Into, around(rect(b.Min.X, b.Min.Y, b.Max.X, y0), rest, kerf, depth+1))
		}
		if m0, m1 := inside(y0, b.Min.Y, kerf), inside(-y1, -b.Max.Y, kerf); m0 < -m1-sameWidth {
			along.Into = append(along.Into, Cut{Box: rect(b.Min.X, m0, b.Max.X, -m1)})
		}
		if r := math.Max(y1, math.Min(y0+kerf, b.Max.Y)); b.Max.Y-r > sameWidth {
			along.Into = append(along.Into, around(rect(b.Min.X, r, b.Max.X, b.Max.Y), rest, kerf, depth+1))
		}
		score := func(c *Cut) float64 {
			v := 0.0
			for _, r := range clears(c, nil) {
				v += worth(int64(r.Width()), int64(r.Height()))
			}
			return v
		}
		if score(&along) > score(&across) {
			return along
		}
		return across
	}
	return Cut{Box: b, Place: -1}
}

// inside is where the middle begins: one kerf into the defect, or at the edge
// of the rectangle if the defect reaches it.
func inside(at, edge, kerf float64) float64 {
	if at-edge <= sameWidth {
		return edge
	}
	return at + kerf
}

// bands divides a column below, on and above a defect.
func bands(b outline.Box, y0, y1 float64, rest []outline.Box, kerf float64, depth int) []Cut {
	var out []Cut
	if y0-b.Min.Y > sameWidth {
		out = append(out, around(rect(b.Min.X, b.Min.Y, b.Max.X, y0), rest, kerf, depth+1))
	}
	if m0, m1 := inside(y0, b.Min.Y, kerf), inside(-y1, -b.Max.Y, kerf); m0 < -m1-sameWidth {
		out = append(out, Cut{Box: rect(b.Min.X, m0, b.Max.X, -m1)})
	}
	if r := math.Max(y1, math.Min(y0+kerf, b.Max.Y)); b.Max.Y-r > sameWidth {
		out = append(out, around(rect(b.Min.X, r, b.Max.X, b.Max.Y), rest, kerf, depth+1))
	}
	return out
}

// clears lists the clear rectangles of a frame in order.
func clears(c *Cut, out []outline.Box) []outline.Box {
	if c.Place == -1 {
		return append(out, c.Box)
	}
	for i := range c.Into {
		out = clears(&c.Into[i], out)
	}
	return out
}
