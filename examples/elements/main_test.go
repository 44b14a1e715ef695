package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page and its pictures, as they lie here, are what the tables make now.
func TestPageIsUpToDate(t *testing.T) {
	files, err := page()
	require.NoError(t, err)
	made := map[string]bool{}
	for _, f := range files {
		assert.False(t, made[f.name], "%s is made twice", f.name)
		made[f.name] = true
		old, err := os.ReadFile(f.name)
		require.NoError(t, err, "run make pictures")
		assert.True(t, string(old) == string(f.data), "%s is not up to date: run make pictures", f.name)
	}
	old, err := filepath.Glob("*.svg")
	require.NoError(t, err)
	for _, name := range old {
		assert.True(t, made[name], "%s is no longer on the page", name)
	}
}

// Every kind of element that a design can have is on the page: each exported type
// that belongs to one of the closed interfaces of box, each joint, each form.
func TestEveryElementIsThere(t *testing.T) {
	src, err := sources()
	require.NoError(t, err)
	var all strings.Builder
	for _, s := range src {
		all.WriteString(s + "\n")
	}
	marks := []string{"shape", "feature", "inner", "outer", "opening", "hinge", "profile", "roof", "floor", "size", "footprint", "Section"}
	n := 0
	for _, dir := range []string{"box", "joints", "box/forms"} {
		names, err := filepath.Glob(filepath.Join("../..", dir, "*.go"))
		require.NoError(t, err)
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			require.NoError(t, err)
			for _, d := range f.Decls {
				fn, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				want := ""
				switch {
				case fn.Recv == nil && dir == "box/forms" && fn.Name.IsExported():
					want = "forms." + fn.Name.Name + "("
				case fn.Recv != nil && slices.Contains(marks, fn.Name.Name):
					if id, ok := fn.Recv.List[0].Type.(*ast.Ident); ok && id.IsExported() {
						want = filepath.Base(dir) + "." + id.Name + "{"
					}
				}
				if want != "" {
					n++
					assert.True(t, strings.Contains(all.String(), want), "%s...: an element without an entry on the page", want)
				}
			}
		}
	}
	// 9 shapes, 17 features, 8 inner and 12 outer elements (two are both), 8
	// openings, 3 hinges, 4 strip joints, 5 roofs, 3 floors, 3 sizes, 2
	// footprints, 5 joints, 11 forms: as many at least as when this was written.
	assert.GreaterOrEqual(t, n, 88)
}

// A picture of every element shows something of it: no two are alike but for
// those of elements that are only listed.
func TestPicturesDiffer(t *testing.T) {
	listed := []string{"Felt", "RidgeCap, sheet", "Edging"}
	title := regexp.MustCompile(`<title.*</title>`)
	seen := map[string]string{}
	for _, c := range chapters {
		for _, e := range c.elements {
			if slices.Contains(listed, e.title) {
				continue
			}
			b, err := os.ReadFile(anchor(e.title) + ".svg")
			require.NoError(t, err)
			s := title.ReplaceAllString(string(b), "")
			assert.Empty(t, seen[s], "%s looks the same", e.title)
			seen[s] = e.title
		}
	}
	// And none is a picture of the bare base.
	for _, e := range []element{{what: board, title: "a"}, {what: plain, title: "b"}, {what: long, title: "c"}, {what: gable, title: "d"}, {what: wide, title: "e"}} {
		_, b, err := e.draw()
		require.NoError(t, err)
		s := title.ReplaceAllString(string(b), "")
		if e.title != "c" && seen[s] != "Entrance" { // these two are entries themselves
			assert.Empty(t, seen[s], "%s shows no more than its base", seen[s])
		}
	}
}
