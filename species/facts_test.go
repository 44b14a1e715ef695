package species

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"testing"

	"holt.example/box"
	"holt.example/species/cite"
)

// facts reads a shared table as rows by column name. The table belongs to the
// workshop, not to the module: a copy of the module alone has none.
func facts(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "shared", "facts", name))
	if err != nil {
		if _, shared := os.Stat(filepath.Join("..", "..", "shared")); shared == nil && os.Getenv("HOLT_STRICT") != "" {
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

func cell(x box.MM) string {
	if x == 0 {
		return ""
	}
	return num(float64(x))
}

func ends(s Span) (lo, hi string) {
	if s.HasLo {
		lo = num(s.Lo)
	}
	if s.HasHi {
		hi = num(s.Hi)
	}
	return
}

var numbers = regexp.MustCompile(`\d+(?:\.\d+)?`)

// figuresIn are the distinct numbers in a text, sorted.
func figuresIn(s string) []string {
	out := numbers.FindAllString(s, -1)
	sort.Strings(out)
	return slices.Compact(out)
}

// norm brings a number cell to the form that num writes ("150.0", "3").
func norm(t *testing.T, s string) string {
	t.Helper()
	if s == "" {
		return ""
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatalf("not a number: %q", s)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// TestPresetsAgainstFacts compares every cell of presets.csv with the Go
// data. Sentences are ours, so of the two columns of prose every figure must
// carry over, what is marked as memory there must be here, and nothing else.
func TestPresetsAgainstFacts(t *testing.T) {
	rows := facts(t, "presets.csv")
	if len(rows) != len(All()) {
		t.Errorf("%d rows, %d presets", len(rows), len(All()))
	}
	cells := 0
	for _, r := range rows {
		p, err := Get(r["key"])
		if err != nil {
			t.Error(err)
			continue
		}
		check := func(col, got string) {
			cells++
			want := r[col]
			switch col {
			case "key", "common_name", "scientific_name", "group", "region", "form", "entrance_shape", "entrance_ref", "clean_months", "grip", "source_keys", "spread":
			default:
				want = norm(t, want)
			}
			if got != want {
				t.Errorf("%s, %s: Go has %q, the table %q", p.Key, col, got, want)
			}
		}
		check("key", p.Key)
		check("common_name", p.Common)
		check("scientific_name", strings.Join(p.Scientific, "; "))
		check("group", string(p.Group))
		check("region", string(p.Region))
		check("form", string(p.Form))
		check("floor_w_mm", cell(p.Inside.Width))
		check("floor_d_mm", cell(p.Inside.Depth))
		check("cavity_h_mm", cell(p.Inside.Height))
		check("entrance_shape", string(p.Entry.Shape))
		check("entrance_w_mm", cell(p.Entry.Width))
		check("entrance_h_mm", cell(p.Entry.Height))
		above, datum := num(float64(p.Entry.Above)), p.Entry.Datum
		if datum == NoDatum {
			above, datum = "", Unspecified
			if p.Entry.Above != 0 {
				t.Errorf("%s: a height without a datum", p.Key)
			}
		}
		check("entrance_ref", string(datum))
		check("entrance_above_floor_mm", above)
		lo, hi := ends(p.Hole)
		check("hole_min_mm", lo)
		check("hole_max_mm", hi)
		check("wall_min_mm", cell(p.WallLeast))
		lo, hi = ends(p.Mount)
		check("mounting_min_m", lo)
		check("mounting_max_m", hi)
		var months []string
		for _, m := range p.CleanMonths {
			months = append(months, strconv.Itoa(m))
		}
		check("clean_months", strings.Join(months, ";"))
		check("grip", string(p.Grip))
		check("source_keys", strings.Join(p.Sources, ";"))
		var spread []string
		for _, s := range p.InPrint {
			span := num(float64(s.Lo))
			if s.Hi != s.Lo {
				span += "-" + num(float64(s.Hi))
			}
			spread = append(spread, string(s.Of)+" "+span+" (n="+strconv.Itoa(s.Sources)+")")
		}
		check("spread", strings.Join(spread, "; "))

		var said []string
		memory := false
		for _, c := range p.Cautions {
			said = append(said, c.Text)
			memory = memory || c.Basis == cite.Memory
		}
		cells += 2
		if got, want := figuresIn(strings.Join(said, " ")), figuresIn(r["notes_short"]); !slices.Equal(got, want) {
			t.Errorf("%s: figures in the cautions %q, in the table %q", p.Key, got, want)
		}
		if (r["notes_short"] == "") != (len(said) == 0) {
			t.Errorf("%s: %d cautions for %q", p.Key, len(said), r["notes_short"])
		}
		if want := strings.Contains(r["notes_short"], "memory"); memory != want {
			t.Errorf("%s: a caution from memory: %v, the table says %v", p.Key, memory, want)
		}
		if got, want := figuresIn(strings.Join(p.Chosen, " ")), figuresIn(r["rule"]); !slices.Equal(got, want) {
			t.Errorf("%s: figures in how it was chosen %q, in the table %q", p.Key, got, want)
		}
		if len(p.Chosen) == 0 {
			t.Errorf("%s: nothing says how it was chosen", p.Key)
		}
	}
	if want := len(rows) * 25; cells != want { // 25 columns
		t.Errorf("%d cells compared, %d expected", cells, want)
	}
}

// TestSourcesAgainstFacts compares the list of publications.
func TestSourcesAgainstFacts(t *testing.T) {
	rows := facts(t, "sources.csv")
	if len(rows) != len(Sources()) {
		t.Errorf("%d rows, %d sources", len(rows), len(Sources()))
	}
	how := map[cite.Basis]string{cite.Read: "read in stored copy", cite.Memory: "memory"}
	for _, r := range rows {
		s, err := SourceOf(r["source_key"])
		if err != nil {
			t.Error(err)
			continue
		}
		year := ""
		if s.Year != 0 {
			year = strconv.Itoa(s.Year)
		}
		got := []string{s.Title, s.Publisher, year, s.URL, s.Kind, how[s.Basis]}
		want := []string{r["title"], r["publisher"], r["year"], r["url"], r["kind"], r["how"]}
		if !slices.Equal(got, want) {
			t.Errorf("%s: Go has %q, the table %q", s.Key, got, want)
		}
	}
}

// TestPrintedAgainstFacts compares every figure of species.csv; rows of prose
// are no figures and are left out there and here.
func TestPrintedAgainstFacts(t *testing.T) {
	i := 0
	for _, r := range facts(t, "species.csv") {
		if r["unit"] == "text" {
			continue
		}
		if i >= len(printed) {
			t.Fatalf("only %d figures", len(printed))
		}
		f := printed[i]
		i++
		basis := map[cite.Basis]string{cite.Read: "read", cite.Memory: "memory"}[f.Basis]
		lo, hi := "", ""
		if f.Range.HasLo {
			lo = strconv.FormatFloat(f.Range.Lo, 'f', -1, 64)
		}
		if f.Range.HasHi {
			hi = strconv.FormatFloat(f.Range.Hi, 'f', -1, 64)
		}
		got := []string{f.Animal, string(f.Region), f.Quantity, lo, hi, f.Unit, f.Source, f.Locator, basis}
		want := []string{r["key"], r["region"], r["quantity"], norm(t, r["min"]), norm(t, r["max"]), r["unit"], r["source_key"], r["locator"], r["provenance"]}
		if !slices.Equal(got, want) {
			t.Errorf("figure %d: Go has %q, the table %q", i, got, want)
		}
		if r["key"] != General && !slices.Contains(names, Animal{r["key"], r["common_name"], r["scientific_name"], Group(r["group"]), Region(r["region"])}) {
			t.Errorf("%s of %s is not among the animals", r["key"], r["region"])
		}
	}
	if i != len(printed) {
		t.Errorf("%d figures, the table has %d", len(printed), i)
	}
}
