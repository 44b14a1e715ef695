package bom

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"holt.example/box"
)

// Bill is what to buy for a plan, what of it is priced, and what that comes to.
type Bill struct {
	Lines    []BillLine // boards by kind, then fittings
	Waste    float64    // share of the boards that is bought beyond the finished parts
	Currency string
	Cost     float64  // of the lines that are priced
	Priced   int      // lines that are
	Unused   []string // prices that fit nothing here, as "larch" or "screw 4 x 50"
	Sources  []Source
	// NoDensity are the materials of the boards whose mass is not known.
	NoDensity []NoDensity
}

// NoDensity is a material of which the terms know no density.
type NoDensity struct {
	Material string   // "" is not said
	Near     []string // what may be meant
}

// BillLine is one kind of board or fitting.
type BillLine struct {
	Board bool   // a board or sheet, not a fitting
	What  string // material, "" if not said; or what the fitting is
	Size  string // of a fitting, in words
	// Thickness of boards as sold and their width in mm, 0 where it does not matter.
	Thickness, Width box.MM
	Pieces           int     // parts of boards, or fittings
	Need             float64 // in Unit: of boards the finished parts, one after another
	Buy              float64 // in Unit: with the waste, whole packs
	Unit             Unit    // of Need and Buy, and of the price
	Packs            int     // that are bought, 0 where it is not sold in packs
	Priced           bool
	Price            float64 // of one Unit, or of one pack
	Cost             float64 // 0 where it is not priced
	Note             string  // why a price does not serve, and the like; "" is nothing

	length, area, volume float64 // of all, in m, m2 and m3; 0 is not known
}

// bill reckons the bill of a list.
func (l List) bill(t *Terms, widths []box.MM) *Bill {
	b := &Bill{Waste: t.Waste, Currency: t.Currency, Sources: append([]Source(nil), t.Sources...)}
	b.boards(l.Items, widths)
	b.fittings(l.Fittings)
	used := make([]bool, len(t.Prices))
	for i := range b.Lines {
		n := &b.Lines[i]
		k := n.price(t.Prices)
		if k >= 0 {
			used[k] = true
			n.cost(t.Prices[k], t.Waste)
		} else {
			n.cost(Price{}, t.Waste)
		}
		if n.Priced {
			b.Priced++
			b.Cost += n.Cost
		}
	}
	for k, p := range t.Prices {
		if !used[k] {
			b.Unused = append(b.Unused, p.words())
		}
	}
	return b
}

// words name a price.
func (p Price) words() string {
	s := p.Of
	if size := p.size(); size != "" {
		s += " " + size
	}
	if p.Thickness > 0 {
		s += ", " + mm(p.Thickness) + " thick"
	}
	if p.Width > 0 {
		s += ", " + mm(p.Width) + " wide"
	}
	return s
}

// boards sums the items up by what they are cut from; widths are those of their
// boards, 0 where it does not matter.
func (b *Bill) boards(items []Item, widths []box.MM) {
	for i, it := range items {
		width := widths[i]
		k := 0
		for k < len(b.Lines) && !(b.Lines[k].What == it.Material && b.Lines[k].Thickness == it.Nominal && b.Lines[k].Width == width) {
			k++
		}
		if k == len(b.Lines) {
			b.Lines = append(b.Lines, BillLine{Board: true, What: it.Material, Thickness: it.Nominal, Width: width, Unit: SquareMetre})
		}
		n := &b.Lines[k]
		many := float64(it.Quantity)
		n.Pieces += it.Quantity
		long, wide := float64(it.Length)/1000, float64(it.Width)/1000
		if width > 0 {
			across := math.Ceil(float64(it.Width/width) - 1e-6)
			if across > 1 {
				n.Note = "some parts are wider than the board: as many lie side by side as they take"
			}
			n.Unit, wide = Metre, float64(width)/1000
			long = float64(long * across)
			n.length += float64(many * long)
		}
		area := float64(many * float64(long*wide))
		n.area += area
		n.volume += float64(area*float64(it.Nominal)) / 1000
	}
}

// fittings sums the fittings up by what they are and their size.
func (b *Bill) fittings(fs []Fitting) {
	first := len(b.Lines)
	for _, f := range fs {
		k := first
		for k < len(b.Lines) && !(b.Lines[k].What == f.What && b.Lines[k].Size == f.Size) {
			k++
		}
		if k == len(b.Lines) {
			b.Lines = append(b.Lines, BillLine{What: f.What, Size: f.Size, Unit: Piece})
		}
		n := &b.Lines[k]
		n.Pieces += f.Count
		n.length += float64(float64(f.Count)*float64(f.Length)) / 1000
		n.area += float64(float64(f.Count)*f.Area) / 1e6
	}
}

// price finds the price that fits and says most, -1 where there is none.
func (n *BillLine) price(ps []Price) int {
	best, most := -1, -1
	for k, p := range ps {
		said := 0
		fits := fold(p.Of) == fold(n.What)
		for _, x := range []struct{ given, same bool }{
			{p.size() != "", !n.Board && p.size() == strings.TrimSpace(n.Size)},
			{p.Thickness > 0, n.Board && same(p.Thickness, n.Thickness)},
			{p.Width > 0, n.Board && same(p.Width, n.Width)},
		} {
			if x.given {
				said++
				fits = fits && x.same
			}
		}
		if fits && said > most {
			best, most = k, said
		}
	}
	return best
}

func same(a, b box.MM) bool { return math.Abs(float64(a-b)) < 1e-3 }

// amount is how much of it there is in a unit; 0 is not known.
func (n *BillLine) amount(u Unit) float64 {
	switch u {
	case Metre:
		return n.length
	case SquareMetre:
		return n.area
	case CubicMetre:
		return n.volume
	}
	if n.Board {
		return 0 // parts are not bought
	}
	return float64(n.Pieces)
}

// mostPacks is as many as are counted.
const mostPacks = 1e9

// cost works out what is needed, bought and paid. A price whose unit says nothing
// of it does not serve.
func (n *BillLine) cost(p Price, waste float64) {
	priced := p.Of != ""
	if p.Per != "" && p.Per != n.Unit {
		if n.amount(p.Per) > 0 {
			n.Unit = p.Per
		} else {
			priced = false
			n.Note = strings.TrimPrefix(n.Note+fmt.Sprintf("; its price is per %s, and it is counted in %s", p.Per, n.Unit), "; ")
		}
	}
	n.Need = n.amount(n.Unit)
	n.Buy = n.Need
	if n.Board {
		n.Buy = float64(n.Need * (1 + waste))
	}
	many := n.Buy
	if priced && p.Pack > 0 {
		if many = math.Ceil(n.Buy/p.Pack - 1e-9); many <= mostPacks {
			n.Packs = int(many)
			n.Buy = float64(many * p.Pack)
		} else {
			priced = false
			n.Note = strings.TrimPrefix(n.Note+"; it would take more packs of "+num(p.Pack)+" than anybody buys", "; ")
		}
	}
	if priced {
		n.Priced, n.Price, n.Cost = true, p.Cost, float64(many*p.Cost)
	}
}

// reckon fills in masses from the terms' densities, and makes the bill. An error is
// a density that is none.
func (l *List) reckon(t *Terms, s source) (err error) {
	if t == nil || len(t.check()) > 0 {
		return nil
	}
	boards := make(map[box.Part]box.MM, len(s.pieces))
	for _, p := range s.pieces {
		boards[p.Part] = p.Board.Width
		if w := s.boards[p.Part]; w > 0 {
			boards[p.Part] = w
		}
	}
	widths := make([]box.MM, len(l.Items))
	var unknown []NoDensity
	for i := range l.Items {
		it := &l.Items[i]
		widths[i] = boards[it.Parts[0]]
		if it.Mass > 0 {
			continue
		}
		d, e := t.density(it.Material)
		if e != nil {
			err = e
		}
		it.Mass = float64(it.Volume*d) * 1e-9
		if d == 0 && t.Density != nil && !slices.ContainsFunc(unknown, func(n NoDensity) bool { return n.Material == it.Material }) {
			n := NoDensity{Material: it.Material}
			if t.Near != nil && it.Material != "" {
				n.Near = slices.Clone(t.Near(it.Material))
			}
			unknown = append(unknown, n)
		}
	}
	l.Totals = l.total()
	l.Bill = l.bill(t, widths)
	l.Bill.NoDensity = unknown
	return err
}
