package batch

import (
	"fmt"

	"holt.example/box"
	"holt.example/box/layout"
	"holt.example/box/outline"
)

// Result is a batch laid out.
type Result struct {
	Job      Job
	Boxes    []Box   // every box of the batch, in the order of the orders
	Sheets   []Sheet // every piece of stock used, whatever its form
	Groups   []Group // the parts that compete for the same stock
	Report   Report
	Problems Problems // the same as the error returned beside it
}

// Box is one box of the batch.
type Box struct {
	Number int // from 1, as in labels
	Order  int // index in Job.Orders
	Copy   int // counts the boxes of its order from 0
}

// Group is a set of parts that compete for the same stock, laid out together:
// nearly always those of one thickness.
type Group struct {
	Materials []string // of the parts, in the order met; "" for none given
	Thickness []box.MM // of the parts, ascending
	Stock     []int    // indices in Job.Stock of what fits them
	Wanted    int      // parts
	Report    layout.Report
}

// Sheet is one piece of stock and the parts that are cut from it.
type Sheet struct {
	Number int // from 1 over the whole batch, as on its drawing
	Group  int // index in Result.Groups

	// Piece is the layout. Its Stock is an index in Job.Stock; Cuts, Steps and
	// Beds count its Placements, which run as Placed does.
	Piece  layout.Piece
	Placed []Placed
}

// Placed is a part in its place.
type Placed struct {
	Box   int       // index in Result.Boxes
	Item  int       // number of the part in its plan's list
	Label string    // "item/box": to write on the part
	Piece box.Piece // as in the plan

	// Over says that the other face is up than the panel's machined one.
	Over bool
	// Panel is the panel as it lies: that of the plan, or turned over. Lay
	// carries it into the frame of the stock by a turn and a move.
	Panel box.Panel
	Lay   outline.Affine
	Blank outline.Box // the rectangle cut for it, in the frame of the stock

	// Outline is the silhouette in the frame of the stock, with the openings in
	// which other parts may lie.
	Outline outline.Region
}

// Map carries the panel of the plan, Piece.Panel, into the frame of the stock;
// it mirrors where the part lies turned over.
func (p Placed) Map() outline.Affine {
	if p.Over {
		return outline.MirrorX().Then(p.Lay)
	}
	return p.Lay
}

// Report is the sum over the groups.
type Report struct {
	Wanted, Placed int // parts

	// Cost is that of the stock bought, from its prices, and Bound what no
	// layout can go below: proved. If no stock has a price, both count used
	// stock: square metres, or metres with Lengths.
	Cost, Bound float64
	Priced      bool
	Optimal     bool // the cost is proved to be the least possible

	Buy []layout.Buy // the stock used, in the order of Job.Stock, offcuts among it

	StockArea float64 // mm2 of the pieces used
	PartArea  float64 // mm2 of the parts placed
	Yield     float64 // PartArea / StockArea

	Done      int  // iterations done
	Cancelled bool // the context ended the search early
}

// Verdict is how good the batch is, in words: "optimal" if proved, else by how
// much its cost exceeds the bound at most. What could not be placed is said
// first; the rest is then about what was.
func (r *Result) Verdict() string {
	n := r.Report
	if n.Placed == 0 {
		return "nothing placed"
	}
	if len(r.Groups) == 1 && r.Groups[0].Report.Wanted == n.Wanted {
		return r.Groups[0].Report.Verdict()
	}
	if left := n.Wanted - n.Placed; left > 0 {
		return fmt.Sprintf("%d of %d parts not placed, the rest %s", left, n.Wanted, r.rating())
	}
	return r.rating()
}

func (r *Result) rating() string {
	switch {
	case r.Report.Optimal:
		return "optimal"
	case r.Report.Priced:
		return fmt.Sprintf("at most %.2f above the least cost", r.Report.Cost-r.Report.Bound)
	}
	return fmt.Sprintf("at most %.1f %% above the least", 100*(r.Report.Cost-r.Report.Bound)/r.Report.Bound)
}

// Stock is the kind of stock of a sheet.
func (r *Result) Stock(s Sheet) layout.Stock { return r.Job.Stock[s.Piece.Stock] }

// By is the way of cutting in one word: "router", "saw" or "lengths"; "" if
// none was given.
func (r *Result) By() string {
	if r.Job.By == nil {
		return ""
	}
	return r.Job.By.word()
}

// BoxName is what a box is called in lists: the plan's name, and its count
// where the order has more than one.
func (r *Result) BoxName(i int) string {
	b := r.Boxes[i]
	o := r.Job.Orders[b.Order]
	if o.Count > 1 {
		return fmt.Sprintf("%s, %d of %d", o.Plan.Name(), b.Copy+1, o.Count)
	}
	return o.Plan.Name()
}
