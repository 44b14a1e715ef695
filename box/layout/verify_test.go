package layout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"holt.example/box/outline"
)

// verifier checks a layout from nothing but the job and the placements; it
// shares no code with the search.
type verifier struct {
	job    *Job
	gap    float64 // least distance between parts
	margin float64 // least distance to the edge of the trimmed stock
	kerf   float64
	sawn   bool
}

const slack = 1e-6

func (v verifier) check(t testing.TB, l Layout) {
	t.Helper()
	if err := v.fault(l); err != nil {
		t.Fatal(err)
	}
}

func (v verifier) fault(l Layout) error {
	seen := map[[2]int]bool{}
	used := map[int]int{}
	placed := 0
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if p.Stock < 0 || p.Stock >= len(v.job.Stock) {
			return fmt.Errorf("piece %d: no such stock", i)
		}
		used[p.Stock]++
		if p.Number != used[p.Stock] {
			return fmt.Errorf("piece %d is number %d, want %d", i, p.Number, used[p.Stock])
		}
		if len(p.Placements) == 0 {
			return fmt.Errorf("piece %d is empty", i)
		}
		for _, q := range p.Placements {
			key := [2]int{q.Part, q.Copy}
			if seen[key] {
				return fmt.Errorf("part %v placed twice", key)
			}
			seen[key] = true
			placed++
			if err := v.place(p, q); err != nil {
				return fmt.Errorf("piece %d, part %v: %w", i, key, err)
			}
		}
		if err := v.apart(p); err != nil {
			return fmt.Errorf("piece %d: %w", i, err)
		}
		if v.sawn {
			if err := v.tree(p); err != nil {
				return fmt.Errorf("piece %d: %w", i, err)
			}
		}
	}
	for s, n := range used {
		st := v.job.Stock[s]
		limit := st.Count
		if st.Offcut && limit == 0 {
			limit = 1
		}
		if limit > 0 && n > limit {
			return fmt.Errorf("%d of stock %d used, there are %d", n, s, limit)
		}
	}
	wanted := 0
	for i, p := range v.job.Parts {
		n := p.Quantity
		if n == 0 {
			n = 1
		}
		if n < 0 {
			continue
		}
		wanted += n
		got := 0
		for c := 0; c < n; c++ {
			if seen[[2]int{i, c}] {
				got++
			}
		}
		said := false
		for _, q := range l.Problems {
			if path := fmt.Sprintf("Parts[%d]", i); q.Path == path || strings.HasPrefix(q.Path, path+".") || !strings.HasPrefix(q.Path, "Parts") {
				said = true
			}
		}
		if got < n && !said {
			return fmt.Errorf("part %d: %d of %d placed and no problem says so: %v", i, got, n, l.Problems)
		}
	}
	if placed != l.Report.Placed || wanted != l.Report.Wanted {
		return fmt.Errorf("report says %d of %d placed, they are %d of %d", l.Report.Placed, l.Report.Wanted, placed, wanted)
	}
	if l.Report.Bound > l.Report.Cost+1e-9*l.Report.Cost {
		return fmt.Errorf("bound %v above cost %v", l.Report.Bound, l.Report.Cost)
	}
	return nil
}

// place checks one placement against its stock.
func (v verifier) place(p *Piece, q Placement) error {
	part, st := v.job.Parts[q.Part], v.job.Stock[p.Stock]
	if part.Material != "" && st.Material != "" && part.Material != st.Material {
		return fmt.Errorf("wrong material")
	}
	if part.Thickness > 0 && st.Thickness > 0 && math.Abs(part.Thickness-st.Thickness) > 0.1 {
		return fmt.Errorf("wrong thickness")
	}
	if q.Over && !part.TurnOver {
		return fmt.Errorf("turned over")
	}
	allowed := part.Turns
	if allowed == nil {
		allowed = []float64{0, 90, 180, 270}
	}
	ok := false
	for _, a := range allowed {
		ok = ok || math.Abs(math.Mod(a-q.Turn+720, 360)) < 1e-9
	}
	if !ok {
		return fmt.Errorf("turn %v not allowed", q.Turn)
	}
	if part.Grain != NoGrain && st.Grain != NoGrain {
		d := math.Mod(q.Turn, 180)
		if part.Grain != st.Grain {
			d = math.Mod(q.Turn+90, 180)
		}
		if math.Abs(d) > 1e-9 {
			return fmt.Errorf("across the grain")
		}
	}
	e := part.Outline.Transform(q.Map()).Extents()
	a, m := part.Allowance, v.margin
	if e.Min.X-a < st.End+m-slack || e.Max.X+a > st.Length-st.End-m+slack || e.Min.Y-a < st.Edge+m-slack || e.Max.Y+a > st.Width-st.Edge-m+slack {
		return fmt.Errorf("outside: %v of %v x %v", e, st.Length, st.Width)
	}
	if q.Blank.Min.X > e.Min.X-a+slack || q.Blank.Max.X < e.Max.X+a-slack || q.Blank.Min.Y > e.Min.Y-a+slack || q.Blank.Max.Y < e.Max.Y+a-slack {
		return fmt.Errorf("blank %v does not hold %v", q.Blank, e)
	}
	for _, d := range st.Defects {
		bad := true
		for _, k := range part.Tolerates {
			bad = bad && k != d.Kind
		}
		if !bad || d.Box.Width() <= 0 {
			continue
		}
		if q.Blank.Min.X < d.Box.Max.X-slack && d.Box.Min.X < q.Blank.Max.X-slack && (d.Box.Height() == 0 || q.Blank.Min.Y < d.Box.Max.Y-slack && d.Box.Min.Y < q.Blank.Max.Y-slack) {
			if v.sawn || part.Outline.Transform(q.Map()).Contains(d.Box.Centre(), 0) == outline.Inside {
				return fmt.Errorf("on a defect")
			}
		}
	}
	return nil
}

// apart checks that no two parts of a piece come nearer than the gap, by the
// exact distance of the outlines and again by brute force over polygons.
func (v verifier) apart(p *Piece) error {
	n := len(p.Placements)
	regs := make([]outline.Region, n)
	polys := make([][][]outline.Point, n)
	ext := make([]outline.Box, n)
	for i, q := range p.Placements {
		regs[i] = v.job.Parts[q.Part].Outline.Transform(q.Map())
		for _, c := range regs[i] {
			polys[i] = append(polys[i], c.Flatten(1e-3))
		}
		ext[i] = regs[i].Extents()
	}
	for i := range regs {
		for j := 0; j < i; j++ {
			need := v.gap
			if v.gap > 0 || !v.sawn {
				need += v.job.Parts[p.Placements[i].Part].Allowance + v.job.Parts[p.Placements[j].Part].Allowance
			}
			if !ext[i].Overlaps(ext[j], need+1) {
				continue
			}
			d := regs[i].DistanceTo(regs[j])
			b := brute(polys[i], polys[j])
			if need > 0 {
				if d < need-slack || b < need-slack-2e-3 {
					return fmt.Errorf("parts %d and %d are %v (brute force %v) apart, want %v", j, i, d, b, need)
				}
			}
			if overlap(regs[i], regs[j], polys[i], polys[j]) {
				return fmt.Errorf("parts %d and %d overlap: %v %v", j, i, p.Placements[j], p.Placements[i])
			}
		}
	}
	return nil
}

func brute(a, b [][]outline.Point) float64 {
	best := math.Inf(1)
	for _, p := range a {
		for i := range p {
			for _, q := range b {
				for j := range q {
					best = math.Min(best, segDist(p[i], p[(i+1)%len(p)], q[j], q[(j+1)%len(q)]))
				}
			}
		}
	}
	return best
}

func cross2(o, a, b outline.Point) float64 { return (a.X-o.X)*(b.Y-o.Y) - (a.Y-o.Y)*(b.X-o.X) }

func segDist(a, b, c, d outline.Point) float64 {
	if cross2(a, b, c)*cross2(a, b, d) < 0 && cross2(c, d, a)*cross2(c, d, b) < 0 {
		return 0
	}
	return math.Min(math.Min(ptSeg(a, c, d), ptSeg(b, c, d)), math.Min(ptSeg(c, a, b), ptSeg(d, a, b)))
}

func ptSeg(p, a, b outline.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	l := dx*dx + dy*dy
	t := 0.0
	if l > 0 {
		t = math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/l))
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

// overlap says whether the material of two regions overlaps by more than a
// touch: a proper crossing more than a hair deep, or one inside the other.
func overlap(a, b outline.Region, pa, pb [][]outline.Point) bool {
	const hair = 5e-6
	deep := func(r outline.Region, polys [][]outline.Point) bool {
		for _, p := range polys {
			for i := range p {
				q := p[(i+1)%len(p)]
				for _, f := range []float64{0, 0.21, 0.5, 0.83} {
					x := outline.Point{X: p[i].X + f*(q.X-p[i].X), Y: p[i].Y + f*(q.Y-p[i].Y)}
					if r.Contains(x, hair) == outline.Inside && r.Distance(x) > 2e-3 {
						return true
					}
				}
			}
		}
		return false
	}
	if deep(a, pb) || deep(b, pa) {
		return true
	}
	// equal outlines on top of each other have no corner inside
	for _, poly := range pa {
		if a.Area() > 0 && len(poly) >= 3 {
			if tri := inner(a, poly); b.Contains(tri, hair) == outline.Inside {
				return true
			}
		}
	}
	return false
}

// inner is a point within the material near the first corner of a polygon.
func inner(r outline.Region, p []outline.Point) outline.Point {
	for k := 0; k < len(p); k++ {
		m := outline.Point{X: (p[k].X + p[(k+1)%len(p)].X) / 2, Y: (p[k].Y + p[(k+1)%len(p)].Y) / 2}
		dx, dy := p[(k+1)%len(p)].X-p[k].X, p[(k+1)%len(p)].Y-p[k].Y
		n := math.Hypot(dx, dy)
		for _, h := range []float64{1, 0.1, 0.01} {
			q := outline.Point{X: m.X - dy/n*h, Y: m.Y + dx/n*h}
			if r.Contains(q, 0) == outline.Inside {
				return q
			}
		}
	}
	return outline.Point{X: math.Inf(1)}
}

// tree checks that straight cuts from edge to edge give every blank.
func (v verifier) tree(p *Piece) error {
	if p.Cuts == nil {
		return fmt.Errorf("no tree of cuts")
	}
	st := v.job.Stock[p.Stock]
	b := p.Cuts.Box
	if b != (outline.Box{Max: outline.Point{X: st.Length, Y: st.Width}}) {
		return fmt.Errorf("the tree starts from %v", b)
	}
	got := make([]int, len(p.Placements)+1)
	if err := v.node(p, p.Cuts, got); err != nil {
		return err
	}
	for i, n := range got[1:] {
		if n != 1 {
			return fmt.Errorf("placement %d is cut %d times", i, n)
		}
	}
	freed := make([]int, len(p.Placements)+1)
	for i, s := range p.Steps {
		if s.Number != i+1 || !(s.Setting > 0) || !(s.Long > 0) {
			return fmt.Errorf("step %d: %+v", i, s)
		}
		freed[s.Place]++
		freed[s.Frees]++
	}
	return nil
}

func (v verifier) node(p *Piece, c *Cut, got []int) error {
	const eps = 1e-5
	if len(c.Into) == 0 {
		if c.Place > 0 {
			got[c.Place]++
			q := p.Placements[c.Place-1].Blank
			if math.Abs(q.Min.X-c.Box.Min.X) > eps || math.Abs(q.Max.X-c.Box.Max.X) > eps || math.Abs(q.Min.Y-c.Box.Min.Y) > eps || math.Abs(q.Max.Y-c.Box.Max.Y) > 2e-3 {
				return fmt.Errorf("blank %v cut as %v", q, c.Box)
			}
		}
		return nil
	}
	if c.Place != 0 {
		return fmt.Errorf("a divided part")
	}
	if c.Slant != 0 {
		got[c.Into[0].Place]++
		got[c.Into[1].Place]++
		return nil // apart checks the outlines themselves
	}
	at := c.Box.Min.X
	if c.Rip {
		at = c.Box.Min.Y
	}
	for i := range c.Into {
		d := &c.Into[i]
		lo, hi, end := d.Box.Min.X, d.Box.Max.X, c.Box.Max.X
		side := d.Box.Min.Y == c.Box.Min.Y && d.Box.Max.Y == c.Box.Max.Y
		if c.Rip {
			lo, hi, end = d.Box.Min.Y, d.Box.Max.Y, c.Box.Max.Y
			side = d.Box.Min.X == c.Box.Min.X && d.Box.Max.X == c.Box.Max.X
		}
		if !side {
			return fmt.Errorf("%v is not cut from edge to edge of %v", d.Box, c.Box)
		}
		want := at
		if i > 0 {
			want += v.kerf
		}
		if lo < want-eps {
			return fmt.Errorf("no full kerf before %v", d.Box)
		}
		if i > 0 && lo > want+eps && !(lo-want <= 2*v.kerf+eps) {
			return fmt.Errorf("%v lost before %v", lo-want, d.Box)
		}
		if hi > end+eps || hi < lo {
			return fmt.Errorf("%v outside %v", d.Box, c.Box)
		}
		at = hi
		if err := v.node(p, d, got); err != nil {
			return err
		}
	}
	return nil
}
