package species

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write PRESETS.md anew")

const rule = "\n---\n\n"

// TestPresetsDocument: the part of PRESETS.md below the line is what the
// program writes.
func TestPresetsDocument(t *testing.T) {
	old, err := os.ReadFile("PRESETS.md")
	if err != nil {
		t.Fatal(err)
	}
	preface, made, ok := strings.Cut(string(old), rule)
	if !ok {
		t.Fatal("PRESETS.md has no line ---")
	}
	var b bytes.Buffer
	if err := WriteMarkdown(&b, All()); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("PRESETS.md", []byte(preface+rule+b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if made != b.String() {
		t.Error("PRESETS.md is not what the program writes: run go test ./species -run TestPresetsDocument -update")
	}
	for _, p := range All() {
		if strings.Count(made, "| `"+p.Key+"` |") != 1 || strings.Count(made, "### "+p.Key+":") != 1 {
			t.Errorf("%s does not stand once in the table and once below", p.Key)
		}
	}
	for _, want := range []string{
		"| `blue_tit` | Blue Tit (Cyanistes caeruleus) | hole | 110 x 110 x 230 | round 26 | 175 | 25 to 28 | 15 | 2 to 5 | September to January |",
		"| `little_owl` | Little Owl (Athene noctua) | tube | 160 x 1000 x 160 | round 65 | 47.5 (80 to the centre) |",
		"| `eurasian_wren` | Eurasian Wren (Troglodytes troglodytes) | open-front | 100 x 100 x ? | open 100 wide | 140 | - |",
	} {
		if !strings.Contains(made, want) {
			t.Errorf("missing: %s", want)
		}
	}
}

type broken struct{ after int }

var errBroken = errors.New("full")

func (w *broken) Write(p []byte) (int, error) {
	if w.after -= len(p); w.after < 0 {
		return 0, errBroken
	}
	return len(p), nil
}

func TestMarkdownOfStrangers(t *testing.T) {
	if err := WriteMarkdown(&broken{100}, All()); !errors.Is(err, errBroken) {
		t.Errorf("a failing writer: %v", err)
	}
	var b bytes.Buffer
	if err := WriteMarkdown(&b, nil); err != nil || b.Len() != 0 {
		t.Errorf("no presets: %q, %v", b.String(), err)
	}
	p := MustGet("blue_tit")
	p.Common, p.CleanMonths = "a|b\n<script>`\x1b", []int{13, -1, 3, 7}
	if err := WriteMarkdown(&b, []Preset{p}); err != nil {
		t.Fatal(err)
	}
	if s := b.String(); !strings.Contains(s, "a\\|b \\<script\\>\\`") || strings.Contains(s, "\x1b") || !strings.Contains(s, "| March, July |") {
		t.Errorf("%q", s)
	}
}
