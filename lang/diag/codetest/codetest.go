// Package codetest reads from Go source which codes there are and which of them a
// package raises, for tests that hold a table against it.
package codetest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// Declared is the codes by the names of their constants. dir is the folder of package
// diag, which declares them.
func Declared(t testing.TB, dir string) map[string]diag.Code {
	t.Helper()
	out := map[string]diag.Code{}
	each(t, dir, func(n ast.Node) {
		v, ok := n.(*ast.ValueSpec)
		if !ok || len(v.Names) != 1 || len(v.Values) != 1 || !strings.HasPrefix(v.Names[0].Name, "Code") {
			return
		}
		if lit, ok := v.Values[0].(*ast.BasicLit); ok {
			text, err := strconv.Unquote(lit.Value)
			require.NoError(t, err)
			out[v.Names[0].Name] = diag.Code(text)
		}
	})
	return out
}

// EveryThresholdTried holds the thresholds of a package against its source: each code
// that it raises is tried, or said to have no number, with what decides it.
func EveryThresholdTried(t testing.TB, raised []diag.Code, tried map[diag.Code]bool, unnumbered map[diag.Code]string) {
	t.Helper()
	for _, code := range raised {
		switch _, none := unnumbered[code]; {
		case tried[code] && none:
			t.Errorf("%s is in thresholds, and in unnumbered", code)
		case !tried[code] && !none:
			t.Errorf("%s is raised here: give thresholds a row with a value just inside and one just outside, or unnumbered what decides it", code)
		}
	}
	for code := range tried {
		if !slices.Contains(raised, code) {
			t.Errorf("%s is in thresholds, and is raised nowhere here", code)
		}
	}
	for code := range unnumbered {
		if !slices.Contains(raised, code) {
			t.Errorf("%s is in unnumbered, and is raised nowhere here", code)
		}
	}
}

// Raised is the codes that the sources in a folder name, tests left out. diagDir
// is the folder of package diag.
func Raised(t testing.TB, dir, diagDir string) []diag.Code {
	t.Helper()
	values := Declared(t, diagDir)
	var out []diag.Code
	seen := map[diag.Code]bool{}
	each(t, dir, func(n ast.Node) {
		s, ok := n.(*ast.SelectorExpr)
		if !ok || !strings.HasPrefix(s.Sel.Name, "Code") {
			return
		}
		if x, ok := s.X.(*ast.Ident); !ok || x.Name != "diag" {
			return
		}
		code, known := values[s.Sel.Name]
		if known && !seen[code] {
			seen[code] = true
			out = append(out, code)
		}
	})
	return out
}

func each(t testing.TB, dir string, visit func(ast.Node)) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if n != nil {
				visit(n)
			}
			return true
		})
	}
}
