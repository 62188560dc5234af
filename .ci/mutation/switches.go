package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
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
	tests           map[string]string // of a package
	sound           map[string]bool   // whether they hold while nothing is changed
	origin          map[string]string // of a changed file, the file that it is laid over
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
	s := &switched{folder: folder, overlay: filepath.Join(folder, "switched.json"), numbers: map[*change]string{}, tests: map[string]string{}, sound: map[string]bool{}}
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
		out, err := exec.Command("go", "build", "-gcflags=-e", "-overlay", s.overlay, "./...").CombinedOutput()
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
	atLine = regexp.MustCompile(`(?m)^(\S+\.go):(\d+):\d+: (.*)$`)
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
		if len(at[f.name]) == 0 {
			continue
		}
		offset := func(p token.Pos) int { return f.set.Position(p).Offset }
		line := func(p token.Pos) string { return fmt.Sprintf("%s:%d", f.name, f.set.Position(p).Line) }
		texts[f.name] = applyEdits(f.text, s.edits(f.tree, f.info, at[f.name], offset, used, kept, line))
	}
	return texts
}

// constTypes is the one type as which a constant is used throughout, if it is one.
func constTypes(files []source) map[types.Object]string {
	used, info := map[types.Object]string{}, files[0].info
	for id, obj := range info.Uses {
		if _, ok := obj.(*types.Const); !ok {
			continue
		}
		name := types.TypeString(info.Types[id].Type, from(files[0].tree.Name.Name))
		if info.Types[id].Type == nil {
			continue
		}
		if b, ok := info.Types[id].Type.(*types.Basic); ok && b.Info()&types.IsUntyped != 0 {
			continue // in another constant, which has to become a variable as well
		}
		if had, ok := used[obj]; ok && had != name {
			name = ""
		}
		used[obj] = name
	}
	return used
}

func (s *switched) edits(tree *ast.File, info *types.Info, at map[int]*change, offset func(token.Pos) int, used map[types.Object]string, kept map[string]bool, lines func(token.Pos) string) []edit {
	var out []edit
	wrap := func(n ast.Node, before, after string) {
		from, to := offset(n.Pos()), offset(n.End())
		out = append(out, edit{at: from, text: before, reaches: to}, edit{at: to, text: after, closes: true, reaches: from})
	}
	within := constantsWithin(tree, info)
	constant := "" // the type of the constants that are being read
	var visit func(n ast.Node) bool
	visit = func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok != token.CONST {
				return true
			}
			if !s.opens(n, info, used, kept, lines) {
				for _, c := range at {
					if c.start >= offset(n.Pos()) && c.start < offset(n.End()) {
						delete(s.numbers, c)
					}
				}
				return false
			}
			out = append(out, edit{at: offset(n.Pos()), cut: len("const"), text: "var"})
			for _, spec := range n.Specs {
				spec := spec.(*ast.ValueSpec)
				if spec.Type == nil {
					if t := typeOf(info.Defs[spec.Names[0]], used); t != "" {
						end := offset(spec.Names[len(spec.Names)-1].End())
						out = append(out, edit{at: end, text: " " + t})
					}
				}
			}
			was := constant
			for _, spec := range n.Specs {
				spec := spec.(*ast.ValueSpec)
				if constant = typeOf(info.Defs[spec.Names[0]], used); constant == "" {
					constant = "float64"
				}
				for _, v := range spec.Values {
					ast.Inspect(v, visit)
				}
			}
			constant = was
			return false
		case *ast.BasicLit:
			c := at[offset(n.Pos())]
			if c == nil || s.numbers[c] == "" {
				return true
			}
			t := types.TypeString(info.Types[n].Type, from(tree.Name.Name))
			if within[n] != nil {
				t = types.TypeString(within[n], from(tree.Name.Name))
			}
			switch {
			case strings.HasPrefix(t, "untyped ") && constant != "":
				t = constant
			case t == "untyped float":
				t = "float64"
			case t == "untyped int":
				t = "int"
			}
			wrap(n, "changedTo["+t+"](`"+s.numbers[c]+"`, ", ", "+c.instead+")")
		case *ast.CallExpr:
			if id, ok := n.Fun.(*ast.Ident); ok {
				if c := at[offset(id.Pos())]; c != nil && s.numbers[c] != "" && (id.Name == "min" || id.Name == "max") {
					fn := map[string]string{"min": "changedMin", "max": "changedMax"}[id.Name]
					out = append(out, edit{at: offset(id.Pos()), cut: 3, text: fn, reaches: offset(id.End())}, edit{at: offset(n.Lparen) + 1, text: "`" + s.numbers[c] + "`, ", closes: true, reaches: 1 << 60})
				}
			}
		case *ast.BinaryExpr:
			c := at[offset(n.OpPos)]
			if c == nil || s.numbers[c] == "" {
				return true
			}
			switch n.Op {
			case token.LAND, token.LOR:
				fn := map[token.Token]string{token.LAND: "changedAnd", token.LOR: "changedOr"}[n.Op]
				wrap(n, fn+"(`"+s.numbers[c]+"`, func() bool { return (", ") })")
				out = append(out, edit{at: offset(n.OpPos), cut: 2, text: ") }, func() bool { return ("})
			default:
				wrap(n, "changedIs(`"+s.numbers[c]+"`, ", ")")
			}
		}
		return true
	}
	ast.Inspect(tree, visit)
	return out
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

// constantsWithin is the types of literals that stand within a larger constant, which go/types
// leaves untyped.
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
			case *ast.BasicLit:
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
func (s *switched) opens(n *ast.GenDecl, info *types.Info, used map[types.Object]string, kept map[string]bool, line func(token.Pos) string) bool {
	for _, spec := range n.Specs {
		if kept[line(spec.Pos())] {
			return false
		}
	}
	for _, spec := range n.Specs {
		spec := spec.(*ast.ValueSpec)
		if len(spec.Values) != len(spec.Names) {
			return false
		}
		for i, id := range spec.Names {
			iota := false
			ast.Inspect(spec.Values[i], func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				iota = iota || ok && id.Name == "iota"
				return true
			})
			t, ok := used[info.Defs[id]]
			if iota || kept[id.Name] || ok && t == "" {
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
		return "float64"
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
