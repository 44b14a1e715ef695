package bom_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/box/outline"
	"holt.example/joints"
	"holt.example/render/bom"
)

// densities of the test: nobody's figures.
var densities = map[string]float64{"oak": 700, "ply": 600}

func density(m string) (float64, bool) { d, ok := densities[m]; return d, ok }

// bought is two boards of oak, a piece of ply, and what else the design lists.
func bought(t *testing.T) *box.Plan {
	t.Helper()
	oak := box.Board{Thickness: 20, Measured: 19, Width: 145, Material: "oak"}
	piece := func(name string, b box.Board, w, h float64, y box.MM) box.Free {
		return box.Free{Name: name, Board: b, Outline: outline.Rectangle(0, 0, w, h), At: box.Place{Y: y}}
	}
	p, err := box.Design{Name: "bought", Board: oak, Free: []box.Free{
		piece("a", oak, 100, 200, 0), piece("b", oak, 90, 300, 50), piece("wide", oak, 200, 250, 100),
		piece("ply", box.Board{Thickness: 12, Material: "ply", Grain: box.GrainNone}, 400, 300, 150),
	}, Fittings: []box.Fitting{
		{What: "screw", Count: 8, Size: "4 x 40", Length: 40, Width: 4}, {What: "screw", Count: 3, Size: "4 x 40", Length: 40, Width: 4, Why: "more of them"},
		{What: "screw", Count: 2, Size: "4 x 30", Length: 30, Width: 4},
		{What: "felt", Count: 2, Size: "60 x 10", Area: 600}, {What: "strap", Count: 1, Size: "25 x 1200", Length: 1200, Width: 25},
	}}.Resolve()
	require.NoError(t, err)
	return p
}

// terms price some of it. The price of a size beats that of all screws.
func terms() *bom.Terms {
	return &bom.Terms{Density: density, Waste: 0.15, Currency: "EUR", Prices: []bom.Price{
		{Of: "Oak ", Thickness: 20, Cost: 12.5, Pack: 2.4},
		{Of: "ply", Cost: 30, Per: bom.SquareMetre},
		{Of: "screw", Cost: 0.2}, {Of: "screw", Size: "4 x 40", Cost: 7, Pack: 10},
		{Of: "strap", Cost: 2, Per: bom.Metre},
		{Of: "larch", Cost: 3}, {Of: "felt", Cost: 9, Per: bom.CubicMetre},
	}, Sources: []bom.Source{{Key: "shop", Text: "the shop's list"}}}
}

// TestBillByHand: the boards are 145 wide, so the wide one takes two side by side:
// 0.2 + 0.3 + 2 x 0.25 = 1 m, and 15 % more is 1.15 m: one length of 2.4. The ply is
// 0.4 x 0.3 = 0.12 m2, with 15 % 0.138, at 30 that is 4.14. Eleven screws are two
// packs of ten, 14; two others cost 0.4; the strap is 1.2 m, 2.4. 12.5 + 4.14 + 14 +
// 0.4 + 2.4 = 33.44. Masses: 100 x 200 x 19 mm3 at 700 kg/m3 are 0.266 kg, 0.3591 and
// 0.665 the others, and 400 x 300 x 12 at 600 0.864: 2.1541 together (geometry).
func TestBillByHand(t *testing.T) {
	l := bom.New(bought(t), bom.Options{Bill: terms()})
	require.NotNil(t, l.Bill)
	type row struct {
		what, size   string
		pieces       int
		need, buy    float64
		unit         bom.Unit
		packs        int
		priced       bool
		price, total float64
	}
	want := []row{
		{"oak", "", 3, 1, 2.4, bom.Metre, 1, true, 12.5, 12.5},
		{"ply", "", 1, 0.12, 0.138, bom.SquareMetre, 0, true, 30, 4.14},
		{"screw", "4 x 40", 11, 11, 20, bom.Piece, 2, true, 7, 14},
		{"screw", "4 x 30", 2, 2, 2, bom.Piece, 0, true, 0.2, 0.4},
		{"felt", "60 x 10", 2, 2, 2, bom.Piece, 0, false, 0, 0},
		{"strap", "25 x 1200", 1, 1.2, 1.2, bom.Metre, 0, true, 2, 2.4},
	}
	require.Len(t, l.Bill.Lines, len(want))
	for i, w := range want {
		n := l.Bill.Lines[i]
		assert.Equal(t, w, row{n.What, n.Size, n.Pieces, round(n.Need), round(n.Buy), n.Unit, n.Packs, n.Priced, n.Price, round(n.Cost)}, i)
	}
	assert.InDelta(t, 33.44, l.Bill.Cost, 1e-9)
	assert.Equal(t, 5, l.Bill.Priced)
	assert.Equal(t, []string{"larch"}, l.Bill.Unused)
	assert.Contains(t, l.Bill.Lines[0].Note, "wider than the board")
	assert.Contains(t, l.Bill.Lines[4].Note, "its price is per m3")
	assert.InDelta(t, 2.1541, l.Totals.Mass, 1e-9)
	assert.Equal(t, 4, l.Totals.Known)
}

func round(x float64) float64 { return math.Round(x*1e9) / 1e9 }

// TestBillOutside reads the lists with readers that are not ours, and reckons mass
// and cost again from the parts' volumes and sizes.
func TestBillOutside(t *testing.T) {
	o := bom.Options{Bill: terms()}
	p := bought(t)
	read := func(write func(*bytes.Buffer) error) []map[string]string {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		rows, err := csv.NewReader(&b).ReadAll()
		require.NoError(t, err)
		var out []map[string]string
		for _, r := range rows[1:] {
			m := map[string]string{}
			for i, h := range rows[0] {
				m[h] = r[i]
			}
			out = append(out, m)
		}
		return out
	}
	f := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err, "%q", s)
		return x
	}
	mass, oak := 0.0, 0.0
	for _, r := range read(func(b *bytes.Buffer) error { return bom.WriteCSV(b, p, o) }) {
		m := f(r["volume_mm3"]) * 1e-9 * densities[r["material"]]
		assert.InDelta(t, m, f(r["mass_kg"]), 5e-5) // four decimals
		mass += m * f(r["quantity"])
		if r["material"] == "oak" {
			oak += f(r["quantity"]) * f(r["length_mm"]) * math.Ceil(f(r["width_mm"])/145)
		}
	}
	bill := read(func(b *bytes.Buffer) error { return bom.WriteBillCSV(b, p, o) })
	cost, screws := 0.0, 0.0
	for _, r := range bill {
		switch r["what"] {
		case "oak":
			assert.InDelta(t, oak/1000, f(r["need"]), 5e-5)
			assert.InDelta(t, math.Ceil(oak/1000*1.15/2.4)*12.5, f(r["cost"]), 5e-5)
			assert.Equal(t, []string{"board", "20", "145", "m"}, []string{r["kind"], r["thickness_mm"], r["width_mm"], r["unit"]})
		case "screw":
			screws += f(r["pieces"])
		case "felt":
			assert.Equal(t, []string{"", "", ""}, []string{r["price"], r["cost"], r["currency"]}, "unpriced is not 0")
			continue
		}
		each := f(r["buy"])
		if r["packs"] != "" {
			each = f(r["packs"])
		}
		assert.InDelta(t, each*f(r["price"]), f(r["cost"]), 1e-3)
		cost += f(r["cost"])
	}
	n := 0.0
	for _, r := range read(func(b *bytes.Buffer) error { return bom.WriteFittingsCSV(b, p, o) }) {
		if r["what"] == "screw" {
			n += f(r["count"])
		}
	}
	assert.Equal(t, n, screws)

	var js bytes.Buffer
	require.NoError(t, bom.WriteJSON(&js, p, o))
	var got struct {
		Schema string
		Totals struct{ Mass float64 }
		Bill   struct {
			Currency string
			Waste    float64
			Cost     float64
			Unpriced int
			Lines    []struct {
				What  string
				Price *float64
				Cost  *float64
			}
			Unused  []string `json:"unused_prices"`
			Sources []struct{ Key, Text string }
		}
	}
	require.NoError(t, json.Unmarshal(js.Bytes(), &got))
	assert.Equal(t, "holt.example/bom/1", got.Schema)
	assert.InDelta(t, mass, got.Totals.Mass, 1e-4)
	assert.InDelta(t, cost, got.Bill.Cost, 1e-4)
	assert.Equal(t, 1, got.Bill.Unpriced)
	for _, x := range got.Bill.Lines {
		assert.Equal(t, x.What == "felt", x.Price == nil && x.Cost == nil, x.What)
	}
	assert.Equal(t, []string{"larch"}, got.Bill.Unused)
	assert.Equal(t, "shop", got.Bill.Sources[0].Key)
}

// TestBillGolden is the bill as it stands in the JSON list and as CSV.
func TestBillGolden(t *testing.T) {
	p, err := box.Design{Name: "two", Board: box.Board{Thickness: 20, Width: 100, Material: "oak"}, Free: []box.Free{{Name: "a", Outline: outline.Rectangle(0, 0, 100, 500)}},
		Fittings: []box.Fitting{{What: "felt", Count: 1, Size: "60 x 10", Area: 600}}}.Resolve()
	require.NoError(t, err)
	o := bom.Options{Bill: &bom.Terms{Waste: 0.1, Currency: "kr", Prices: []bom.Price{{Of: "oak", Cost: 40}}, Sources: []bom.Source{{Key: "shop"}}}}
	var js, cs bytes.Buffer
	require.NoError(t, bom.WriteJSON(&js, p, o))
	require.NoError(t, bom.WriteBillCSV(&cs, p, o))
	// 0.5 m and a tenth more at 40 is 22.
	assert.Contains(t, js.String(), `	"bill": {
		"waste": 0.1,
		"currency": "kr",
		"lines": [
			{
				"kind": "board",
				"what": "oak",
				"thickness": 20,
				"width": 100,
				"pieces": 1,
				"need": 0.5,
				"buy": 0.55,
				"unit": "m",
				"price": 40,
				"cost": 22
			},
			{
				"kind": "fitting",
				"what": "felt",
				"size": "60 x 10",
				"pieces": 1,
				"need": 1,
				"buy": 1,
				"unit": "piece",
				"price": null,
				"cost": null
			}
		],
		"cost": 22,
		"unpriced": 1,
		"sources": [
			{
				"key": "shop"
			}
		]
	},
`)
	assert.Equal(t, "kind,what,size,thickness_mm,width_mm,pieces,need,buy,unit,packs,price,cost,currency,note\r\n"+
		"board,\"oak\",\"\",20,100,1,0.5,0.55,m,,40,22,\"kr\",\"\"\r\n"+
		"fitting,\"felt\",\"60 x 10\",,,1,1,1,piece,,,,\"\",\"\"\r\n", cs.String())
}

// TestBillForPeople: the pages say what is unpriced, and without terms nothing of
// a bill; without prices there is no column of them.
func TestBillForPeople(t *testing.T) {
	p := bought(t)
	page := func(o bom.Options) (md, sum string) {
		var b, c bytes.Buffer
		require.NoError(t, bom.WriteMarkdown(&b, p, o))
		require.NoError(t, bom.WriteSummaryWith(&c, p, o))
		return b.String(), c.String()
	}
	md, sum := page(bom.Options{Bill: terms()})
	for _, s := range []string{"## To buy\n", "| oak, 20 thick, 145 wide | — | 3 | 1 m | 1 × 2.4 m | 12.50 EUR per 2.4 m | 12.50 EUR |", "| felt | 60 x 10 | — | 2 | 2 | unpriced | — |",
		"2 × 10 | 7.00 EUR per 10 | 14.00 EUR |", "| 0.20 EUR each |", "| 30.00 EUR per m² |", "| 2.00 EUR per m |", "15 % are added", "Cost of the 5 of 6 lines that are priced: 33.44 EUR.", "prices that nothing here is bought at: larch", "## Sources\n\n- shop: the shop's list\n",
		"2.154 kg", "| 2 | felt | 60 x 10 | 0.0006 |"} {
		assert.Contains(t, md, s)
	}
	assert.Contains(t, sum, "2.154 kg; cost 33.44 EUR, 1 unpriced\n")
	assert.Contains(t, sum, "unpriced\n")
	md, sum = page(bom.Options{})
	for _, s := range []string{"To buy", "Sources", "rice", "EUR"} {
		assert.NotContains(t, md, s)
	}
	assert.NotContains(t, sum, "to buy")
	var b bytes.Buffer
	require.NoError(t, bom.WriteBillCSV(&b, p, bom.Options{}))
	assert.Equal(t, 1, strings.Count(b.String(), "\n"))
	b.Reset()
	require.NoError(t, bom.WriteJSON(&b, p, bom.Options{}))
	assert.NotContains(t, b.String(), `"bill"`)
	md, sum = page(bom.Options{Bill: &bom.Terms{}})
	assert.Contains(t, md, "| what | size | parts | needed | to buy |\n")
	assert.Contains(t, md, "nothing is added for saw cuts")
	assert.NotContains(t, md, "priced")
	assert.NotContains(t, sum, "priced")
	assert.Contains(t, sum, "mass not known")
}

// TestBillOfBoxes: a box's strips are counted at the width of their boards, and the
// board's own density is the first.
func TestBillOfBoxes(t *testing.T) {
	p, err := box.Design{Name: "strips", Board: box.Board{Thickness: 20, Width: 100, Material: "oak", Density: 500}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.NoRoof{}, Corners: box.Corners{Joint: joints.Butt{}}, MadeUp: []box.MadeUp{{Of: box.AllWalls, Width: 80}, {Of: box.Floor}}}.Resolve()
	require.NoError(t, err)
	l := bom.New(p, bom.Options{Bill: &bom.Terms{Density: density}})
	for _, n := range l.Bill.Lines {
		assert.Empty(t, n.Note)
	}
	require.Len(t, l.Bill.Lines, 2)
	assert.Equal(t, []box.MM{80, 100}, []box.MM{l.Bill.Lines[0].Width, l.Bill.Lines[1].Width})
	m := 0.0
	for _, q := range p.Pieces() {
		m += q.Volume * 500e-9
	}
	assert.InDelta(t, m, l.Totals.Mass, 1e-9)
}

// TestPacksByHand: in the least packs, of a thousandth, 10000 screws are 1e7 packs. More
// than 1e9 are not counted, and that line is unpriced and says so: 101 times 10000
// screws are 1.01e9 packs. A size of spaces alone is none, and fits.
func TestPacksByHand(t *testing.T) {
	d := box.Design{Name: "many", Board: box.Board{Thickness: 20}, Free: []box.Free{{Name: "a", Outline: outline.Rectangle(0, 0, 100, 500)}}}
	for range 101 {
		d.Fittings = append(d.Fittings, box.Fitting{What: "screw", Size: "4 x 40", Count: 10000})
	}
	line := func(d box.Design, q bom.Price) bom.BillLine {
		p, err := d.Resolve()
		require.NoError(t, err)
		l, err := bom.Checked(p, bom.Options{Bill: &bom.Terms{Prices: []bom.Price{q}}})
		require.NoError(t, err)
		return l.Bill.Lines[1]
	}
	n := line(d, bom.Price{Of: "screw", Pack: 1e-3})
	assert.Equal(t, []any{false, 0, 1.01e6, 0.}, []any{n.Priced, n.Packs, n.Buy, n.Cost})
	assert.Contains(t, n.Note, "it would take more packs of 0.001")
	d.Fittings = d.Fittings[:1]
	n = line(d, bom.Price{Of: "screw", Size: " ", Pack: 1e-3})
	assert.Equal(t, []any{true, 10_000_000, 1e4}, []any{n.Priced, n.Packs, n.Buy})
	assert.Empty(t, n.Note)
}

func TestBillRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	p := bought(t)
	price := func(q bom.Price) bom.Terms { return bom.Terms{Prices: []bom.Price{q}} }
	for _, c := range []struct {
		path, code string
		terms      bom.Terms
	}{
		{"Bill.Waste", "range", bom.Terms{Waste: -0.1}},
		{"Bill.Waste", "range", bom.Terms{Waste: nan}},
		{"Bill.Waste", "range", bom.Terms{Waste: 15}}, // per cent for a share
		{"Bill.Currency", "long-name", bom.Terms{Currency: strings.Repeat("x", 21)}},
		{"Bill.Prices", "range", bom.Terms{Prices: make([]bom.Price, 10001)}},
		{"Bill.Prices[0].Of", "no-name", price(bom.Price{Of: " ", Cost: 1})},
		{"Bill.Prices[0].Cost", "range", price(bom.Price{Of: "oak", Cost: -1})},
		{"Bill.Prices[0].Cost", "range", price(bom.Price{Of: "oak", Cost: nan})},
		{"Bill.Prices[0].Cost", "range", price(bom.Price{Of: "oak", Cost: inf})},
		{"Bill.Prices[0].Pack", "range", price(bom.Price{Of: "oak", Pack: -2.4})},
		{"Bill.Prices[0].Pack", "range", price(bom.Price{Of: "oak", Pack: 1e-300})}, // so many are no number
		{"Bill.Prices[0].Pack", "range", price(bom.Price{Of: "oak", Pack: nan})},
		{"Bill.Prices[0].Thickness", "range", price(bom.Price{Of: "oak", Thickness: box.MM(nan)})},
		{"Bill.Prices[0].Width", "range", price(bom.Price{Of: "oak", Width: -1})},
		{"Bill.Prices[0].Per", "unknown-value", price(bom.Price{Of: "oak", Per: "yard"})},
		{"Bill.Prices[1]", "twice", bom.Terms{Prices: []bom.Price{{Of: "oak"}, {Of: " OAK"}}}},
		{"Bill.Prices[1]", "twice", bom.Terms{Prices: []bom.Price{{Of: "screw", Size: "4 x 40"}, {Of: "screw", Size: "4 x 40 "}}}},
		{"Bill.Prices[1]", "twice", bom.Terms{Prices: []bom.Price{{Of: "screw"}, {Of: "screw", Size: " "}}}},
		{"Bill.Density", "range", bom.Terms{Density: func(string) (float64, bool) { return -700, true }}},
		{"Bill.Density", "range", bom.Terms{Density: func(string) (float64, bool) { return nan, true }}},
	} {
		for name, write := range map[string]func(*bytes.Buffer, bom.Options) error{
			"csv":  func(b *bytes.Buffer, o bom.Options) error { return bom.WriteCSV(b, p, o) },
			"json": func(b *bytes.Buffer, o bom.Options) error { return bom.WriteJSON(b, p, o) },
			"md":   func(b *bytes.Buffer, o bom.Options) error { return bom.WriteMarkdown(b, p, o) },
			"bill": func(b *bytes.Buffer, o bom.Options) error { return bom.WriteBillCSV(b, p, o) },
			"sum":  func(b *bytes.Buffer, o bom.Options) error { return bom.WriteSummaryWith(b, p, o) },
			"list": func(b *bytes.Buffer, o bom.Options) error { _, err := bom.Checked(p, o); return err },
		} {
			var b bytes.Buffer
			err := write(&b, bom.Options{Bill: &c.terms})
			var pr box.Problem
			require.True(t, errors.As(err, &pr), "%s %s: %v", name, c.path, err)
			assert.Equal(t, []string{c.path, c.code}, []string{pr.Path, pr.Code}, name)
			assert.Zero(t, b.Len(), name)
			if c.code == "range" {
				assert.Less(t, pr.Lo, pr.Hi)
			}
		}
		bom.New(p, bom.Options{Bill: &c.terms}) // and this says nothing
	}
	assert.Nil(t, bom.New(p, bom.Options{Bill: &bom.Terms{Waste: -1}}).Bill)
	assert.Error(t, bom.WriteBillCSV(&bytes.Buffer{}, nil, bom.Options{}))
	assert.Error(t, bom.WriteBillCSV(broken{}, p, bom.Options{}))
}

// TestBillHostile: what the user writes stands in tables and harms none.
func TestBillHostile(t *testing.T) {
	for _, s := range []string{"=1+1", "a|b", "<b>", "a\nb", "`x`", "\u202eabc", "a,\"b"} {
		o := bom.Options{Bill: &bom.Terms{Currency: s, Prices: []bom.Price{{Of: "oak", Cost: 1}, {Of: s, Size: s, Cost: 1}}, Sources: []bom.Source{{Key: s, Text: s}}}}
		var md, cs, sum bytes.Buffer
		p := bought(t)
		require.NoError(t, bom.WriteMarkdown(&md, p, o))
		require.NoError(t, bom.WriteBillCSV(&cs, p, o))
		require.NoError(t, bom.WriteSummaryWith(&sum, p, o))
		rows, err := csv.NewReader(&cs).ReadAll()
		require.NoError(t, err)
		for _, r := range rows[1:] {
			assert.NotRegexp(t, `^[=+@-]`, r[12])
		}
		for _, l := range strings.Split(md.String(), "\n") {
			if strings.HasPrefix(l, "| oak, 20") {
				assert.Equal(t, 8, strings.Count(strings.ReplaceAll(l, `\|`, ""), "|"), l)
			}
		}
		assert.NotContains(t, md.String(), "<b>")
		for _, out := range []string{md.String(), sum.String()} {
			assert.NotContains(t, out, "a\nb")
			assert.NotContains(t, out, "\u202e")
		}
	}
}
