package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
)

// change is one place of a file, and what is written there instead.
type change struct {
	pkg, file, name string // name is the file from the top of the repository
	text            []byte
	start, end      int
	line            int
	old, instead    string
	number          bool
}

func (c *change) String() string {
	return fmt.Sprintf("%s:%d: %s -> %s", c.name, c.line, c.old, c.instead)
}

// applied is the file with the change in it.
func (c *change) applied() []byte {
	return []byte(string(c.text[:c.start]) + c.instead + string(c.text[c.end:]))
}

// opposite is what takes the place of an operator or of a function.
var opposite = map[string]string{
	"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "==", "&&": "||", "||": "&&", "min": "max", "max": "min",
}

// tiny is a number that is a tolerance of the arithmetic and says nothing of the
// trade; whether it is a tenth greater is nobody's business.
const tiny = 1e-5

// changes lists those of one file. Left alone are the indexes and lengths of
// lists, what is said only when computing fails, tiny numbers, the 1 of math.Inf(1), and no time at all, of which
// one more is a nanosecond. So is the nothing that a float is compared with: "x > 0" asks
// whether there is any, which its opposite tries; a tenth more than nothing is nothing.
func changes(pkg string, file source, name string) []*change {
	var nothing []ast.Expr
	var out []*change
	add := func(pos token.Pos, old string, number bool) {
		at := file.set.Position(pos)
		out = append(out, &change{
			pkg: pkg, file: file.name, name: name, text: file.text, start: at.Offset, end: at.Offset + len(old), line: at.Line,
			old: old, instead: opposite[old], number: number,
		})
	}
	ast.Inspect(file.tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.IndexExpr:
			return false
		case *ast.SliceExpr:
			return false
		case *ast.ArrayType:
			return false
		case *ast.CallExpr:
			if id, ok := n.Fun.(*ast.Ident); ok {
				if id.Name == "make" || id.Name == "panic" {
					return false
				}
				if opposite[id.Name] != "" {
					add(id.Pos(), id.Name, false)
				}
			}
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && (s.Sel.Name == "Errorf" || s.Sel.Name == "Sprintf") {
				return false
			}
			// Of what math.Inf is given only the sign counts, and none is as good as plus.
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "Inf" && len(n.Args) == 1 {
				if _, plain := n.Args[0].(*ast.BasicLit); plain {
					return false
				}
			}
		case *ast.BinaryExpr:
			if opposite[n.Op.String()] != "" && !isNil(n.Y) {
				add(n.OpPos, n.Op.String(), false)
			}
			if n.Op.Precedence() == token.EQL.Precedence() {
				nothing = append(nothing, n.X, n.Y)
			}
		case *ast.BasicLit:
			if of := file.info.Types[n].Type; n.Value == "0" && (isDuration(of) || isFloat(of) && slices.Contains(nothing, ast.Expr(n))) {
				return true
			}
			if v, err := strconv.ParseFloat(n.Value, 64); err == nil && (n.Kind == token.INT || n.Kind == token.FLOAT) && (v == 0 || v >= tiny) {
				add(n.Pos(), n.Value, true)
			}
		}
		return true
	})
	return out
}

// isDuration reports whether it is a time, whose next whole number is a nanosecond more.
func isDuration(t types.Type) bool { return t.String() == "time.Duration" }

func isFloat(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsFloat != 0
}

func isNil(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	return ok && id.Name == "nil"
}

// choose says what a number becomes: a tenth more or less, or the next whole one.
func (c *change) choose(r *rand.Rand) {
	up := r.IntN(2) == 0
	if !c.number {
		return
	}
	v, _ := strconv.ParseFloat(c.old, 64)
	whole := v == math.Trunc(v) && v < 1e6
	switch {
	case whole && v < 10 && (up || v == 0):
		v++
	case whole && v < 10:
		v--
	case whole && up:
		v = math.Ceil(v * 1.1)
	case whole:
		v = math.Floor(v * 0.9)
	case up:
		v *= 1.1
	default:
		v *= 0.9
	}
	c.instead = strconv.FormatFloat(v, 'g', 6, 64)
	if whole {
		c.instead = strconv.FormatFloat(v, 'f', -1, 64)
	}
}
