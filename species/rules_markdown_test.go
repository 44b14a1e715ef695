package species

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestRulesDocument: the part of RULES.md below the line is what the program
// writes.
func TestRulesDocument(t *testing.T) {
	const file, rule = "RULES.md", "\n---\n\n"
	old, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	preface, _, ok := strings.Cut(string(old), rule)
	if !ok {
		t.Fatal(file + " has no line ---")
	}
	var b bytes.Buffer
	if err := WriteRules(&b); err != nil {
		t.Fatal(err)
	}
	now := preface + rule + b.String()
	if *update {
		if err := os.WriteFile(file, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if now != string(old) {
		t.Error(file + " is not what the program writes: run go test ./species -run TestRulesDocument -update")
	}
}

// TestFixingRules: what the table says of fixings is what CheckFixings gives.
func TestFixingRules(t *testing.T) {
	for _, code := range fixingRules {
		if _, err := RuleOf(code); err != nil {
			t.Error(err)
		}
	}
}
