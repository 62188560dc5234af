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

func (g *maker) list(l *parse.ListNode, dot value) {
	if l == nil {
		return
	}
	had := len(g.vars)
	for _, n := range l.Nodes {
		g.node(n, dot)
	}
	g.vars = g.vars[:had]
}

func (g *maker) node(n parse.Node, dot value) {
	switch n := n.(type) {
	case *parse.TextNode:
		g.raw.Write(n.Text)
	case *parse.CommentNode:
	case *parse.ActionNode:
		g.action(n.Pipe, dot)
	case *parse.IfNode:
		if len(n.Pipe.Decl) > 0 {
			fail("%s: a variable of an if", g.in)
		}
		g.line("if %s {", g.truth(n.Pipe, dot))
		g.list(n.List, dot)
		g.otherwise(n.ElseList, dot)
		g.line("}")
	case *parse.WithNode:
		g.with(n, dot)
	case *parse.RangeNode:
		g.loop(n, dot)
	case *parse.TemplateNode:
		g.call(n, dot)
	default:
		fail("%s: %s", g.in, n)
	}
}

func (g *maker) otherwise(l *parse.ListNode, dot value) {
	if l != nil {
		g.line("} else {")
		g.list(l, dot)
	}
}

// held is a value in a variable of its own, a struct by its address.
func (g *maker) held(v value) value {
	switch {
	case v.of.Kind() == reflect.Struct && v.own:
		return g.named(value{"&" + v.code, reflect.PointerTo(v.of), false, true})
	case v.of.Kind() == reflect.Struct:
		x := g.named(v)
		return value{"(&" + x.code + ")", reflect.PointerTo(v.of), false, true}
	}
	return g.named(v)
}

func (g *maker) named(v value) value {
	name := g.fresh()
	g.line("%s := %s", name, v.code)
	return value{name, v.of, false, true}
}

func (g *maker) with(n *parse.WithNode, dot value) {
	if len(n.Pipe.Decl) > 0 {
		fail("%s: a variable of a with", g.in)
	}
	g.line("{")
	v := g.value(n.Pipe, dot)
	if v.of.Kind() == reflect.Struct { // true always
		g.list(n.List, g.held(v))
	} else {
		v = g.named(v)
		g.line("if %s {", true_(v))
		g.list(n.List, v)
		g.otherwise(n.ElseList, dot)
		g.line("}")
	}
	g.line("}")
}

func (g *maker) loop(n *parse.RangeNode, dot value) {
	g.line("{")
	all := g.named(g.value(n.Pipe, dot))
	if all.of.Kind() != reflect.Slice {
		fail("%s: a range over %s", g.in, all.of)
	}
	i := g.fresh()
	g.line("for %s := range %s {", i, all.code)
	had := len(g.vars)
	element := value{all.code + "[" + i + "]", all.of.Elem(), false, true}
	if element.of.Size() > 0 {
		element = g.held(element)
	}
	switch decl := n.Pipe.Decl; len(decl) {
	case 1:
		g.vars = append(g.vars, variable{decl[0].Ident[0], element})
	case 2:
		g.vars = append(g.vars, variable{decl[0].Ident[0], value{i, reflect.TypeFor[int](), false, true}}, variable{decl[1].Ident[0], element})
	}
	g.list(n.List, element)
	g.vars = g.vars[:had]
	g.line("}")
	if n.ElseList != nil {
		g.line("if len(%s) == 0 {", all.code)
		g.list(n.ElseList, dot)
		g.line("}")
	}
	g.line("}")
}

func (g *maker) call(n *parse.TemplateNode, dot value) {
	g.line("{")
	defer g.line("}")
	args, of := "", reflect.Type(nil)
	if n.Pipe == nil {
		fail("%s: the template %s without a value", g.in, n.Name)
	}
	v := g.value(n.Pipe, dot)
	if v.of.Kind() == reflect.Struct {
		v = g.held(v)
	}
	args, of = v.code, v.of
	if c, ok := g.Elsewhere[n.Name]; ok {
		g.imports[c.Import] = true
		g.line("%s(w, %s)", c.Func, args)
		return
	}
	w := wanted{n.Name, of}
	g.wanted = append(g.wanted, w)
	funcs := ""
	if g.Funcs != nil {
		funcs = "f, "
	}
	g.line("%s(w, %s%s)", g.nameOf(w), funcs, args)
}

// action writes a value, or makes a variable of it.
func (g *maker) action(p *parse.PipeNode, dot value) {
	if len(p.Decl) > 0 {
		v := g.value(p, dot)
		if v.of.Kind() == reflect.Struct {
			v = g.held(v)
		} else {
			v = g.named(v)
		}
		g.vars = append(g.vars, variable{p.Decl[0].Ident[0], v})
		return
	}
	// Behind the value stands what html/template escapes it with.
	escaped := p.Copy().(*parse.PipeNode)
	var with []string
	for len(escaped.Cmds) > 0 {
		last := escaped.Cmds[len(escaped.Cmds)-1]
		id, ok := last.Args[0].(*parse.IdentifierNode)
		if !ok || len(last.Args) > 1 || !strings.HasPrefix(id.Ident, "_html_template_") {
			break
		}
		with = append([]string{strings.TrimPrefix(id.Ident, "_html_template_")}, with...)
		escaped.Cmds = escaped.Cmds[:len(escaped.Cmds)-1]
	}
	v := g.value(escaped, dot)
	switch how := strings.Join(with, " "); {
	case v.of == reflect.TypeFor[markup.HTML]() && how == "htmlescaper", v.of == reflect.TypeFor[markup.CSS]() && how == "cssvaluefilter":
		g.line("w.Raw(string(%s))", v.code)
	case how == "urlescaper attrescaper" && v.of.Kind() == reflect.String:
		g.line("w.Fragment(%s)", asString(v))
	case how == "cssvaluefilter" && v.of.Kind() == reflect.Float64:
		g.line("w.Float(%s)", v.code)
	case how == "cssvaluefilter" && v.of.Kind() == reflect.String:
		g.line("w.Name(%s)", asString(v))
	case how != "htmlescaper" && how != "attrescaper" && how != "rcdataescaper":
		fail("%s: %s is escaped with %q", g.in, p, how)
	case v.of.Implements(reflect.TypeFor[fmt.Stringer]()) || v.of.Implements(reflect.TypeFor[error]()):
		fail("%s: %s has a text of its own", g.in, p)
	case v.of.Kind() == reflect.String:
		g.line("w.Text(%s)", asString(v))
	case v.of.Kind() == reflect.Int:
		g.line("w.Int(%s)", v.code)
	case v.of.Kind() == reflect.Float64:
		g.line("w.Float(%s)", v.code)
	default:
		fail("%s: %s is a %s", g.in, p, v.of)
	}
}

func asString(v value) string {
	if v.of == reflect.TypeFor[string]() || v.word {
		return v.code
	}
	return "string(" + v.code + ")"
}

// truth is a condition.
func (g *maker) truth(n parse.Node, dot value) string {
	if p, ok := n.(*parse.PipeNode); ok && len(p.Cmds) == 1 {
		args := p.Cmds[0].Args
		if id, ok := args[0].(*parse.IdentifierNode); ok {
			switch id.Ident {
			case "and", "or":
				var all []string
				for _, a := range args[1:] {
					all = append(all, g.truth(a, dot))
				}
				return "(" + strings.Join(all, map[string]string{"and": " && ", "or": " || "}[id.Ident]) + ")"
			case "not":
				return "!(" + g.truth(args[1], dot) + ")"
			}
		}
		if len(args) == 1 {
			return g.truth(args[0], dot)
		}
	}
	return true_(g.value(n, dot))
}

// true_ is whether a value counts as true.
func true_(v value) string {
	switch v.of.Kind() {
	case reflect.Bool:
		return v.code
	case reflect.String:
		return v.code + ` != ""`
	case reflect.Slice, reflect.Map:
		return "len(" + v.code + ") > 0"
	case reflect.Pointer, reflect.Interface:
		return v.code + " != nil"
	case reflect.Int, reflect.Float64:
		return v.code + " != 0"
	case reflect.Struct:
		return "true"
	}
	fail("a condition of %s", v.of)
	return ""
}

// value is what a pipeline or an argument gives.
func (g *maker) value(n parse.Node, dot value) value {
	switch n := n.(type) {
	case *parse.PipeNode:
		if len(n.Cmds) != 1 {
			fail("%s: the pipeline %s", g.in, n)
		}
		return g.command(n.Cmds[0], dot)
	case *parse.DotNode:
		return dot
	case *parse.FieldNode:
		return g.fields(dot, n.Ident, nil, dot)
	case *parse.VariableNode:
		return g.fields(g.variable(n.Ident[0]), n.Ident[1:], nil, dot)
	case *parse.ChainNode:
		return g.fields(g.value(n.Node, dot), n.Field, nil, dot)
	case *parse.StringNode:
		return value{strconv.Quote(n.Text), reflect.TypeFor[string](), true, false}
	case *parse.NumberNode:
		if n.IsInt {
			return value{n.Text, reflect.TypeFor[int](), true, false}
		}
		return value{n.Text, reflect.TypeFor[float64](), true, false}
	case *parse.IdentifierNode:
		return g.function1(n.Ident, nil, dot)
	}
	fail("%s: the value %s", g.in, n)
	return value{}
}

func (g *maker) variable(name string) value {
	for i := len(g.vars) - 1; i >= 0; i-- {
		if g.vars[i].name == name {
			return g.vars[i].value
		}
	}
	fail("%s: no variable %s", g.in, name)
	return value{}
}

func (g *maker) command(c *parse.CommandNode, dot value) value {
	args := c.Args[1:]
	switch first := c.Args[0].(type) {
	case *parse.IdentifierNode:
		return g.function1(first.Ident, args, dot)
	case *parse.FieldNode:
		return g.fields(dot, first.Ident, args, dot)
	case *parse.VariableNode:
		return g.fields(g.variable(first.Ident[0]), first.Ident[1:], args, dot)
	case *parse.ChainNode:
		return g.fields(g.value(first.Node, dot), first.Field, args, dot)
	default:
		if len(args) > 0 {
			fail("%s: %s", g.in, c)
		}
		return g.value(first, dot)
	}
}

// fields follows fields and methods; the last of them may take arguments.
func (g *maker) fields(v value, names []string, args []parse.Node, dot value) value {
	for i, name := range names {
		var with []parse.Node
		if i == len(names)-1 {
			with = args
		}
		v = g.field(v, name, with, dot)
	}
	return v
}

func (g *maker) field(v value, name string, args []parse.Node, dot value) value {
	of := v.of
	pointer := of
	if of.Kind() != reflect.Pointer {
		pointer = reflect.PointerTo(of)
	}
	if m, ok := pointer.MethodByName(name); ok {
		if _, direct := of.MethodByName(name); !direct && !v.own {
			v = g.named(v)
		}
		return g.called(v.code+"."+name, m.Type, 1, args, dot)
	}
	if len(args) > 0 {
		fail("%s: %s of %s takes nothing", g.in, name, of)
	}
	if of.Kind() == reflect.Pointer {
		of = of.Elem()
	}
	if of.Kind() != reflect.Struct {
		fail("%s: %s of %s", g.in, name, of)
	}
	f, ok := of.FieldByName(name)
	if !ok {
		fail("%s: %s has no %s", g.in, of, name)
	}
	if strings.HasPrefix(v.code, "&") {
		v.code = "(" + v.code + ")"
	}
	return value{v.code + "." + name, f.Type, false, v.own || v.of.Kind() == reflect.Pointer}
}

// called is a call. Of its parameters the first few are there already.
func (g *maker) called(code string, of reflect.Type, there int, args []parse.Node, dot value) value {
	var list []string
	for i, a := range args {
		at := i + there
		var to reflect.Type
		switch {
		case of.IsVariadic() && at >= of.NumIn()-1:
			to = of.In(of.NumIn() - 1).Elem()
		case at < of.NumIn():
			to = of.In(at)
		default:
			fail("%s: too many arguments of %s", g.in, code)
		}
		list = append(list, g.argument(g.value(a, dot), to, code))
	}
	if n := of.NumIn() - there; len(args) < n && !of.IsVariadic() {
		fail("%s: too few arguments of %s", g.in, code)
	}
	if of.NumOut() != 1 {
		fail("%s: %s gives more than a value", g.in, code)
	}
	return value{code + "(" + strings.Join(list, ", ") + ")", of.Out(0), false, false}
}

// argument is a value as a parameter takes it.
func (g *maker) argument(v value, to reflect.Type, code string) string {
	switch {
	case v.word, v.of.AssignableTo(to):
		return v.code
	case v.of.Kind() == reflect.Pointer && v.of.Elem().AssignableTo(to):
		return "*" + v.code
	case reflect.PointerTo(v.of).AssignableTo(to):
		return g.held(v).code
	}
	fail("%s: %s takes a %s and gets a %s", g.in, code, to, v.of)
	return ""
}

// function1 is a function of html/template or one of the set's own.
func (g *maker) function1(name string, args []parse.Node, dot value) value {
	boolean := reflect.TypeFor[bool]()
	operators := map[string]string{"eq": "==", "ne": "!=", "lt": "<", "le": "<=", "gt": ">", "ge": ">="}
	switch op := operators[name]; {
	case op != "":
		if len(args) != 2 {
			fail("%s: %s of %d", g.in, name, len(args))
		}
		a, b := g.value(args[0], dot), g.value(args[1], dot)
		if a.of != b.of && !a.word && !b.word {
			if a.of.Kind() != reflect.String || b.of.Kind() != reflect.String {
				fail("%s: %s beside %s", g.in, a.of, b.of)
			}
			a.code, b.code = asString(a), asString(b)
		}
		return value{a.code + " " + op + " " + b.code, boolean, false, false}
	case name == "not" || name == "and" || name == "or":
		c := &parse.CommandNode{NodeType: parse.NodeCommand, Args: append([]parse.Node{parse.NewIdentifier(name)}, args...)}
		return value{g.truth(&parse.PipeNode{NodeType: parse.NodePipe, Cmds: []*parse.CommandNode{c}}, dot), boolean, false, false}
	case name == "len":
		return value{"len(" + g.value(args[0], dot).code + ")", reflect.TypeFor[int](), false, false}
	case name == "index":
		v, i := g.value(args[0], dot), g.value(args[1], dot)
		if v.of.Kind() != reflect.Slice {
			fail("%s: index of %s", g.in, v.of)
		}
		return value{v.code + "[" + i.code + "]", v.of.Elem(), false, true}
	case name == "raw":
		v := g.value(args[0], dot)
		if v.of != reflect.TypeFor[markup.HTML]() {
			fail("%s: raw takes markup and gets %s", g.in, v.of)
		}
		return v
	}
	if g.Funcs == nil {
		fail("%s: no function %s", g.in, name)
	}
	method := strings.ToUpper(name[:1]) + name[1:]
	m, ok := reflect.TypeOf(g.Funcs).MethodByName(method)
	if !ok {
		fail("%s: no function %s", g.in, name)
	}
	return g.called("f."+method, m.Type, 1, args, dot)
}
