// Package codetest reads from Go source which codes a package raises, for tests
// that hold a table of cases against it.
package codetest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// Raised is the codes that the sources in a folder name, tests left out. diagDir
// is the folder of package diag, which declares them.
func Raised(t testing.TB, dir, diagDir string) []diag.Code {
	t.Helper()
	values := map[string]diag.Code{}
	each(t, diagDir, func(n ast.Node) {
		if v, ok := n.(*ast.ValueSpec); ok && len(v.Names) == 1 && len(v.Values) == 1 {
			if lit, ok := v.Values[0].(*ast.BasicLit); ok {
				text, _ := strconv.Unquote(lit.Value)
				values[v.Names[0].Name] = diag.Code(text)
			}
		}
	})
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
