package main

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"strings"
)

// source is one file of a package, with what the compiler knows of it.
type source struct {
	name string // its full path
	text []byte
	tree *ast.File
	set  *token.FileSet
	info *types.Info
}

// sources reads the files of packages, a list a package.
func sources(patterns []string) (map[string][]source, error) {
	exports, err := exported()
	if err != nil {
		return nil, err
	}
	list, err := exec.Command("go", append([]string{"list", "-f", `{{.ImportPath}}{{$d := .Dir}}{{range .GoFiles}} {{$d}}/{{.}}{{end}}`}, patterns...)...).Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	out := map[string][]source{}
	for line := range strings.Lines(string(list)) {
		if words := strings.Fields(line); len(words) > 1 {
			if out[words[0]], err = read(words[0], words[1:], exports); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// exported is where the go command keeps what each package gives to others.
func exported() (map[string]string, error) {
	out, err := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}", "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list -export: %w", err)
	}
	exports := map[string]string{}
	for line := range strings.Lines(string(out)) {
		if pkg, file, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			exports[pkg] = file
		}
	}
	return exports, nil
}

func read(pkg string, names []string, exports map[string]string) ([]source, error) {
	set := token.NewFileSet()
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}}
	var out []source
	var trees []*ast.File
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		tree, err := parser.ParseFile(set, name, text, 0)
		if err != nil {
			return nil, err
		}
		out, trees = append(out, source{name, text, tree, set, info}), append(trees, tree)
	}
	conf := types.Config{Importer: importer.ForCompiler(set, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })}
	if _, err := conf.Check(pkg, set, trees, info); err != nil {
		return nil, err
	}
	return out, nil
}
