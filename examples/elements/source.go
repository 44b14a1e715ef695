package main

import (
	"embed"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io/fs"
	"strconv"
	"strings"
)

// The tables, to be shown on the page as they are written here.
//
//go:embed *.go
var code embed.FS

// sources are the expressions of the elements' values, by title, as they stand
// in the tables.
func sources() (map[string]string, error) {
	out := map[string]string{}
	names, err := fs.Glob(code, "*.go")
	if err != nil {
		return nil, err
	}
	set := token.NewFileSet()
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := code.ReadFile(name)
		if err != nil {
			return nil, err
		}
		f, err := parser.ParseFile(set, name, text, 0)
		if err != nil {
			return nil, err
		}
		var fault error
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok || lit.Type != nil { // entries of a table have no type of their own
				return true
			}
			title, what := "", ast.Expr(nil)
			for _, e := range lit.Elts {
				kv, ok := e.(*ast.KeyValueExpr)
				if !ok {
					return true
				}
				switch key, _ := kv.Key.(*ast.Ident); {
				case key == nil:
				case key.Name == "title":
					if s, ok := kv.Value.(*ast.BasicLit); ok {
						title, _ = strconv.Unquote(s.Value)
					}
				case key.Name == "what":
					what = kv.Value
				}
			}
			if title == "" || what == nil {
				return true
			}
			if _, twice := out[title]; twice {
				fault = fmt.Errorf("%s: %q is there twice", name, title)
			}
			out[title], err = shown(string(text[set.Position(what.Pos()).Offset:set.Position(what.End()).Offset]))
			if err != nil {
				fault = fmt.Errorf("%s: %q: %w", name, title, err)
			}
			return false
		})
		if fault != nil {
			return nil, fault
		}
	}
	return out, nil
}

// shown is an expression as it looks by itself, its lines moved to the left.
func shown(expr string) (string, error) {
	const head = "package p\n\nvar _ = "
	text, err := format.Source([]byte(head + expr + "\n"))
	if err != nil {
		return "", err
	}
	return strings.TrimSpace(strings.TrimPrefix(string(text), head)), nil
}
