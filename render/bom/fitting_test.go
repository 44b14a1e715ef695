package bom_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"holt.example/box"
	"holt.example/render/bom"
)

// fitted has two fittings and worked arrises: a felt 180 + 60 by 180 + 60, whose
// hostile name must do no harm, and a strap of pi x 100 = 314.16, up to 315.
func fitted(t *testing.T) *box.Plan {
	t.Helper()
	p, err := box.Design{Name: "fitted", Board: box.Board{Thickness: 15}, Size: box.Cavity{Width: 150, Depth: 150, Height: 200},
		Floor: box.FloorBetween{}, Roof: box.Flat{},
		Outer:    []box.Outer{box.Felt{What: `=felt|<b>"x"`, Turn: 30}, box.Strap{Trunk: 100, Width: 25, Heights: []box.MM{60, 120}}},
		Features: []box.Feature{box.Edging{On: []box.Part{box.Front}, Round: 3}},
	}.Resolve()
	require.NoError(t, err)
	return p
}

func TestFittingsAreListed(t *testing.T) {
	p := fitted(t)
	var md, js, cs, fs bytes.Buffer
	require.NoError(t, bom.WriteMarkdown(&md, p, bom.Options{}))
	require.NoError(t, bom.WriteJSON(&js, p, bom.Options{}))
	require.NoError(t, bom.WriteCSV(&cs, p, bom.Options{}))
	require.NoError(t, bom.WriteFittingsCSV(&fs, p, bom.Options{}))

	assert.Contains(t, md.String(), "## Fittings\n")
	assert.Contains(t, md.String(), `| 1 | =felt\|&lt;b&gt;"x" | 240.0 x 240.0 | 0.0576 | roof |`)
	assert.Contains(t, md.String(), "| 2 | strap | 25 x 315 | — | back |")
	assert.Contains(t, md.String(), "### Arrises\n")
	assert.Contains(t, md.String(), ", front: ")

	var got struct {
		Fittings []struct {
			What                string
			Count               int
			Length, Width, Area float64
			Cut                 [][][3]float64
			Where               []string
		}
		Items []struct {
			Parts []struct{ Name string }
			Edges []struct{ Arrises []string }
		}
	}
	require.NoError(t, json.Unmarshal(js.Bytes(), &got))
	require.Len(t, got.Fittings, 2)
	assert.Equal(t, `=felt|<b>"x"`, got.Fittings[0].What)
	assert.InDelta(t, 57600, got.Fittings[0].Area, 1e-6)
	assert.Len(t, got.Fittings[0].Cut[0], 4)
	assert.Equal(t, []string{"back"}, got.Fittings[1].Where)
	assert.InDelta(t, 315, got.Fittings[1].Length, 1e-9)
	worked := 0
	for _, it := range got.Items {
		for _, e := range it.Edges {
			worked += len(e.Arrises)
			if len(e.Arrises) > 0 {
				assert.Equal(t, "front", it.Parts[0].Name)
			}
		}
	}
	assert.Positive(t, worked)

	rows, err := csv.NewReader(&fs).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 3)
	assert.Equal(t, []string{"count", "what", "size", "length_mm", "width_mm", "area_mm2", "where", "why", "proud_mm"}, rows[0])
	assert.Equal(t, `'=felt|<b>"x"`, rows[1][1]) // no formula
	assert.Equal(t, []string{"2", "strap", "25 x 315", "315", "25", "", "back"}, rows[2][:7])

	rows, err = csv.NewReader(&cs).ReadAll()
	require.NoError(t, err)
	last := len(rows[0]) - 1
	assert.Equal(t, "arrises", rows[0][last])
	for _, r := range rows[1:] {
		assert.Equal(t, r[2] == "front", strings.Contains(r[last], "round the"), r[2])
	}
	// The list is a value: changing it leaves the plan alone.
	l := bom.New(p, bom.Options{})
	l.Fittings[0].Cut[0][0].X = 99
	assert.NotEqual(t, 99.0, p.Fittings()[0].Cut[0][0].X)
	assert.NoError(t, bom.WriteFittingsCSV(&fs, p, bom.Options{}))
	assert.Error(t, bom.WriteFittingsCSV(&fs, nil, bom.Options{}))
	assert.Error(t, bom.WriteFittingsCSV(broken{}, p, bom.Options{}))
}

// broken takes nothing.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, assert.AnError }
