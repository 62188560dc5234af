package precompile

import (
	"reflect"
	"strconv"
	"strings"
	"text/template/parse"

	"newmake/compile/show/markup"
)

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
