package picture

import "math"

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
	for _, c := range [...]Class{Trace, Unseen, Engraved, Edge, Contour, Leader, Rule} {
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
// Broken lines do not go on round a corner: there each begins with a dash, so
// that the corner shows.
func chain(c Class, lines []Line) []Stroke {
	ends := make(map[key][]int32, 2*len(lines))
	for i, l := range lines {
		a, b := keyOf(l.From), keyOf(l.To)
		ends[a] = append(ends[a], int32(i))
		ends[b] = append(ends[b], int32(i))
	}
	used := make([]bool, len(lines))
	broken := c.Pen().Dash != nil
	// step gives the end of an unused line at a place where a run arrives.
	step := func(before, at Point) (Point, bool) {
		k := keyOf(at)
		for _, i := range ends[k] {
			if used[i] {
				continue
			}
			to := lines[i].To
			if keyOf(to) == k {
				to = lines[i].From
			}
			if broken {
				ax, ay, bx, by := at.X-before.X, at.Y-before.Y, to.X-at.X, to.Y-at.Y
				if float64(ax*bx)+float64(ay*by) < float64(0.8*dist(before, at)*dist(at, to)) {
					continue
				}
			}
			used[i] = true
			return to, true
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
			q, ok := step(run[len(run)-2], run[len(run)-1])
			if !ok {
				break
			}
			run = append(run, q)
		}
		for {
			q, ok := step(run[1], run[0])
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

// Dashes cuts the stroke into the dashes of a pen, the first starting at its
// start; with an unbroken pen it is the stroke itself, closed by its first
// point.
func (s Stroke) Dashes(p Pen) [][]Point {
	run := s.Points
	if s.Closed {
		run = append(append([]Point(nil), run...), run[0])
	}
	whole := 0.0
	for _, d := range p.Dash {
		whole += d
	}
	if !(whole > 0) || len(run) < 2 {
		return [][]Point{run}
	}
	var out [][]Point
	k, left := 0, p.Dash[0]
	at := []Point{run[0]}
	for i := 1; i < len(run); i++ {
		from, to := run[i-1], run[i]
		for n := dist(from, to); n > left; n = dist(from, to) {
			t := left / n
			from = Point{from.X + float64(t*(to.X-from.X)), from.Y + float64(t*(to.Y-from.Y))}
			if k%2 == 0 {
				out = append(out, append(at, from))
			}
			k = (k + 1) % len(p.Dash)
			at, left = []Point{from}, math.Max(p.Dash[k], 1e-3)
		}
		left -= dist(from, to)
		at = append(at, to)
	}
	if k%2 == 0 && len(at) > 1 {
		out = append(out, at)
	}
	return out
}
