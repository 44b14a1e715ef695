package outline

import "math"

// weld gives places within eps of each other one number. A grid of cells
// somewhat larger than eps finds them; the first comer stands for the rest.
type weld struct {
	eps   float64
	at    []Point
	cells map[[2]int64][]int32
}

func newWeld(eps float64, room int) *weld {
	return &weld{eps: eps, cells: make(map[[2]int64][]int32, room)}
}

func (w *weld) cell(p Point) [2]int64 {
	k := 4 * w.eps
	return [2]int64{int64(math.Floor(p.X / k)), int64(math.Floor(p.Y / k))}
}

// find is the nearest place within eps, or -1.
func (w *weld) find(p Point) int32 {
	k := 4 * w.eps
	x0, x1 := int64(math.Floor((p.X-w.eps)/k)), int64(math.Floor((p.X+w.eps)/k))
	y0, y1 := int64(math.Floor((p.Y-w.eps)/k)), int64(math.Floor((p.Y+w.eps)/k))
	best, d := int32(-1), w.eps
	for x := x0; x <= x1; x++ {
		for y := y0; y <= y1; y++ {
			for _, i := range w.cells[[2]int64{x, y}] {
				if e := gap(w.at[i], p); e < d || e == d && best < 0 {
					best, d = i, e
				}
			}
		}
	}
	return best
}

func (w *weld) add(p Point) int32 {
	if i := w.find(p); i >= 0 {
		return i
	}
	i := int32(len(w.at))
	w.at = append(w.at, p)
	c := w.cell(p)
	w.cells[c] = append(w.cells[c], i)
	return i
}
