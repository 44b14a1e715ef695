package timber

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"holt.example/joints"
	"holt.example/species/cite"
)

// facts reads a shared table as rows by column name. The table belongs to the
// workshop, not to the module: a copy of the module alone has none.
func facts(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "shared", "facts", name))
	if err != nil {
		if _, shared := os.Stat(filepath.Join("..", "..", "..", "shared")); shared == nil && os.Getenv("HOLT_STRICT") != "" {
			t.Fatal(err) // the workshop is here, the table is not
		}
		t.Skipf("the shared table %s is not here, so the Go data cannot be compared with it: %v", name, err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range all[1:] {
		m := map[string]string{}
		for i, c := range all[0] {
			m[c] = r[i]
		}
		out = append(out, m)
	}
	return out
}

// norm brings a number cell to its shortest form; other text stays.
func norm(s string) string {
	if x, err := strconv.ParseFloat(s, 64); err == nil {
		return short(x)
	}
	return s
}

func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// mm writes a size, 0 as nothing.
func mm(x joints.MM) string {
	if x == 0 {
		return ""
	}
	return short(float64(x))
}

// ours is the one change of wording that the data makes to locators and notes.
func ours(s string) string { return strings.ReplaceAll(s, "stored copy", "copy read") }

var properties = map[string]Property{
	"specific_gravity_basic": GravityBasic, "specific_gravity_12": Gravity12, "density_12": Density12, "density_basic": DensityBasic,
	"shrinkage_radial": ShrinkRadial, "shrinkage_tangential": ShrinkTangential, "shrinkage_volumetric": ShrinkVolume, "shrinkage_longitudinal": ShrinkLength,
	"CR": CoefRadial, "CT": CoefTangential, "movement_radial": MoveRadial, "movement_tangential": MoveTangential,
	"durability_en350": DurabilityEN350, "decay_resistance_us": DecayUS, "emc": Equilibrium,
}

func basisOf(r map[string]string) cite.Basis {
	switch {
	case r["provenance"] == "memory":
		return cite.Memory
	case r["value"] == "" && r["computed"] != "":
		return cite.Computed
	}
	return cite.Read
}

// TestWoodsAgainstFacts compares every figure of every wood, in order.
func TestWoodsAgainstFacts(t *testing.T) {
	next := map[string]int{}
	total := 0
	for _, r := range facts(t, "timber.csv") {
		if r["record"] != "species" {
			continue
		}
		total++
		w, err := Get(r["species_id"])
		if err != nil {
			t.Error(err)
			continue
		}
		i := next[w.Key]
		next[w.Key]++
		if i >= len(w.Figures) {
			t.Errorf("%s: only %d figures", w.Key, i)
			continue
		}
		f := w.Figures[i]
		value, high := short(f.Value), ""
		if f.Class != "" {
			value = f.Class
		}
		if f.High != 0 {
			high = short(f.High)
		}
		unit := f.Unit
		if f.Class != "" {
			unit = "class"
		}
		wantValue := r["value"]
		if wantValue == "" {
			wantValue = r["computed"]
		}
		if f.Class == "" {
			wantValue = norm(wantValue)
		}
		got := []string{w.Name, strings.Join(w.Scientific, "; "), string(f.Of), f.When, value, high, unit, f.Source, f.Locator, f.Basis.String(), f.Note}
		want := []string{r["common_name"], r["scientific_name"], string(properties[r["property"]]), r["basis"], wantValue, norm(r["value_high"]), r["unit"], r["source_key"], ours(r["locator"]), basisOf(r).String(), ours(r["note"])}
		if !slices.Equal(got, want) {
			t.Errorf("%s, figure %d: Go has\n%q, the table\n%q", w.Key, i, got, want)
		}
	}
	have := 0
	for _, w := range Woods() {
		have += len(w.Figures)
	}
	if have != total {
		t.Errorf("%d figures, the table has %d", have, total)
	}
}

func TestPlacesAgainstFacts(t *testing.T) {
	i := 0
	for _, r := range facts(t, "timber.csv") {
		if r["record"] != "emc_city" {
			continue
		}
		if i >= len(places) {
			t.Fatalf("only %d places", i)
		}
		p := places[i]
		i++
		high := norm(r["value_high"])
		if high == "" {
			high = norm(r["value"])
		}
		got := []string{p.Name, p.Months, short(p.Least), short(p.Most), p.Source, p.Basis.String()}
		want := []string{r["species_id"], r["basis"], norm(r["value"]), high, r["source_key"], basisOf(r).String()}
		if !slices.Equal(got, want) {
			t.Errorf("place %d: Go has %q, the table %q", i, got, want)
		}
	}
	if i != len(places) {
		t.Errorf("%d places, the table has %d", len(places), i)
	}
}

func tolerance(x Tolerance) string {
	switch {
	case !x.Known:
		return ""
	case x.Per != 0:
		return short(x.Fixed) + "+" + short(x.Per) + "*t"
	}
	return short(x.Fixed)
}

var perT = regexp.MustCompile(`^([\d.]+)\+([\d.]+)\*t$`)

// TestStockAgainstFacts compares every cell of stock.csv.
func TestStockAgainstFacts(t *testing.T) {
	rows := facts(t, "stock.csv")
	if len(rows) != len(stock) {
		t.Fatalf("%d rows, %d entries", len(rows), len(stock))
	}
	tol := func(s string) string {
		if m := perT.FindStringSubmatch(s); m != nil {
			return norm(m[1]) + "+" + norm(m[2]) + "*t"
		}
		return norm(s)
	}
	for i, r := range rows {
		s := stock[i]
		got := []string{s.Key, string(s.Kind), s.Name, s.Nominal, mm(s.Thickness), mm(s.Width), mm(s.Length), s.ThicknessIn, s.WidthIn, mm(s.Least), mm(s.Most),
			tolerance(s.Plus), tolerance(s.Minus), s.Value, s.Unit, s.When, s.Source, s.Locator, s.Basis.String(), s.Note}
		want := []string{r["id"], r["category"], r["name"], r["nominal"], norm(r["thickness_mm"]), norm(r["width_mm"]), norm(r["length_mm"]), r["thickness_in"], r["width_in"], norm(r["min_mm"]), norm(r["max_mm"]),
			tol(r["plus_mm"]), tol(r["minus_mm"]), r["value"], r["unit"], r["basis"], r["source_key"], ours(r["locator"]), map[string]string{"read": "read", "memory": "from memory"}[r["provenance"]], ours(r["note"])}
		if !slices.Equal(got, want) {
			t.Errorf("row %d: Go has\n%q, the table\n%q", i+1, got, want)
		}
	}
}

var digits = regexp.MustCompile(`\d+`)

// TestPracticesAgainstFacts compares every cell of joinery.csv. The fields of
// use of glues are said in our own words: there, the figures carry over. The
// column in mm of the table is recomputed.
func TestPracticesAgainstFacts(t *testing.T) {
	rows := facts(t, "joinery.csv")
	if len(rows) != len(practices) {
		t.Fatalf("%d rows, %d entries", len(rows), len(practices))
	}
	for i, r := range rows {
		p := practices[i]
		value, want := "", r["value"]
		switch {
		case p.Text != "":
			value, want = strings.Join(digits.FindAllString(p.Text, -1), " "), strings.Join(digits.FindAllString(want, -1), " ")
		case p.Value != 0:
			value = short(p.Value)
			if a, b, ok := strings.Cut(want, "/"); ok {
				x, _ := strconv.ParseFloat(a, 64)
				y, _ := strconv.ParseFloat(b, 64)
				want = short(x / y)
			} else {
				want = norm(want)
			}
		}
		high := ""
		if p.High != 0 {
			high = short(p.High)
		}
		got := []string{p.Key, p.Topic, p.Of, value, high, p.Unit, p.Formula, p.Applies, p.Source, p.Locator, p.Basis.String(), p.Note}
		wants := []string{r["id"], r["topic"], r["quantity"], want, norm(r["value_high"]), r["unit"], r["expression"], r["applies_to"], r["source_key"], ours(r["locator"]), map[string]string{"read": "read", "memory": "from memory"}[r["provenance"]], ours(r["note"])}
		if !slices.Equal(got, wants) {
			t.Errorf("row %d: Go has\n%q, the table\n%q", i+1, got, wants)
		}
		if p.Unit == "in" && r["computed"] != "" {
			c, _ := strconv.ParseFloat(r["computed"], 64)
			// Half a unit of the last digit printed, 0.1 or 0.01 mm.
			half := 0.5 * math.Pow(10, -float64(len(r["computed"])-strings.Index(r["computed"], ".")-1))
			if math.Abs(p.Value*25.4-c) > half+1e-9 {
				t.Errorf("%s: %v in is %v mm, the table has %v", p.Key, p.Value, p.Value*25.4, c)
			}
		}
	}
}

// TestSourcesAgainstFacts compares the publications; the table has more, of
// angles and files, that this package does not use.
func TestSourcesAgainstFacts(t *testing.T) {
	rows := map[string]map[string]string{}
	for _, r := range facts(t, "sources-timber.csv") {
		rows[r["source_key"]] = r
	}
	how := map[cite.Basis]string{cite.Read: "read in stored copy", cite.Memory: "memory"}
	for _, s := range sources {
		r := rows[s.Key]
		year := ""
		if s.Year != 0 {
			year = strconv.Itoa(s.Year)
		}
		got := []string{s.Title, s.Publisher, year, s.URL, s.Kind, how[s.Basis], s.Note}
		want := []string{r["title"], r["publisher"], r["year"], r["url"], r["kind"], r["how"], ours(r["note"])}
		if !slices.Equal(got, want) {
			t.Errorf("%s: Go has\n%q, the table\n%q", s.Key, got, want)
		}
	}
}

// TestEMCTableAgainstFacts: the 152 printed cells of Table 4-2 to half a unit
// of their last digit, 0.05, and a hair for its rounding.
func TestEMCTableAgainstFacts(t *testing.T) {
	re := regexp.MustCompile(`^(\d+) F \((-?[\d.]+) C\), (\d+)% RH$`)
	n := 0
	for _, r := range facts(t, "timber.csv") {
		if r["record"] != "emc_table" {
			continue
		}
		m := re.FindStringSubmatch(r["basis"])
		if m == nil {
			t.Fatalf("cannot read %q", r["basis"])
		}
		f, _ := strconv.ParseFloat(m[1], 64)
		h, _ := strconv.ParseFloat(m[3], 64)
		want, _ := strconv.ParseFloat(r["value"], 64)
		got, err := EMC((f-32)/1.8, h)
		n++
		if err != nil || math.Abs(got-want) > 0.06 {
			t.Errorf("%s: %v, printed %v, %v", r["basis"], got, want, err)
		}
	}
	if n != 152 {
		t.Errorf("%d cells", n)
	}
}
