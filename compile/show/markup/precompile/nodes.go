package precompile

import (
	"fmt"
	"reflect"
	"strings"
	"text/template/parse"

	"newmake/compile/show/markup"
)

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
