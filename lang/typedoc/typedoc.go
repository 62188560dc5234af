// Package typedoc reads the comments of a package's types, for tests that make
// schemas of the types: what a field is stands once, beside it.
package typedoc

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
)

// Docs are the comments of the types of a package, each on one line.
type Docs struct {
	Types  map[string]string // by the name of the type
	Fields map[string]Field  // by type and name in JSON: Report.code
}

// Field is a field that has a tag.
type Field struct {
	Doc string
	Tag reflect.StructTag
}

// Read reads the Go files of a folder.
func Read(dir string) (*Docs, error) {
	docs := &Docs{map[string]string{}, map[string]Field{}}
	paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	for _, path := range paths {
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if decl, ok := n.(*ast.GenDecl); ok {
				for _, spec := range decl.Specs {
					if t, ok := spec.(*ast.TypeSpec); ok {
						docs.enter(t, decl.Doc.Text()+" "+t.Doc.Text())
					}
				}
			}
			return true
		})
	}
	return docs, nil
}

func (d *Docs) enter(t *ast.TypeSpec, doc string) {
	d.Types[t.Name.Name] = oneLine(doc)
	s, ok := t.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, f := range s.Fields.List {
		if f.Tag == nil {
			continue
		}
		tag := reflect.StructTag(strings.Trim(f.Tag.Value, "`"))
		name, _, _ := strings.Cut(tag.Get("json"), ",")
		d.Fields[t.Name.Name+"."+name] = Field{oneLine(f.Doc.Text() + " " + f.Comment.Text()), tag}
	}
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
