package cutlist

import (
	"holt.example/box/batch"
	"holt.example/render/bom"
)

// Stock is the list of what to buy and what to take from the shed. Lengths are
// in mm, costs in the currency of the prices.
type Stock struct {
	Schema  string      `json:"schema"`
	Name    string      `json:"name"`
	Lines   []StockLine `json:"stock"`
	Priced  bool        `json:"priced"` // else cost and bound count stock: m2, or m of length
	Cost    Exact       `json:"cost"`
	Bound   Exact       `json:"bound"` // no layout costs less: proved
	Optimal bool        `json:"optimal"`
	Verdict string      `json:"verdict"`
	Yield   Exact       `json:"yield"` // from 0 to 1
	Wanted  int         `json:"parts_wanted"`
	Placed  int         `json:"parts_placed"`
	Left    []Left      `json:"offcuts"`
	Beside  []Fitting   `json:"fittings"` // beside the boards, for all boxes
	Missing []string    `json:"problems"`
}

// StockLine is one kind of stock.
type StockLine struct {
	Name      string `json:"name"`
	Material  string `json:"material"`
	Length    Exact  `json:"length_mm"`
	Width     Exact  `json:"width_mm"`
	Thickness Exact  `json:"thickness_mm"`
	Pieces    int    `json:"pieces"`
	Shed      bool   `json:"from_shed"` // an offcut that is there already
	Price     Exact  `json:"price"`     // of one
	Cost      Exact  `json:"cost"`
}

// Fitting is what is bought or cut beside the boards: screws, felt, a strap.
type Fitting struct {
	What  string `json:"what"`
	Size  string `json:"size"`
	Count int    `json:"count"` // over all boxes
}

// Left is an offcut worth keeping.
type Left struct {
	Sheet  int    `json:"sheet"`
	Of     string `json:"of"`
	Length Exact  `json:"length_mm"`
	Width  Exact  `json:"width_mm"`
}

// NewStock is the stock list of a batch.
func NewStock(r *batch.Result) Stock {
	s := Stock{Schema: StockSchema, Lines: []StockLine{}, Left: []Left{}, Beside: []Fitting{}, Missing: []string{}}
	if r == nil {
		return s
	}
	q := r.Report
	s.Name, s.Priced, s.Cost, s.Bound, s.Optimal, s.Verdict = r.Job.Name, q.Priced, Exact(q.Cost), Exact(q.Bound), q.Optimal, r.Verdict()
	s.Yield, s.Wanted, s.Placed = Exact(q.Yield), q.Wanted, q.Placed
	for _, b := range q.Buy {
		st := r.Job.Stock[b.Stock]
		line := StockLine{Name: st.Name, Material: st.Material, Length: Exact(st.Length), Width: Exact(st.Width), Thickness: Exact(st.Thickness),
			Pieces: b.Pieces, Shed: st.Offcut, Cost: Exact(b.Cost)}
		if !st.Offcut {
			line.Price = Exact(st.Price)
		}
		s.Lines = append(s.Lines, line)
	}
	for _, sh := range r.Sheets {
		for _, o := range sh.Piece.Offcuts {
			s.Left = append(s.Left, Left{sh.Number, r.Stock(sh).Name, Exact(o.Width()), Exact(o.Height())})
		}
	}
	s.Beside = append(s.Beside, beside(r)...)
	for _, p := range r.Problems {
		s.Missing = append(s.Missing, p.Error())
	}
	return s
}

// beside adds up the fittings of all boxes, in the order of the orders.
func beside(r *batch.Result) []Fitting {
	var out []Fitting
	at := map[[2]string]int{}
	for _, o := range r.Job.Orders {
		if o.Plan == nil {
			continue
		}
		for _, f := range bom.New(o.Plan, bom.Options{}).Fittings {
			key := [2]string{f.What, f.Size}
			k, ok := at[key]
			if !ok {
				k = len(out)
				at[key] = k
				out = append(out, Fitting{What: f.What, Size: f.Size})
			}
			out[k].Count += f.Count * max(o.Count, 1)
		}
	}
	return out
}
