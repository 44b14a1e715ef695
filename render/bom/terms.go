package bom

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"holt.example/box"
)

// Terms are what a bill of materials is reckoned with. All of it is the user's: no
// price, no share of waste and no currency is ever made up here. The zero value
// makes a bill of amounts alone.
type Terms struct {
	// Density gives the density of a material in kg/m3, for boards that state none;
	// known is false where it has none. nil knows nothing. DensityOf of
	// holt.example/species/timber is such a function.
	Density func(material string) (density float64, known bool)
	// Near gives the names that a material of which no density is known may mean; the
	// list asks for one of them beside the mass that is missing. nil asks nothing.
	// NamesNear of holt.example/species/timber is such a function.
	Near func(material string) []string
	// Waste is what is bought beyond the finished parts, for saw cuts, knots and short
	// ends, as a share of them: 0.15 is 15 %. 0 to 2; it is of boards only.
	Waste float64
	// Prices say what things cost. What none of them fits is listed as unpriced.
	Prices []Price
	// Currency stands beside prices as it is: "EUR", "kr" ... "" is not said.
	Currency string
	// Sources are the publications behind densities and fixings, listed as given.
	Sources []Source
}

// Source is a publication: a key, and what it is in one line.
type Source struct{ Key, Text string }

// Unit is what is counted.
type Unit string

// The units.
const (
	Piece       Unit = "piece"
	Metre       Unit = "m"
	SquareMetre Unit = "m2"
	CubicMetre  Unit = "m3"
)

// Price is what something costs. The one that says most fits first: a price for
// screws of a size beats one for any screws.
type Price struct {
	// Of is the material of boards, or what a fitting is called in the list:
	// "European larch", "screw, stainless steel". Capitals do not matter. Required.
	Of string
	// Size is that of a fitting: "3.5 x 40"; "" is any.
	Size string
	// Thickness, as sold, and Width of boards in mm; 0 is any.
	Thickness, Width box.MM
	// Cost is that of one whole Pack where there is one, and else of one Per: for a board
	// of 2.4 m at 9.60 say Cost 9.60 and Pack 2.4; for 4.00 a metre say Cost 4 and no
	// Pack. 0 to 1e9.
	Cost float64
	// Per is the unit; "" is that of the list: pieces of fittings, metres of boards
	// that have a width, square metres of others.
	Per Unit
	// Pack is what is sold together, in Per: 200 screws, a length of 2.4 m. Whole
	// packs are bought. 0.001 to 1e6; 0 is any amount.
	Pack float64
}

// mostPrices is how many prices a list may have.
const mostPrices = 10000

// check gathers what cannot be meant.
func (t *Terms) check() box.Problems {
	if t == nil {
		return nil
	}
	var ps box.Problems
	bad := func(path, code, got, why string) {
		ps = append(ps, box.Problem{Path: "Bill." + path, Code: code, Got: got, Why: why})
	}
	within := func(path string, x, lo, hi float64, unit, why string) bool {
		if x >= lo && x <= hi {
			return true
		}
		ps = append(ps, box.Problem{Path: "Bill." + path, Code: "range", Got: num(x), Lo: lo, Hi: hi, Unit: unit, Why: why})
		return false
	}
	within("Waste", t.Waste, 0, 2, "", "share of boards that is bought beyond the finished parts: 0.15 is 15 %")
	if utf8.RuneCountInString(t.Currency) > 20 {
		bad("Currency", "long-name", fmt.Sprintf("%.40q", t.Currency), "a currency has a short name")
	}
	if !within("Prices", float64(len(t.Prices)), 0, mostPrices, "prices", "prices in a list") {
		return ps
	}
	seen := map[string]int{}
	for i, p := range t.Prices {
		path := fmt.Sprintf("Prices[%d]", i)
		if strings.TrimSpace(p.Of) == "" {
			bad(path+".Of", "no-name", "", "say what the price is of")
		}
		switch p.Per {
		case "", Piece, Metre, SquareMetre, CubicMetre:
		default:
			bad(path+".Per", "unknown-value", fmt.Sprintf("%.40q", string(p.Per)), "a price is per piece, m, m2 or m3")
		}
		if p.Pack != 0 {
			within(path+".Pack", p.Pack, 1e-3, 1e6, string(p.Per), "what is sold together; 0 is any amount")
		}
		for _, r := range []struct {
			field  string
			x, hi  float64
			unit   string
			reason string
		}{
			{".Cost", p.Cost, 1e9, t.Currency, "a price is no less than 0"},
			{".Thickness", float64(p.Thickness), 1000, "mm", "thickness of boards as sold; 0 is any"},
			{".Width", float64(p.Width), 10000, "mm", "width of boards; 0 is any"},
		} {
			within(path+r.field, r.x, 0, r.hi, r.unit, r.reason)
		}
		key := strings.Join([]string{fold(p.Of), p.size(), mm(p.Thickness), mm(p.Width)}, "\x00")
		if k, twice := seen[key]; twice {
			bad(path, "twice", fmt.Sprintf("%.80q", p.Of), fmt.Sprintf("Prices[%d] is of the same", k))
			continue
		}
		seen[key] = i
	}
	return ps
}

// density is that of a material; 0 is not known. An impossible one is an error.
func (t *Terms) density(material string) (float64, error) {
	if t == nil || t.Density == nil {
		return 0, nil
	}
	d, known := t.Density(material)
	if !known {
		return 0, nil
	}
	if !(d > 0 && d <= 25000) {
		return 0, box.Problem{Path: "Bill.Density", Code: "range", Got: num(d), Lo: 1, Hi: 25000, Unit: "kg/m3", Why: fmt.Sprintf("no material is so dense, and %.80q is said to be", material)}
	}
	return d, nil
}

// size is the size as it is compared: spaces around it say nothing.
func (p Price) size() string { return strings.TrimSpace(p.Size) }

func fold(s string) string { return strings.ToLower(strings.TrimSpace(s)) }
