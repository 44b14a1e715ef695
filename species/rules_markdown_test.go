package species

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"holt.example/box"
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

// TestEveryRuleIsLookedAt: a rule is measured, or it is told as advice of a kind
// that no plan and no Site shows; never both, and nothing stands twice.
func TestEveryRuleIsLookedAt(t *testing.T) {
	seen := map[string]int{}
	for _, c := range measured {
		seen[c.code]++
	}
	for _, a := range told {
		seen[a.code]++
		r, err := RuleOf(a.code)
		if err != nil || r.Severity != box.Advice {
			t.Errorf("%s is told as advice and is %v, %v", a.code, r.Severity, err)
		}
		switch a.kind {
		case "law", "season", "siting", "care", "safety", "bench":
		default:
			t.Errorf("%s: %q is no kind of advice", a.code, a.kind)
		}
	}
	for _, r := range Rules() {
		if seen[r.Code] != 1 {
			t.Errorf("%s is looked at %d times", r.Code, seen[r.Code])
		}
		delete(seen, r.Code)
	}
	for code := range seen {
		t.Errorf("%s is no rule", code)
	}
	t.Logf("%d rules: %d measured by Review, %d told as advice", len(Rules()), len(measured), len(told))
}
