package picture

import (
	"math"
	"sort"
)

// near is the distance on the page, in mm, within which lines count as one: a
// tenth of the finest pen.
const near = 0.02

// clean drops what would be drawn twice: parts that touch have the same edge,
// or a piece of it, each for itself, and printed twice it would look darker.
// Bolder lines win over finer ones, then longer over shorter; of the others
// only what reaches beyond remains.
func clean(lines []Line) []Line {
	order := make([]int, len(lines))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool {
		a, b := lines[order[i]], lines[order[j]]
		if a.Class != b.Class {
			return a.Class < b.Class
		}
		return a.Length() > b.Length()
	})
	index := newBands(len(lines), len(lines)/2+1, func(i int) (float64, float64) {
		a, b := lines[i].From.Y, lines[i].To.Y
		return math.Min(a, b) - near, math.Max(a, b) + near
	})
	kept := make([][]Line, len(lines))
	var done seen
	for _, i := range order {
		l := lines[i]
		n := l.Length()
		if n < 0.01 {
			continue
		}
		done.next(len(lines))
		var taken []span
		for c, e := index.span(math.Min(l.From.Y, l.To.Y), math.Max(l.From.Y, l.To.Y)); c <= e; c++ {
			for _, j := range index.cell[c] {
				if !done.first(j) {
					continue
				}
				for _, k := range kept[j] {
					if v, ok := shared(l, k, n); ok {
						taken = append(taken, v)
					}
				}
			}
		}
		if len(taken) == 0 {
			kept[i] = []Line{l}
			continue
		}
		for _, v := range without(span{0, 1}, union(taken, near/n)) {
			if (v.b-v.a)*n >= 2*near {
				m := l
				m.From, m.To = along(l, v.a), along(l, v.b)
				kept[i] = append(kept[i], m)
			}
		}
	}
	out := make([]Line, 0, len(lines))
	for _, k := range kept {
		out = append(out, k...)
	}
	return out
}

func along(l Line, t float64) Point {
	return Point{l.From.X + float64(t*(l.To.X-l.From.X)), l.From.Y + float64(t*(l.To.Y-l.From.Y))}
}

// shared is the range of l, n long, that k lies on. The longer of the two
// gives the direction: a short one says little about it.
func shared(l, k Line, n float64) (span, bool) {
	if math.Max(k.From.X, k.To.X) < math.Min(l.From.X, l.To.X)-near ||
		math.Min(k.From.X, k.To.X) > math.Max(l.From.X, l.To.X)+near {
		return span{}, false
	}
	long, short := l, k
	m := n
	if kn := k.Length(); kn > n {
		long, short, m = k, l, kn
	}
	dx, dy := (long.To.X-long.From.X)/m, (long.To.Y-long.From.Y)/m
	for _, p := range [2]Point{short.From, short.To} {
		if math.Abs(float64(dx*(p.Y-long.From.Y))-float64(dy*(p.X-long.From.X))) > near {
			return span{}, false
		}
	}
	dx, dy = (l.To.X-l.From.X)/n, (l.To.Y-l.From.Y)/n
	at := func(p Point) float64 {
		return (float64(dx*(p.X-l.From.X)) + float64(dy*(p.Y-l.From.Y))) / n
	}
	v := span{at(k.From), at(k.To)}
	if v.a > v.b {
		v.a, v.b = v.b, v.a
	}
	v.a, v.b = math.Max(v.a, 0), math.Min(v.b, 1)
	return v, (v.b-v.a)*n > near/2
}

// Stroke is a run of lines of one class end to end, as a pen draws it.
type Stroke struct {
	Class  Class
	Points []Point
	Closed bool
}

// Strokes joins the picture's lines end to end, boldest last: so painters get
// clean corners, and files stay small.
func (p *Picture) Strokes() []Stroke {
	var out []Stroke
	for _, c := range [...]Class{Trace, Unseen, Edge, Contour, Leader, Rule} {
		var lines []Line
		for _, l := range p.Lines {
			if l.Class == c {
				lines = append(lines, l)
			}
		}
		out = append(out, chain(c, lines)...)
	}
	return out
}

// key is a place on the page in steps of 0.001 mm.
type key struct{ x, y int64 }

func keyOf(p Point) key {
	return key{int64(math.Round(p.X * 1000)), int64(math.Round(p.Y * 1000))}
}

// chain walks from line to line as long as one starts where the last ended.
func chain(c Class, lines []Line) []Stroke {
	ends := make(map[key][]int32, 2*len(lines))
	for i, l := range lines {
		a, b := keyOf(l.From), keyOf(l.To)
		ends[a] = append(ends[a], int32(i))
		ends[b] = append(ends[b], int32(i))
	}
	used := make([]bool, len(lines))
	// step gives the unused line at a place, if there is just one way on.
	step := func(at Point) (Point, bool) {
		k := keyOf(at)
		for _, i := range ends[k] {
			if used[i] {
				continue
			}
			used[i] = true
			if keyOf(lines[i].From) == k {
				return lines[i].To, true
			}
			return lines[i].From, true
		}
		return Point{}, false
	}
	var out []Stroke
	for i, l := range lines {
		if used[i] {
			continue
		}
		used[i] = true
		run := []Point{l.From, l.To}
		for {
			q, ok := step(run[len(run)-1])
			if !ok {
				break
			}
			run = append(run, q)
		}
		for {
			q, ok := step(run[0])
			if !ok {
				break
			}
			run = append([]Point{q}, run...)
		}
		s := Stroke{Class: c, Points: run}
		if n := len(run); n > 3 && keyOf(run[0]) == keyOf(run[n-1]) {
			s.Points, s.Closed = run[:n-1], true
		}
		s.Points = straighten(s.Points)
		out = append(out, s)
	}
	return out
}

// straighten leaves out the points in the middle of a straight run.
func straighten(p []Point) []Point {
	if len(p) < 3 {
		return p
	}
	out := p[:1:1]
	for i := 1; i < len(p)-1; i++ {
		a, b, c := out[len(out)-1], p[i], p[i+1]
		l := Line{From: a, To: c}
		n := l.Length()
		h := math.Abs(float64((c.X-a.X)*(b.Y-a.Y)) - float64((c.Y-a.Y)*(b.X-a.X)))
		if n > 0 && h/n < 0.001 && float64((b.X-a.X)*(c.X-b.X))+float64((b.Y-a.Y)*(c.Y-b.Y)) > 0 {
			continue
		}
		out = append(out, b)
	}
	return append(out, p[len(p)-1])
}
