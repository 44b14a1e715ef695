package bom

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"holt.example/box"
)

// words are for people.
func (u Unit) words() string {
	switch u {
	case SquareMetre:
		return "m²"
	case CubicMetre:
		return "m³"
	case Metre:
		return "m"
	}
	return ""
}

// name is what a line is of, for people: material, thickness and width.
func (n BillLine) name() string {
	if !n.Board {
		return n.What
	}
	s := n.What
	if s == "" {
		s = "board"
	}
	s += ", " + mm(n.Thickness) + " thick"
	if n.Width > 0 {
		s += ", " + mm(n.Width) + " wide"
	}
	return s
}

// quantity is an amount for people; packs are counted.
func (n BillLine) quantity(x float64) string {
	if n.Unit == Piece {
		return num(x)
	}
	step := 0.01
	if x < 0.1 {
		step = 0.0001 // small felts
	}
	return num(nearest(x, step)) + " " + n.Unit.words()
}

func (n BillLine) bought() string {
	s := n.quantity(n.Buy)
	if n.Packs > 0 {
		s = fmt.Sprintf("%d × %s", n.Packs, n.quantity(n.Buy/float64(n.Packs)))
	}
	return s
}

// money is a sum for people, with two decimals and the currency.
func money(x float64, currency string) string {
	return strings.TrimSpace(strconv.FormatFloat(nearest(x, 0.01), 'f', 2, 64) + " " + plain(currency))
}

// per is what one unit or one pack costs, with what that is.
func (n BillLine) per(currency string) string {
	s := money(n.Price, currency)
	switch {
	case n.Packs > 0:
		return s + " per " + n.quantity(n.Buy/float64(n.Packs))
	case n.Unit == Piece:
		return s + " each"
	}
	return s + " per " + n.Unit.words()
}

// anyPrice reports whether prices were given at all.
func (b *Bill) anyPrice() bool { return b.Priced > 0 || len(b.Unused) > 0 }

// billTable is what to buy.
func (l List) billTable(w *strings.Builder) {
	b := l.Bill
	if b == nil || len(b.Lines) == 0 {
		return
	}
	w.WriteString("\n## To buy\n")
	head := "what|size|parts|needed|to buy"
	if b.anyPrice() {
		head += "|price|cost"
	}
	var rows [][]string
	var notes []string
	for _, n := range b.Lines {
		parts := "—"
		if n.Board {
			parts = strconv.Itoa(n.Pieces)
		}
		row := []string{Escape(n.name()), dash(Escape(n.Size)), parts, n.quantity(n.Need), n.bought()}
		if b.anyPrice() && n.Priced {
			row = append(row, Escape(n.per(b.Currency)), Escape(money(n.Cost, b.Currency)))
		} else if b.anyPrice() {
			row = append(row, "unpriced", "—")
		}
		rows = append(rows, row)
		if n.Note != "" {
			notes = append(notes, n.name()+": "+n.Note)
		}
	}
	table(w, head, rows)
	w.WriteString("\n" + l.billWords() + "\n")
	if len(b.Unused) > 0 {
		notes = append(notes, "prices that nothing here is bought at: "+strings.Join(b.Unused, "; "))
	}
	head = "\n"
	for _, n := range notes {
		fmt.Fprintf(w, "%s- %s\n", head, Escape(n))
		head = ""
	}
}

// billWords sum the bill up in sentences.
func (l List) billWords() string {
	b := l.Bill
	s := "Boards are reckoned from the finished parts, one after another"
	if b.Waste > 0 {
		s += ", and " + num(nearest(b.Waste*100, 0.1)) + " % are added for saw cuts, knots and short ends"
	} else {
		s += "; nothing is added for saw cuts, knots and short ends"
	}
	s += "."
	if !b.anyPrice() {
		return s
	}
	if b.Priced == len(b.Lines) {
		return s + " Cost: " + Escape(money(b.Cost, b.Currency)) + "."
	}
	s += fmt.Sprintf(" Cost of the %d of %d lines that are priced: %s.", b.Priced, len(b.Lines), Escape(money(b.Cost, b.Currency)))
	return s
}

// sources are the publications of the terms.
func (l List) sources(w *strings.Builder) {
	if l.Bill == nil || len(l.Bill.Sources) == 0 {
		return
	}
	w.WriteString("\n## Sources\n\n")
	for _, s := range l.Bill.Sources {
		t := Escape(s.Key)
		if s.Text != "" {
			t = strings.TrimPrefix(t+": "+Escape(s.Text), ": ")
		}
		fmt.Fprintf(w, "- %s\n", t)
	}
}

// billColumns are the columns of the bill, in order. They are stable: new ones go
// to the end.
const billColumns = "kind,what,size,thickness_mm,width_mm,pieces,need,buy,unit,packs,price,cost,currency,note\r\n"

// WriteBillCSV writes what to buy as CSV, a line for each kind of board and fitting,
// in the manner of WriteCSV. Amounts are in the unit of their line, and the price is
// of one unit, or of one pack where packs are bought. Price and cost of what is not
// priced are empty. Without Options.Bill there is the header alone.
func WriteBillCSV(w io.Writer, plan *box.Plan, o Options) error {
	l, err := Checked(plan, o)
	if err != nil {
		return err
	}
	var b strings.Builder
	b.WriteString(billColumns)
	some := func(known bool, x float64) string {
		if !known {
			return ""
		}
		return num(x)
	}
	if l.Bill != nil {
		for _, n := range l.Bill.Lines {
			kind, currency := "fitting", ""
			if n.Board {
				kind = "board"
			}
			if n.Priced {
				currency = l.Bill.Currency
			}
			b.WriteString(strings.Join([]string{kind, quoted(n.What), quoted(n.Size), some(n.Thickness > 0, float64(n.Thickness)), some(n.Width > 0, float64(n.Width)),
				strconv.Itoa(n.Pieces), num(n.Need), num(n.Buy), string(n.Unit), some(n.Packs > 0, float64(n.Packs)), some(n.Priced, n.Price), some(n.Priced, n.Cost),
				quoted(currency), quoted(n.Note)}, ",") + "\r\n")
		}
	}
	_, err = io.WriteString(w, b.String())
	return err
}

type jsonBill struct {
	Waste    exact          `json:"waste"`
	Currency string         `json:"currency,omitempty"`
	Lines    []jsonBillLine `json:"lines"`
	Cost     *exact         `json:"cost"` // null where nothing is priced
	Unpriced int            `json:"unpriced"`
	Unused   []string       `json:"unused_prices,omitempty"`
	Sources  []jsonSource   `json:"sources,omitempty"`
	// NoDensity are the materials whose mass is not known.
	NoDensity []jsonNoDensity `json:"no_density,omitempty"`
}

type jsonNoDensity struct {
	Material string   `json:"material"`
	Near     []string `json:"near,omitempty"`
}

type jsonSource struct {
	Key  string `json:"key"`
	Text string `json:"text,omitempty"`
}

type jsonBillLine struct {
	Kind      string `json:"kind"` // "board" or "fitting"
	What      string `json:"what,omitempty"`
	Size      string `json:"size,omitempty"`
	Thickness *exact `json:"thickness,omitempty"`
	Width     *exact `json:"width,omitempty"`
	Pieces    int    `json:"pieces"`
	Need      exact  `json:"need"`
	Buy       exact  `json:"buy"`
	Unit      string `json:"unit"`
	Packs     int    `json:"packs,omitempty"`
	Price     *exact `json:"price"` // null: unpriced
	Cost      *exact `json:"cost"`
	Note      string `json:"note,omitempty"`
}

func (b *Bill) json() *jsonBill {
	if b == nil {
		return nil
	}
	j := &jsonBill{Waste: exact(b.Waste), Currency: b.Currency, Lines: []jsonBillLine{}, Unpriced: len(b.Lines) - b.Priced, Unused: b.Unused}
	if b.Priced > 0 {
		c := exact(b.Cost)
		j.Cost = &c
	}
	for _, n := range b.Lines {
		x := jsonBillLine{Kind: "fitting", What: n.What, Size: n.Size, Thickness: known(float64(n.Thickness)), Width: known(float64(n.Width)),
			Pieces: n.Pieces, Need: exact(n.Need), Buy: exact(n.Buy), Unit: string(n.Unit), Packs: n.Packs, Note: n.Note}
		if n.Board {
			x.Kind = "board"
		}
		if n.Priced {
			p, c := exact(n.Price), exact(n.Cost)
			x.Price, x.Cost = &p, &c
		}
		j.Lines = append(j.Lines, x)
	}
	for _, n := range b.NoDensity {
		j.NoDensity = append(j.NoDensity, jsonNoDensity(n))
	}
	for _, s := range b.Sources {
		j.Sources = append(j.Sources, jsonSource(s))
	}
	return j
}
