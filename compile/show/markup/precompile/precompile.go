// Package precompile makes Go of a set of html/template templates, for tests that keep
// the made file fresh. It lets html/template decide how each value is escaped where it
// stands, and the types of the data decide what the Go is; what a page does not use it
// does not know, and says so.
//
// A template gets a value of one type, with fields and methods, and functions that are
// the methods of one more value: a template says num for its method Num.
package precompile

import (
	"bytes"
	"cmp"
	"fmt"
	"go/format"
	"html/template"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"text/template/parse"

	"newmake/compile/show/markup"
)

// Set is a set of templates.
type Set struct {
	Package string            // of the made file
	Sources map[string]string // the templates by their names, beside those that they define
	Funcs   any               // its methods are the functions; nil: there are none
	Roots   map[string]any    // by the name of a template, a value of the type that it gets
	// Elsewhere are templates that another package has made Go of: by name, its sources
	// and the function to call.
	Elsewhere map[string]Call
}

// Call is a function of another package, made of a template.
type Call struct {
	Sources map[string]string
	Import  string
	Func    string
}

// Parsed is the set as html/template has it: what the made Go is held against. Its
// functions are those of a value of the type of Funcs.
func (s Set) Parsed(funcs any) (*template.Template, error) {
	t := template.New("").Funcs(template.FuncMap{"raw": func(h markup.HTML) template.HTML { return template.HTML(h) }}).Funcs(functions(funcs))
	sources := []map[string]string{s.Sources}
	for _, c := range s.Elsewhere {
		sources = append(sources, c.Sources)
	}
	for _, all := range sources {
		for name, text := range all {
			if _, err := t.New(name).Parse(text); err != nil {
				return nil, err
			}
		}
	}
	return t, nil
}

// functions are the methods of a value, as html/template takes them.
func functions(of any) template.FuncMap {
	out := template.FuncMap{}
	if of == nil {
		return out
	}
	v := reflect.ValueOf(of)
	for i := range v.NumMethod() {
		f := v.Method(i)
		name := v.Type().Method(i).Name
		if n := f.Type().NumOut(); n != 1 {
			continue
		}
		out[strings.ToLower(name[:1])+name[1:]] = marked(f).Interface()
	}
	return out
}

// marked is a function whose CSS and HTML html/template knows as such.
func marked(f reflect.Value) reflect.Value {
	to := map[reflect.Type]reflect.Type{reflect.TypeFor[markup.CSS](): reflect.TypeFor[template.CSS](), reflect.TypeFor[markup.HTML](): reflect.TypeFor[template.HTML]()}[f.Type().Out(0)]
	if to == nil {
		return f
	}
	var in []reflect.Type
	for i := range f.Type().NumIn() {
		in = append(in, f.Type().In(i))
	}
	return reflect.MakeFunc(reflect.FuncOf(in, []reflect.Type{to}, f.Type().IsVariadic()), func(args []reflect.Value) []reflect.Value {
		if f.Type().IsVariadic() {
			return []reflect.Value{f.CallSlice(args)[0].Convert(to)}
		}
		return []reflect.Value{f.Call(args)[0].Convert(to)}
	})
}

// Go is the made file.
func (s Set) Go() (out []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			what, ours := r.(fault)
			if !ours {
				panic(r)
			}
			out, err = nil, fmt.Errorf("precompile: %s", string(what))
		}
	}()
	t, err := s.Parsed(s.Funcs)
	if err != nil {
		return nil, err
	}
	g := &maker{Set: s, trees: map[string]*parse.Tree{}, imports: map[string]bool{"newmake/compile/show/markup": true}, made: map[string]bool{}, first: map[string]reflect.Type{}}
	for name := range s.Roots {
		// Executed, a template is escaped in place; what it is executed with is of no account.
		_ = t.Lookup(name).Execute(io.Discard, nil)
	}
	for _, one := range t.Templates() {
		g.trees[one.Name()] = one.Tree
	}
	for _, name := range slices.Sorted(mapKeys(s.Roots)) {
		g.wanted = append(g.wanted, wanted{name, reflect.TypeOf(s.Roots[name])})
	}
	bodies := map[string]string{}
	for len(g.wanted) > 0 {
		w := g.wanted[0]
		g.wanted = g.wanted[1:]
		if fn := g.nameOf(w); !g.made[fn] {
			g.made[fn] = true
			bodies[fn] = g.function(fn, w)
		}
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "// Code generated of the templates beside it by go test -update; DO NOT EDIT.\n\npackage %s\n\nimport (\n", s.Package)
	for _, path := range slices.Sorted(mapKeys(g.imports)) {
		fmt.Fprintf(&b, "%q\n", path)
	}
	b.WriteString(")\n")
	for _, fn := range slices.Sorted(mapKeys(bodies)) {
		b.WriteString("\n" + bodies[fn])
	}
	made, err := format.Source(b.Bytes())
	if err != nil {
		return b.Bytes(), err
	}
	return made, nil
}

func mapKeys[K cmp.Ordered, V any](m map[K]V) func(func(K) bool) {
	return func(yield func(K) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// fault is what a template has that this package does not know.
type fault string

func fail(format string, args ...any) { panic(fault(fmt.Sprintf(format, args...))) }

type wanted struct {
	name string
	of   reflect.Type
}

type maker struct {
	Set
	trees   map[string]*parse.Tree
	imports map[string]bool
	wanted  []wanted
	made    map[string]bool

	in    string // the template that is made
	out   strings.Builder
	raw   strings.Builder // text that is not written yet
	vars  []variable
	count int
	first map[string]reflect.Type // by template, the type that it was asked for with first
}

// variable is one of a template: its name there, and what it is in Go.
type variable struct {
	name string
	value
}

// value is an expression of Go.
type value struct {
	code string
	of   reflect.Type
	word bool // a constant of a template
	own  bool // a variable of Go, or a part of one: it has an address
}

// nameOf is the name of a function: the template's, and its type's where that is another
// than usual.
func (g *maker) nameOf(w wanted) string {
	words := strings.FieldsFunc(w.name, func(r rune) bool { return r == '.' || r == '-' || r == ' ' })
	for i := range words {
		words[i] = strings.ToUpper(words[i][:1]) + words[i][1:]
	}
	name := "write" + strings.Join(words, "")
	if g.first[w.name] == nil {
		g.first[w.name] = w.of
	}
	if w.of != g.first[w.name] {
		name += "Of" + strings.NewReplacer("*", "", ".", "", "[", "", "]", "").Replace(w.of.String())
	}
	return name
}

// typeName writes a type as the made file has it.
func (g *maker) typeName(t reflect.Type) string {
	if t.Kind() == reflect.Pointer {
		return "*" + g.typeName(t.Elem())
	}
	if t.Kind() == reflect.Slice && t.Name() == "" {
		return "[]" + g.typeName(t.Elem())
	}
	if t.PkgPath() == "" {
		return t.String()
	}
	pkg, name, _ := strings.Cut(t.String(), ".")
	if pkg == g.Package {
		return name
	}
	g.imports[t.PkgPath()] = true
	return t.String()
}

func (g *maker) function(fn string, w wanted) string {
	tree := g.trees[w.name]
	if tree == nil {
		fail("there is no template %q", w.name)
	}
	g.in, g.count = w.name, 0
	g.out.Reset()
	d := value{"d", w.of, false, true}
	g.vars = []variable{{"$", d}}
	g.list(tree.Root, d)
	g.flush()
	funcs := ""
	if g.Funcs != nil {
		funcs = ", f " + g.typeName(reflect.TypeOf(g.Funcs))
	}
	body := g.out.String()
	for i := range g.count { // a variable that nothing asks for is none
		name := "v" + strconv.Itoa(i+1)
		if len(regexp.MustCompile(`\b`+name+`\b`).FindAllString(body, -1)) == 1 {
			body = strings.NewReplacer("for "+name+" := range", "for range", name+" := ", "_ = ").Replace(body)
		}
	}
	return fmt.Sprintf("func %s(w *markup.Page%s, d %s) {\n%s}\n", fn, funcs, g.typeName(w.of), body)
}

// line writes Go.
func (g *maker) line(format string, args ...any) {
	g.flush()
	fmt.Fprintf(&g.out, format+"\n", args...)
}

// flush writes the text that has come together.
func (g *maker) flush() {
	if g.raw.Len() > 0 {
		text := g.raw.String()
		g.raw.Reset()
		fmt.Fprintf(&g.out, "w.Raw(%s)\n", quoted(text))
	}
}

func quoted(s string) string {
	if strconv.CanBackquote(strings.ReplaceAll(s, "\n", "")) {
		return "`" + s + "`"
	}
	return strconv.Quote(s)
}

func (g *maker) fresh() string {
	g.count++
	return "v" + strconv.Itoa(g.count)
}
