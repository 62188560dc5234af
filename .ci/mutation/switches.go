package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// setting is the variable of the environment that says which change is made.
const setting = "NEWMAKE_CHANGE"

// helper is what a changed file leans on. It is laid into each package.
const helper = `package %s

import "os"

var changedOne = os.Getenv("` + setting + `")

func changedTo[T any](n string, is, instead T) T {
	if changedOne == n {
		return instead
	}
	return is
}

func changedIs(n string, is bool) bool { return is != (changedOne == n) }

func changedAnd(n string, a, b func() bool) bool {
	if changedOne == n {
		return a() || b()
	}
	return a() && b()
}

func changedOr(n string, a, b func() bool) bool {
	if changedOne == n {
		return a() && b()
	}
	return a() || b()
}

func changedMin[T int | float64](n string, first T, more ...T) T {
	for _, v := range more {
		if changedOne == n {
			first = max(first, v)
		} else {
			first = min(first, v)
		}
	}
	return first
}

func changedMax[T int | float64](n string, first T, more ...T) T {
	for _, v := range more {
		if changedOne == n {
			first = min(first, v)
		} else {
			first = max(first, v)
		}
	}
	return first
}
`

// switched is a program that holds many changes, each made only when the environment
// asks for it: so the tests are built once, and not once a change.
type switched struct {
	folder, overlay string
	numbers         map[*change]string
	tests           map[string]string        // of a package
	sound           map[string]bool          // whether they hold while nothing is changed
	limits          map[string]time.Duration // how long they may take
	origin          map[string]string        // of a changed file, the file that it is laid over
}

// edit is text put into a file, in the place of cut bytes.
type edit struct {
	at, cut  int
	text     string
	closes   bool
	reaches  int // where the node begins that is closed, or ends that is opened
	sequence int
}

// switchAll makes the program of them. What can't be switched, mostly since it has to be a
// constant, is not in numbers.
func switchAll(folder string, files map[string][]source, list []*change) (*switched, error) {
	s := &switched{folder: folder, overlay: filepath.Join(folder, "switched.json"), numbers: map[*change]string{}, tests: map[string]string{}, sound: map[string]bool{}, limits: map[string]time.Duration{}}
	byPkg := map[string][]*change{}
	for i, c := range list {
		s.numbers[c] = strconv.Itoa(i + 1)
		byPkg[c.pkg] = append(byPkg[c.pkg], c)
	}
	kept := map[string]bool{} // constants that have to stay constants
	for range 40 {
		if err := s.lay(files, byPkg, kept); err != nil {
			return nil, err
		}
		// One check of vet's, which reads the tests as well, and links none.
		out, err := exec.Command("go", "vet", "-atomic", "-overlay", s.overlay, "./...").CombinedOutput()
		if err == nil {
			return s, nil
		}
		if !s.drop(string(out), list, kept) {
			return nil, fmt.Errorf("the program with all changes does not build:\n%s", out)
		}
	}
	return nil, fmt.Errorf("the program with all changes does not build")
}

var (
	atLine = regexp.MustCompile(`(?m)^(?:vet: )?(\S+\.go):(\d+):\d+: (.*)$`)
	word   = regexp.MustCompile(`\w+`)
)

// drop takes out the changes of lines that do not build, and leaves constant what they name.
func (s *switched) drop(said string, list []*change, kept map[string]bool) bool {
	some := false
	for _, m := range atLine.FindAllStringSubmatch(said, -1) {
		line, _ := strconv.Atoi(m[2])
		at := s.origin[filepath.Base(m[1])] + ":" + m[2]
		for _, name := range append(word.FindAllString(m[3], -1), at) {
			some = some || !kept[name]
			kept[name] = true
		}
		for _, c := range list {
			if _, ok := s.numbers[c]; ok && c.line == line && s.origin[filepath.Base(m[1])] == c.file {
				delete(s.numbers, c)
				some = true
			}
		}
	}
	return some
}

// lay writes the changed files and the list that lays them over the repository's.
func (s *switched) lay(all map[string][]source, byPkg map[string][]*change, kept map[string]bool) error {
	replace := map[string]string{}
	s.origin = map[string]string{}
	number := 0
	for pkg, list := range byPkg {
		dir := filepath.Dir(list[0].file)
		texts := s.rewrite(all[pkg], list, kept)
		texts[filepath.Join(dir, "zz_changed.go")] = fmt.Appendf(nil, helper, all[pkg][0].tree.Name.Name)
		for file, text := range texts {
			number++
			to := filepath.Join(s.folder, fmt.Sprintf("f%d.go", number))
			if err := os.WriteFile(to, text, 0o666); err != nil {
				return err
			}
			replace[file] = to
			s.origin[filepath.Base(to)] = file
		}
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": replace})
	if err != nil {
		return err
	}
	return os.WriteFile(s.overlay, list, 0o666)
}

// rewrite is the files of a package with its changes switched into them.
func (s *switched) rewrite(files []source, list []*change, kept map[string]bool) map[string][]byte {
	at := map[string]map[int]*change{}
	for _, c := range list {
		if _, ok := s.numbers[c]; ok {
			if at[c.file] == nil {
				at[c.file] = map[int]*change{}
			}
			at[c.file][c.start] = c
		}
	}
	used := constTypes(files)
	texts := map[string][]byte{}
	for _, f := range files {
		if len(at[f.name]) > 0 {
			r := rewriter{source: f, numbers: s.numbers, at: at[f.name], used: used, kept: kept, within: constantsWithin(f.tree, f.info)}
			ast.Inspect(f.tree, r.visit)
			texts[f.name] = applyEdits(f.text, r.edits)
		}
	}
	return texts
}

// constTypes is the one type as which a constant is used throughout, if it is one.
func constTypes(files []source) map[types.Object]string {
	used, info := map[types.Object]string{}, files[0].info
	within := map[ast.Node]types.Type{}
	for _, f := range files {
		maps.Copy(within, constantsWithin(f.tree, info))
	}
	for id, obj := range info.Uses {
		if _, ok := obj.(*types.Const); !ok {
			continue
		}
		of := info.Types[id].Type
		if of == nil {
			continue
		}
		if b, ok := of.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
			if of = within[id]; of == nil {
				continue // in another constant, which has to become a variable as well
			}
		}
		name := types.TypeString(of, from(files[0].tree.Name.Name))
		if had, ok := used[obj]; ok && had != name {
			name = ""
		}
		used[obj] = name
	}
	return used
}

// rewriter puts the switches into one file.
type rewriter struct {
	source
	numbers  map[*change]string
	at       map[int]*change         // by where they begin
	used     map[types.Object]string // the types of constants
	kept     map[string]bool         // constants, by name or place, that stay constants
	within   map[ast.Node]types.Type
	constant string // the type of the constants that are being read
	edits    []edit
}

func (r *rewriter) offset(p token.Pos) int { return r.set.Position(p).Offset }

// change is the change at a place and its number, if it can be switched.
func (r *rewriter) change(p token.Pos) (*change, string) {
	c := r.at[r.offset(p)]
	return c, r.numbers[c]
}

func (r *rewriter) wrap(n ast.Node, before, after string) {
	from, to := r.offset(n.Pos()), r.offset(n.End())
	r.edits = append(r.edits, edit{at: from, text: before, reaches: to}, edit{at: to, text: after, closes: true, reaches: from})
}

func (r *rewriter) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.GenDecl:
		if n.Tok == token.CONST {
			r.constants(n)
			return false
		}
	case *ast.BasicLit:
		if c, number := r.change(n.Pos()); number != "" {
			r.wrap(n, "changedTo["+r.typeOf(n)+"](`"+number+"`, ", ", "+c.instead+")")
		}
	case *ast.CallExpr:
		id, ok := n.Fun.(*ast.Ident)
		if !ok {
			return true
		}
		if fn := map[string]string{"min": "changedMin", "max": "changedMax"}[id.Name]; fn != "" {
			if _, number := r.change(id.Pos()); number != "" {
				r.edits = append(r.edits, edit{at: r.offset(id.Pos()), cut: len(id.Name), text: fn, reaches: r.offset(id.End())},
					edit{at: r.offset(n.Lparen) + 1, text: "`" + number + "`, ", closes: true, reaches: math.MaxInt})
			}
		}
	case *ast.BinaryExpr:
		_, number := r.change(n.OpPos)
		fn := map[token.Token]string{token.LAND: "changedAnd", token.LOR: "changedOr"}[n.Op]
		switch {
		case number == "":
		case fn != "": // the second side is asked only where the first does not decide
			r.wrap(n, fn+"(`"+number+"`, func() bool { return (", ") })")
			r.edits = append(r.edits, edit{at: r.offset(n.OpPos), cut: len(n.Op.String()), text: ") }, func() bool { return ("})
		default:
			r.wrap(n, "changedIs(`"+number+"`, ", ")")
		}
	}
	return true
}

// constants makes variables of a group of constants, if it can be: then they are switched.
func (r *rewriter) constants(n *ast.GenDecl) {
	if !r.opens(n) {
		for start, c := range r.at {
			if start >= r.offset(n.Pos()) && start < r.offset(n.End()) {
				delete(r.numbers, c)
			}
		}
		return
	}
	r.edits = append(r.edits, edit{at: r.offset(n.Pos()), cut: len("const"), text: "var"})
	for _, spec := range n.Specs {
		spec := spec.(*ast.ValueSpec)
		t := typeOf(r.info.Defs[spec.Names[0]], r.used)
		if spec.Type == nil && t != "" {
			r.edits = append(r.edits, edit{at: r.offset(spec.Names[len(spec.Names)-1].End()), text: " " + t})
		}
		if r.constant = t; t == "" {
			r.constant = "float64"
		}
		for _, v := range spec.Values {
			ast.Inspect(v, r.visit)
		}
	}
	r.constant = ""
}

// typeOf is the type that a literal has where it stands.
func (r *rewriter) typeOf(n *ast.BasicLit) string {
	of := r.info.Types[n].Type
	if r.within[n] != nil {
		of = r.within[n]
	}
	switch t := types.TypeString(of, from(r.tree.Name.Name)); {
	case strings.HasPrefix(t, "untyped ") && r.constant != "":
		return r.constant
	case t == "untyped float":
		return "float64"
	case t == "untyped int":
		return "int"
	default:
		return t
	}
}

// from writes a type as a file of a package names it.
func from(pkg string) types.Qualifier {
	return func(p *types.Package) string {
		if p.Name() == pkg {
			return ""
		}
		return p.Name()
	}
}

// constantsWithin is the types of literals and names that stand within a larger constant, which
// go/types leaves untyped.
func constantsWithin(tree *ast.File, info *types.Info) map[ast.Node]types.Type {
	out := map[ast.Node]types.Type{}
	ast.Inspect(tree, func(n ast.Node) bool {
		e, ok := n.(ast.Expr)
		if !ok || info.Types[e].Value == nil {
			return true
		}
		b, ok := info.Types[e].Type.Underlying().(*types.Basic)
		if !ok || b.Info()&types.IsUntyped != 0 || b.Info()&types.IsNumeric == 0 {
			return true
		}
		ast.Inspect(e, func(n ast.Node) bool {
			switch n.(type) {
			case *ast.CallExpr:
				return n == ast.Node(e)
			case *ast.BasicLit, *ast.Ident:
				if out[n] == nil {
					out[n] = info.Types[e].Type
				}
			}
			return true
		})
		return true
	})
	return out
}

// opens reports whether a group of constants can be variables.
func (r *rewriter) opens(n *ast.GenDecl) bool {
	for _, spec := range n.Specs {
		spec := spec.(*ast.ValueSpec)
		place := fmt.Sprintf("%s:%d", r.name, r.set.Position(spec.Pos()).Line)
		if r.kept[place] || len(spec.Values) != len(spec.Names) {
			return false
		}
		for i, id := range spec.Names {
			iota := false
			ast.Inspect(spec.Values[i], func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				iota = iota || ok && id.Name == "iota"
				return true
			})
			t, ok := r.used[r.info.Defs[id]]
			if iota || r.kept[id.Name] || ok && t == "" {
				return false
			}
		}
	}
	return true
}

func typeOf(obj types.Object, used map[types.Object]string) string {
	if t := used[obj]; t != "" {
		return t
	}
	if b, ok := obj.Type().(*types.Basic); ok && b.Info()&types.IsNumeric != 0 && b.Info()&types.IsUntyped != 0 {
		return types.Default(b).String()
	}
	return ""
}

func applyEdits(text []byte, list []edit) []byte {
	for i := range list {
		list[i].sequence = i
	}
	slices.SortFunc(list, func(a, b edit) int {
		switch {
		case a.at != b.at:
			return a.at - b.at
		case a.closes != b.closes: // what ends here ends before what begins
			if a.closes {
				return -1
			}
			return 1
		case a.reaches != b.reaches: // inner ends first, outer begins first
			return b.reaches - a.reaches
		}
		return a.sequence - b.sequence
	})
	var out bytes.Buffer
	last := 0
	for _, e := range list {
		out.Write(text[last:e.at])
		out.WriteString(e.text)
		last = e.at + e.cut
	}
	out.Write(text[last:])
	return out.Bytes()
}

// test is the tests of a package, built once.
func (s *switched) test(pkg string) (string, error) {
	if t, ok := s.tests[pkg]; ok {
		return t, nil
	}
	to := filepath.Join(s.folder, fmt.Sprintf("t%d.test", len(s.tests)))
	out, err := exec.Command("go", "test", "-c", "-overlay", s.overlay, "-vet=off", "-o", to, pkg).CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("the tests of %s do not build:\n%s", pkg, out)
	}
	s.tests[pkg] = to
	return to, nil
}
