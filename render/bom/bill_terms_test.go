package bom_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/render/bom"
)

// TestBillAsksWhatIsMeant: of a material without a density the list says so where the
// mass is told, with what it may mean, and takes none for it.
func TestBillAsksWhatIsMeant(t *testing.T) {
	p := bought(t) // of oak and ply
	near := func(m string) []string {
		return map[string][]string{"oak": {"European oak", "white | oak"}}[m]
	}
	ply := func(m string) (float64, bool) { return 600, m == "ply" }
	none := func(string) (float64, bool) { return 0, false }
	for _, c := range []struct {
		t         bom.Terms
		md, sum   string
		materials int
	}{
		// 400 x 300 x 12 mm of ply at 600 are 0.864 kg.
		{bom.Terms{Density: ply, Near: near}, "0.864 kg for the 1 whose mass is known; no density is known for oak (did you mean European oak, white \\| oak?).", "kg for the 1 whose mass is known; no density is known for oak (did you mean European oak, white | oak?)", 1},
		{bom.Terms{Density: none, Near: near}, "Mass not known; no density is known for oak (did you mean European oak, white \\| oak?); no density is known for ply.", "mass not known; no density is known for oak (", 2},
		{bom.Terms{Density: none}, "Mass not known; no density is known for oak; no density is known for ply.", "for oak; no", 2},
		{bom.Terms{Near: near}, "Mass not known.", "mass not known\n", 0}, // no densities were asked for
	} {
		var md, sum, js bytes.Buffer
		o := bom.Options{Bill: &c.t}
		require.NoError(t, bom.WriteMarkdown(&md, p, o))
		require.NoError(t, bom.WriteSummaryWith(&sum, p, o))
		require.NoError(t, bom.WriteJSON(&js, p, o))
		assert.Contains(t, md.String(), c.md)
		assert.Contains(t, sum.String(), c.sum)
		assert.Len(t, bom.New(p, o).Bill.NoDensity, c.materials)
		assert.Equal(t, c.materials > 0, strings.Contains(js.String(), `"no_density"`))
	}
}

// TestEveryMistakeInOptions: all are told at once, by path.
func TestEveryMistakeInOptions(t *testing.T) {
	o := bom.Options{Step: -1, Bill: &bom.Terms{Waste: 15, Currency: strings.Repeat("x", 21), Prices: []bom.Price{{Of: "oak", Cost: -1, Pack: -1, Per: "yard"}, {Of: " "}, {Of: "OAK"}}}}
	err := o.Check()
	var ps box.Problems
	require.True(t, errors.As(err, &ps), "%v", err)
	var paths []string
	for _, p := range ps {
		paths = append(paths, p.Path)
	}
	assert.Equal(t, []string{"Bill.Currency", "Bill.Prices[0].Cost", "Bill.Prices[0].Pack", "Bill.Prices[0].Per", "Bill.Prices[1].Of", "Bill.Prices[2]", "Bill.Waste", "Step"}, paths)
	assert.Equal(t, err, bom.WriteCSV(&bytes.Buffer{}, bought(t), o))
	assert.NoError(t, bom.Options{}.Check())
}

// TestCostOfPackOrUnit: 1.15 m of boards at 4 a metre come to 4.6; at 9.6 for a length of
// 2.4 one whole length to 9.6, and the price says which it is.
func TestCostOfPackOrUnit(t *testing.T) {
	for _, c := range []struct {
		p     bom.Price
		cost  float64
		words string
	}{
		{bom.Price{Of: "oak", Per: bom.Metre, Cost: 4}, 4.6, "| 4.00 EUR per m | 4.60 EUR |"},
		{bom.Price{Of: "oak", Per: bom.Metre, Cost: 9.6, Pack: 2.4}, 9.6, "| 9.60 EUR per 2.4 m | 9.60 EUR |"},
	} {
		var md, sum bytes.Buffer
		o := bom.Options{Bill: &bom.Terms{Waste: 0.15, Currency: "EUR", Prices: []bom.Price{c.p}}}
		require.NoError(t, bom.WriteMarkdown(&md, bought(t), o))
		require.NoError(t, bom.WriteSummaryWith(&sum, bought(t), o))
		assert.InDelta(t, c.cost, bom.New(bought(t), o).Bill.Cost, 1e-9)
		assert.Contains(t, md.String(), c.words)
		assert.Contains(t, sum.String(), strings.Split(c.words, " |")[0][2:])
	}
}
