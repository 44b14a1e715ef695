package boxtest

import (
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"holt.example/box"
)

// update is a flag of the test binary. It is the one variable of this package,
// as flags are.
var update = flag.Bool("boxtest.update", false, "write the golden drawings anew")

// Golden asserts that the Drawing of a plan is the one kept in a file, and shows
// what has changed, part by part. To write the file anew, because there is none
// yet or because the change is meant, run
//
//	go test ./yourpackage -boxtest.update
//
// or set HOLT_UPDATE=1, which goes for any number of packages. Read the
// difference before you commit it.
func Golden(t T, p *box.Plan, file string) {
	t.Helper()
	if p != nil && (*update || os.Getenv("HOLT_UPDATE") == "1") {
		err := os.MkdirAll(filepath.Dir(file), 0o777)
		if err == nil {
			err = os.WriteFile(file, []byte(Drawing(p)), 0o666)
		}
		report(t, p, err)
		return
	}
	report(t, p, CheckGolden(p, file))
}

// CheckGolden is Golden as an error. It never writes.
func CheckGolden(p *box.Plan, file string) error {
	if p == nil {
		return errNoPlan
	}
	was, err := os.ReadFile(file)
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no drawing in %s yet: run with -boxtest.update to write it", file)
	}
	if err != nil {
		return err
	}
	if d := Difference(string(was), Drawing(p)); d != "" {
		return fmt.Errorf("the drawing is no longer that of %s (- was, + is):\n%sIf this is meant, run with -boxtest.update", file, d)
	}
	return nil
}

// Difference shows the lines in which two drawings differ, "" if in none: those
// that went with a minus, those that came with a plus, each under the part that
// they belong to. The kind of line end does not count.
func Difference(was, is string) string {
	a, b := lines(was), lines(is)
	// What is the same at both ends need not be compared.
	head := 0
	for head < len(a) && head < len(b) && a[head] == b[head] {
		head++
	}
	tail := 0
	for tail < len(a)-head && tail < len(b)-head && a[len(a)-1-tail] == b[len(b)-1-tail] {
		tail++
	}
	m, n := len(a)-tail, len(b)-tail
	// long[i][j] is how many lines a[i:m] and b[j:n] have in common, in order.
	long := make([][]int32, m-head+1)
	for i := range long {
		long[i] = make([]int32, n-head+1)
	}
	for i := m - 1; i >= head; i-- {
		for j := n - 1; j >= head; j-- {
			x, y := i-head, j-head
			if a[i] == b[j] {
				long[x][y] = long[x+1][y+1] + 1
			} else {
				long[x][y] = max(long[x+1][y], long[x][y+1])
			}
		}
	}
	var out strings.Builder
	title, shown := "", ""
	for _, l := range a[:head] {
		title = titleOf(l, title)
	}
	show := func(sign, l string) {
		if t := titleOf(l, ""); t == "" && title != shown {
			fmt.Fprintf(&out, "  %s\n", title)
			shown = title
		}
		fmt.Fprintf(&out, "%s %s\n", sign, l)
	}
	for i, j := head, head; i < m || j < n; {
		switch {
		case i < m && j < n && a[i] == b[j]:
			title = titleOf(a[i], title)
			i, j = i+1, j+1
		case j == n || i < m && long[i+1-head][j-head] >= long[i-head][j+1-head]:
			show("-", a[i])
			i++
		default:
			show("+", b[j])
			j++
		}
	}
	return out.String()
}

// titleOf is the line if it names a part, else the title so far.
func titleOf(l, title string) string {
	if l != "" && l[0] != ' ' {
		return l
	}
	return title
}

func lines(s string) []string {
	ls := strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n")
	if n := len(ls); ls[n-1] == "" {
		ls = ls[:n-1]
	}
	return ls
}
