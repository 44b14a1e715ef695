package layout

import (
	"math"
	"sort"

	"holt.example/box/outline"
)

// copyOf is one piece of a part.
type copyOf struct{ part, n int }

// dealt is one option on a board with the pieces it yields.
type dealt struct {
	opt    int
	copies []copyOf
	length float64 // without kerf
}

// write turns the patterns into pieces of stock, each part in its place.
func (k *cutter) write(l *Layout, r result) {
	queue := make([][]copyOf, len(k.rows))
	for row, parts := range k.rows {
		ps := append([]int(nil), parts...)
		sort.SliceStable(ps, func(a, b int) bool { return k.job.Parts[ps[a]].Priority > k.job.Parts[ps[b]].Priority })
		for _, p := range ps {
			for n := 0; n < k.job.Parts[p].quantity(); n++ {
				queue[row] = append(queue[row], copyOf{p, n})
			}
		}
		queue[row] = queue[row][:k.cut.demand[row]]
	}
	short := make([]int, len(k.job.Parts))
	for i := range k.job.Parts {
		if k.part[i] {
			short[i] = k.job.Parts[i].quantity()
		}
	}
	pats := append([]pattern(nil), r.pats...)
	sort.SliceStable(pats, func(a, b int) bool { return k.boards[pats[a].bar].stock < k.boards[pats[b].bar].stock })
	for i := range pats {
		b := &k.boards[pats[i].bar]
		deals := make([][]dealt, len(b.runs))
		some := false
		for s := range b.runs {
			deals[s] = k.deal(pats[i].bar, pats[i].segs[s], queue)
			for _, d := range deals[s] {
				for _, c := range d.copies {
					short[c.part]--
				}
				some = true
			}
		}
		if some {
			l.Pieces = append(l.Pieces, k.piece(b, deals))
		}
	}
	for i, n := range short {
		if n > 0 {
			k.refuse(i, n, CodeNoneLeft)
		}
	}
}

// deal hands out pieces to the options of one run, the longest first, so that
// equal ones come off one stop.
func (k *cutter) deal(bar int, uses []use, queue [][]copyOf) []dealt {
	us := append([]use(nil), uses...)
	sort.SliceStable(us, func(a, b int) bool { return k.cut.opts[us[a].opt].lens[bar] > k.cut.opts[us[b].opt].lens[bar] })
	take := func(row int) (copyOf, bool) {
		if len(queue[row]) == 0 {
			return copyOf{}, false
		}
		c := queue[row][0]
		queue[row] = queue[row][1:]
		return c, true
	}
	var out []dealt
	for _, u := range us {
		h := &k.hows[u.opt]
		for n := 0; n < u.n; n++ {
			d := dealt{opt: u.opt}
			if h.pairs {
				a, okA := take(k.rowOf[h.pair.a])
				b, okB := take(k.rowOf[h.pair.b])
				switch {
				case okA && okB:
					d.copies, d.length = []copyOf{a, b}, h.pair.length
				case okA:
					d.copies = []copyOf{a}
				case okB:
					d.copies = []copyOf{b}
				}
			} else {
				for len(d.copies) < h.side*h.long {
					c, ok := take(h.row)
					if !ok {
						break
					}
					d.copies = append(d.copies, c)
				}
			}
			if len(d.copies) == 0 {
				continue
			}
			if d.length == 0 {
				d.length = k.long(bar, h, d.copies)
			}
			out = append(out, d)
		}
	}
	return out
}

// inStrip is how many of n copies of an option come in a row.
func (h *how) inStrip(n int) int {
	if h.pairs {
		return 1
	}
	return (n + h.side - 1) / h.side
}

// long is the length that the copies of an option take.
func (k *cutter) long(bar int, h *how, copies []copyOf) float64 {
	b := &k.boards[bar]
	row := h.inStrip(len(copies))
	most, ripped := 0.0, false
	for at := 0; at < len(copies); at += row {
		sum := -k.rules.Kerf
		for _, c := range copies[at:min(at+row, len(copies))] {
			x, y := k.size(c.part, *k.lie[c.part][b.stock])
			sum += x + k.rules.Kerf
			ripped = ripped || y < b.width-1e-3
		}
		most = math.Max(most, sum)
	}
	if ripped {
		most = math.Max(most, k.rules.LeastRip)
	}
	return most
}

func rect(x0, y0, x1, y1 float64) outline.Box {
	return outline.Box{Min: outline.Point{X: x0, Y: y0}, Max: outline.Point{X: x1, Y: y1}}
}

// piece is one board with its parts, its tree of cuts and its steps.
func (k *cutter) piece(b *board, deals [][]dealt) Piece {
	s := &k.job.Stock[b.stock]
	kerf := k.rules.Kerf
	p := Piece{Stock: b.stock}
	y0, y1 := s.Edge, s.Width-s.Edge
	var across []Cut
	var left []outline.Box
	end := 0.0 // of what has been handed out, its kerf included
	waste := func(to float64, trim bool) {
		if to-end > sameWidth {
			across = append(across, Cut{Box: rect(end, y0, to, y1), Trim: trim})
			if !trim {
				left = append(left, rect(end, y0, to, y1))
			}
		}
	}
	for i, run := range b.runs {
		waste(run.from-kerf, i == 0)
		if i > 0 && len(left) > 0 && left[len(left)-1].Max.X == run.from-kerf {
			left = left[:len(left)-1] // the defect itself
		}
		end = run.from
		for _, d := range deals[i] {
			across = append(across, k.blank(&p, b, d, end, y0, y1))
			p.Used = end + d.length
			end += d.length + kerf
		}
		if run.to-end > sameWidth {
			waste(run.to, false)
			end = run.to + kerf
		}
	}
	waste(s.Length, true)
	mid := Cut{Box: rect(0, y0, s.Length, y1), Into: across}
	root := mid
	if s.Edge > 0 {
		root = Cut{Box: rect(0, 0, s.Length, s.Width), Rip: true}
		if s.Edge > kerf {
			root.Into = append(root.Into, Cut{Box: rect(0, 0, s.Length, s.Edge-kerf), Trim: true})
		}
		root.Into = append(root.Into, mid)
		if s.Edge > kerf {
			root.Into = append(root.Into, Cut{Box: rect(0, y1+kerf, s.Length, s.Width), Trim: true})
		}
	}
	p.Cuts = &root
	p.Offcuts = keeps(left, k.rules.Keep, 0)
	p.Steps = steps(p.Cuts, kerf)
	return p
}

// blank places the pieces of one option with their left end at x.
func (k *cutter) blank(p *Piece, b *board, d dealt, x, y0, y1 float64) Cut {
	h := &k.hows[d.opt]
	kerf := k.rules.Kerf
	out := Cut{Box: rect(x, y0, x+d.length, y1)}
	if h.pairs && len(d.copies) == 2 {
		a := k.put(d.copies[0].part, d.copies[0].n, h.pair.poseA, x, y0)
		lb, _ := k.size(d.copies[1].part, h.pair.poseB)
		z := k.put(d.copies[1].part, d.copies[1].n, h.pair.poseB, x+d.length-lb, y0)
		p.Placements = append(p.Placements, a, z)
		n := len(p.Placements)
		out.Slant = math.Atan(h.pair.lean/h.pair.height) * (180 / math.Pi)
		out.Into = []Cut{{Box: a.Blank, Place: n - 1}, {Box: z.Blank, Place: n}}
		return out
	}
	y := y0
	row := h.inStrip(len(d.copies))
	for at := 0; at < len(d.copies); at += row {
		strip := Cut{}
		end, high := x, 0.0
		for _, c := range d.copies[at:min(at+row, len(d.copies))] {
			lx, ly := k.size(c.part, *k.lie[c.part][b.stock])
			high = math.Max(high, ly)
			p.Placements = append(p.Placements, k.put(c.part, c.n, *k.lie[c.part][b.stock], end, y))
			strip.Into = append(strip.Into, Cut{Box: rect(end, y, end+lx, y+ly), Place: len(p.Placements)})
			end += lx + kerf
		}
		strip.Box = rect(x, y, x+d.length, y+high)
		for i := range strip.Into {
			strip.Into[i].Box.Max.Y = y + high
		}
		if rest := x + d.length - end; rest > sameWidth {
			strip.Into = append(strip.Into, Cut{Box: rect(end, y, x+d.length, y+high)})
		}
		if len(strip.Into) == 1 && end-kerf >= x+d.length-1e-3 {
			strip = strip.Into[0]
			strip.Box.Max.X = x + d.length
		}
		if len(d.copies) == 1 && y1-(y+high) <= 1e-3 { // as wide as the board: only cut across
			strip.Box.Max.Y = y1
			out.Place, out.Into = strip.Place, strip.Into
			return out
		}
		out.Rip = true
		out.Into = append(out.Into, strip)
		y += high + kerf
	}
	if y1-y > sameWidth {
		out.Into = append(out.Into, Cut{Box: rect(x, y, x+d.length, y1)})
	}
	return out
}
