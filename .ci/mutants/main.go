// Command mutants puts one-line faults into the library, one at a time, and
// sees that each turns a test red. The source tree is not touched: the faulty
// file is laid over it for one run of go test.
package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
)

// fault is one line gone wrong.
type fault struct {
	what     string
	file     string
	old, new string
	tests    string // packages
}

func main() {
	root, err := os.Getwd()
	if err != nil {
		fail(err)
	}
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		fail(err)
	}
	defer os.RemoveAll(dir)
	// A fault counts only where the tests are green without it.
	sound := map[string]bool{}
	for _, f := range faults {
		if sound[f.tests] {
			continue
		}
		if out, err := exec.Command("go", append([]string{"test", "-short"}, strings.Fields(f.tests)...)...).CombinedOutput(); err != nil {
			fail(fmt.Errorf("not green before any fault: %s\n%s", f.tests, out))
		}
		sound[f.tests] = true
	}
	results := make([]string, len(faults))
	next := make(chan int)
	var wg sync.WaitGroup
	for w := 0; w < 2; w++ {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range next {
				results[i] = try(root, dir, i, faults[i])
			}
		}()
	}
	for i := range faults {
		next <- i
	}
	close(next)
	wg.Wait()
	bad := 0
	for i, r := range results {
		fmt.Printf("%-8s %s (%s)\n", strings.SplitN(r, "\n", 2)[0], faults[i].what, faults[i].file)
		if r != "caught" {
			bad++
			if _, more, ok := strings.Cut(r, "\n"); ok {
				fmt.Println(more)
			}
		}
	}
	fmt.Printf("%d faults, %d not caught\n", len(faults), bad)
	if bad > 0 {
		os.RemoveAll(dir)
		os.Exit(1)
	}
}

// try lays one fault over the tree and runs the tests that should see it.
func try(root, dir string, i int, f fault) string {
	path := filepath.Join(root, f.file)
	src, err := os.ReadFile(path)
	if err != nil {
		return "broken\n" + err.Error()
	}
	if n := strings.Count(string(src), f.old); n != 1 {
		return fmt.Sprintf("broken\nthe line stands %d times: %s", n, f.old)
	}
	bad := filepath.Join(dir, fmt.Sprintf("%d.go", i))
	if err := os.WriteFile(bad, []byte(strings.Replace(string(src), f.old, f.new, 1)), 0o644); err != nil {
		return "broken\n" + err.Error()
	}
	over, err := json.Marshal(map[string]any{"Replace": map[string]string{path: bad}})
	if err != nil {
		return "broken\n" + err.Error()
	}
	overlay := filepath.Join(dir, fmt.Sprintf("%d.json", i))
	if err := os.WriteFile(overlay, over, 0o644); err != nil {
		return "broken\n" + err.Error()
	}
	args := append([]string{"test", "-short", "-failfast", "-overlay", overlay}, strings.Fields(f.tests)...)
	out, err := exec.Command("go", args...).CombinedOutput()
	switch {
	case err == nil:
		return "MISSED"
	case strings.Contains(string(out), "[build failed]") || strings.Contains(string(out), "[setup failed]"):
		return "broken\n" + string(out)
	}
	return "caught"
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, err)
	os.Exit(2)
}
