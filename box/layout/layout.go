package layout

import (
	"fmt"

	"holt.example/box/outline"
)

// Layout is an answer: everything that was placed, and what was not.
type Layout struct {
	Pieces   []Piece  // the stock used, piece by piece
	Report   Report   // what it costs and how good it is
	Problems Problems // the same as the error returned beside it
}

// Piece is one piece of stock and what is cut from it, in the frame of the
// stock.
type Piece struct {
	Stock      int // index in Job.Stock
	Number     int // counts the pieces of this stock from 1
	Placements []Placement
	Offcuts    []outline.Box // what is left and worth keeping, the largest first
	Used       float64       // mm along x from the near end of the stock to the last part

	Cuts  *Cut   // saw layouts and lengths: the tree of cuts
	Steps []Step // saw layouts and lengths: the cuts in the order to make them
	Beds  []Bed  // free layouts on a bed smaller than the stock: the jobs
}

// Placement is one part in its place.
type Placement struct {
	Part int     // index in Job.Parts
	Copy int     // counts the copies of that part from 0
	Over bool    // turned over: mirrored before it is turned
	Turn float64 // degrees anticlockwise
	X, Y float64 // mm by which it is then moved

	// Blank is the rectangle cut for the part in saw layouts and lengths,
	// allowance included; elsewhere the extents of the part and its allowance.
	Blank outline.Box
}

// Map carries the part's own frame into that of the stock: turned over (left
// and right change places), turned about the origin, moved.
func (p Placement) Map() outline.Affine {
	a := outline.Turn(p.Turn)
	if p.Over {
		a = outline.MirrorX().Then(a)
	}
	return a.Then(outline.Shift(p.X, p.Y))
}

// Bed is one set-up of a machine whose bed is smaller than the stock: the
// stock is cut into blanks of this size first. Everything lies inside by the
// clamp margin.
type Bed struct {
	Box        outline.Box
	Placements []int // indices in Piece.Placements
}

// Report says what a layout takes and how good it is.
type Report struct {
	Wanted, Placed int // pieces asked for and pieces laid out

	Cost   float64 // of the stock used, offcuts free
	Priced bool    // Cost is in the currency of the prices; else in m2, or m for lengths
	Bound  float64 // no layout of what was placed costs less: proved
	Buy    []Buy   // the stock used, in the order of Job.Stock

	Pieces     int  // of stock, offcuts included
	LeastBound int  // no layout of what was placed takes fewer bought pieces: proved
	Optimal    bool // the cost is proved to be the least possible

	StockArea float64 // mm2 of the pieces used, trims included
	PartArea  float64 // mm2 of the outlines placed
	Yield     float64 // PartArea / StockArea, 0 if nothing is used
	Length    float64 // mm used along x, over all pieces; the objective of ShortestLength
	Floor     float64 // mm: Length cannot be less (ShortestLength only)

	Worth      float64 // of what was placed, for Fill
	WorthBound float64 // no layout of Fill is worth more: proved

	Seed      uint64
	Effort    int  // iterations asked for
	Done      int  // iterations done
	Cancelled bool // the context ended the search early
}

// Buy is a line of the shopping list.
type Buy struct {
	Stock  int // index in Job.Stock
	Pieces int
	Cost   float64
}

// Verdict is how good the layout is, in words: "optimal" if proved, else by
// how much the cost exceeds the bound at most. What could not be placed is said
// first; the rest is then about what was.
func (r Report) Verdict() string {
	if r.Placed == 0 {
		return "nothing placed"
	}
	if left := r.Wanted - r.Placed; left > 0 {
		return fmt.Sprintf("%d of %d parts not placed, the rest %s", left, r.Wanted, r.rating())
	}
	return r.rating()
}

func (r Report) rating() string {
	switch {
	case r.Optimal:
		return "optimal"
	case r.Priced:
		return fmt.Sprintf("at most %.2f above the least cost", r.Cost-r.Bound)
	case r.LeastBound > 0 && r.bought() > r.LeastBound && len(r.Buy) == 1:
		return "at most " + num(float64(r.bought()-r.LeastBound)) + " above the least number"
	}
	return "at most " + num(100*(r.Cost-r.Bound)/r.Bound) + " % above the least"
}

func (r Report) bought() int {
	n := 0
	for _, b := range r.Buy {
		if b.Cost > 0 {
			n += b.Pieces
		}
	}
	return n
}
