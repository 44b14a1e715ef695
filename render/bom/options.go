package bom

import (
	"sort"

	"holt.example/box"
)

// Options says how a list is made. The zero value is ready to use.
type Options struct {
	// Step is the precision of the sizes that people work to, in mm: 0.1 for
	// work on machines, 0.5 for hand work. 0 means 0.1; the range is 0.01 to
	// 10. Thicknesses, the sections of joints and the diameters of holes come
	// from tools and gauges and are never rounded coarser than 0.1.
	Step box.MM
	// Bill asks for a bill of materials: what to buy, its mass and its cost. nil
	// leaves it out.
	Bill *Terms
}

// step is the step to use; ok is false when Step is out of range.
func (o Options) step() (s float64, ok bool) {
	s = float64(o.Step)
	if s == 0 {
		return fine, true
	}
	if !(s >= 0.01 && s <= 10) {
		return fine, false
	}
	return s, true
}

// Check refuses a step, a share of waste and prices that cannot be meant, with
// box.Problems that name them all, as all writers do.
func (o Options) Check() error {
	ps := o.Bill.check()
	if _, ok := o.step(); !ok {
		ps = append(ps, box.Problem{Path: "Step", Code: "range", Got: num(float64(o.Step)), Lo: 0.01, Hi: 10, Unit: "mm", Why: "lists cannot be rounded to this step"})
	}
	if len(ps) == 0 {
		return nil
	}
	sort.SliceStable(ps, func(i, k int) bool { return ps[i].Path < ps[k].Path })
	return ps
}
