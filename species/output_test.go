package species

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"holt.example/box"
)

// some findings: one with both ends, one with none and no value, one hostile.
func some() []box.Finding {
	return []box.Finding{
		{Code: "wall-15", Severity: box.Warning, Part: box.Left, Where: box.Place{X: -60.12345, Z: 1}, Got: 14, Lo: 15, Hi: math.Inf(1), Unit: "mm", Why: "too thin", Sources: []string{"bto_guide", "common practice"}},
		{Code: "aspect", Severity: box.Advice, Got: math.NaN(), Lo: math.Inf(-1), Hi: math.Inf(1), Why: "north", Sources: nil},
		{Code: "x", Severity: box.Fault, Part: "free/a|b", Got: -1e-9, Lo: 0, Hi: 1e6, Why: "<script>\n| `x` \x1b[0m", Sources: []string{"a|b"}},
	}
}

// TestFindingsJSON reads back what was written: bounds that do not exist are
// left out, and no number has an exponent.
func TestFindingsJSON(t *testing.T) {
	var b bytes.Buffer
	if err := WriteFindingsJSON(&b, some()); err != nil {
		t.Fatal(err)
	}
	var got []map[string]any
	if err := json.Unmarshal(b.Bytes(), &got); err != nil || len(got) != 3 {
		t.Fatalf("%s: %v", b.String(), err)
	}
	if g := got[0]; g["code"] != "wall-15" || g["severity"] != "warning" || g["part"] != "left" || g["got"] != 14.0 || g["lo"] != 15.0 || g["unit"] != "mm" {
		t.Errorf("%v", g)
	}
	for i, absent := range [][]string{{"hi"}, {"hi", "lo", "got", "part", "where", "unit"}, {"where", "unit"}} {
		for _, k := range absent {
			if v, ok := got[i][k]; ok {
				t.Errorf("%d: %s is %v", i, k, v)
			}
		}
	}
	for _, want := range []string{`"x": -60.1234,`, `"got": 0,`, `"hi": 1000000,`, `"sources": []`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %s in %s", want, b.String())
		}
	}
	b.Reset()
	if err := WriteFindingsJSON(&b, nil); err != nil || b.String() != "[]\n" {
		t.Errorf("%q, %v", b.String(), err)
	}
}

func TestFindingsTextAndMarkdown(t *testing.T) {
	var b, m bytes.Buffer
	if err := errors.Join(WriteFindings(&b, some()), WriteFindingsMarkdown(&m, some())); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"warning [wall-15] left: too thin (bto_guide, common practice)\n", "  bto_guide: British Trust for Ornithology"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in %s", want, b.String())
		}
	}
	if strings.ContainsAny(b.String()+m.String(), "\x1b\r") || strings.Count(b.String(), "\n") != 3+1+1+1 {
		t.Errorf("%q", b.String())
	}
	for _, want := range []string{"| warning | `wall-15` | left | 14 mm | at least 15 mm | too thin |", "\\<script\\>", "- `bto_guide`: "} {
		if !strings.Contains(m.String(), want) {
			t.Errorf("no %q in %s", want, m.String())
		}
	}
	for _, line := range strings.Split(m.String(), "\n") {
		if n := strings.Count(line, "|") - strings.Count(line, "\\|"); strings.HasPrefix(line, "|") && n != 8 {
			t.Errorf("%d bars: %s", n, line)
		}
	}
	// Names that end a line, turn the writing, hide in it, or are no UTF-8.
	hostile := []box.Finding{{Code: "x\u0085", Part: "free/\u202eab\u2066", Why: "of \"oak\u2028\u200f\u061c\" \xff\x07", Sources: []string{"a\u2029b"}}}
	b.Reset()
	m.Reset()
	if err := errors.Join(WriteFindings(&b, hostile), WriteFindingsMarkdown(&m, hostile)); err != nil {
		t.Fatal(err)
	}
	if want := "advice [x ] free/ ab : of \"oak   \" \uFFFD  (a b)\n"; b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
	if got := m.String(); strings.ContainsAny(got, "\u0085\u202e\u2066\u2028\u200f\u061c\u2029\x07") || !strings.Contains(got, "| free/ ab  |") || !utf8.ValidString(got) {
		t.Errorf("%q", got)
	}
	b.Reset()
	m.Reset()
	if err := errors.Join(WriteFindings(&b, nil), WriteFindingsMarkdown(&m, nil)); err != nil || b.String() != "no findings\n" || m.String() != "No findings.\n" {
		t.Errorf("%q %q %v", b.String(), m.String(), err)
	}
}

// full is a writer that takes nothing.
type full struct{}

var errFull = errors.New("full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestWritersHandErrorsOn(t *testing.T) {
	for i, err := range []error{WriteFindings(full{}, some()), WriteFindingsMarkdown(full{}, some()), WriteFindingsJSON(full{}, some()), WriteCare(full{}, MustGet("great_tit"), Site{})} {
		if !errors.Is(err, errFull) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

// TestCare: every preset's sheet has all its parts, defers to the law, and cites
// each source once; those of bats and dormice speak of licences.
func TestCare(t *testing.T) {
	for _, p := range All() {
		var b, again bytes.Buffer
		if err := errors.Join(WriteCare(&b, p, Site{}), WriteCare(&again, p, Site{})); err != nil {
			t.Fatal(err)
		}
		s := b.String()
		if s != again.String() {
			t.Errorf("%s: differs from run to run", p.Key)
		}
		for _, want := range []string{"# Care of a box for ", "## Where it goes", "## Cleaning", "## Law", "## Safety", "### Sources", "The law of the place comes first", "Local law", "owner", "children", "blades", "dust", "adder"} {
			if !strings.Contains(s, want) {
				t.Errorf("%s: no %q", p.Key, want)
			}
		}
		if p.Group == Bat && (!strings.Contains(s, "licence") || !strings.Contains(s, "Do not open it") || strings.Contains(s, "Wear gloves")) {
			t.Errorf("%s: %s", p.Key, s)
		}
		if p.Group == Bird {
			for _, want := range []string{"gloves", "mask", "damp", "breeding season", "Stop and come back"} {
				if !strings.Contains(s, want) {
					t.Errorf("%s: no %q", p.Key, want)
				}
			}
			if len(p.CleanMonths) > 0 && !strings.Contains(s, "Months: "+monthWords(p.CleanMonths)) {
				t.Errorf("%s: no months", p.Key)
			}
		}
		for _, k := range p.Sources {
			if n := strings.Count(s, "- `"+k+"`: "); n != 1 {
				t.Errorf("%s cites %s %d times", p.Key, k, n)
			}
		}
	}
	var b bytes.Buffer
	if err := WriteCare(&b, MustGet("great_tit"), Site{Above: 1}); err != nil || !strings.Contains(b.String(), "At 1 m this one is outside that") {
		t.Error(b.String(), err)
	}
	var p box.Problem
	if err := WriteCare(&b, Preset{}, Site{}); !errors.As(err, &p) || p.Code != "no-preset" {
		t.Error(err)
	}
}
