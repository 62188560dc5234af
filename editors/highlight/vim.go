package highlight

import (
	"fmt"
	"strings"
)

// Vim writes the syntax file. Its patterns are "very magic" but for the words,
// which stand as they are.
func Vim(w Words) []byte {
	var b strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	p(`" Vim syntax file: newmake batches (*.batch).`)
	p(`" Made by go test ./editors/highlight -update from the checker's tables: do not edit.`)
	p("")
	p("if exists('b:current_syntax')")
	p("  finish")
	p("endif")
	p("syntax case match")
	p("syntax iskeyword @,48-57,_,-,192-255")
	p("")
	p(`syntax match newmakeError /\v[:;=()\[\]*+<>~\\'|&!?^@` + "`" + `]/`)
	p(`syntax match newmakeName /\v\k+/`)
	p("syntax match newmakePunctuation /[{},\\/]/")
	p(`syntax match newmakeOption /\v<%%(%s)>/`, vimOneOf(w.Options))
	p(`syntax match newmakeConnective /\v<%%(%s)>/`, vimOneOf(w.Connectives))
	p("")
	p(`" A word by its place: at the start of a line, or after the brace of a block of`)
	p(`" one line. What comes later here goes before what came earlier.`)
	for _, group := range []struct {
		name  string
		words []string
	}{{"newmakeField", w.Fields}, {"newmakeStep", w.Steps}, {"newmakeBlock", w.Blocks}} {
		p(`syntax match %s /\v%%(^\s+|\{\s*)@<=%%(%s)>/`, group.name, vimOneOf(group.words))
	}
	p(`syntax match newmakeDeclaration /\v^%%(%s)>/`, vimOneOf(w.Declarations))
	p("")
	p(`syntax match newmakeError /\v-?%%(\d+%%([.,]\d+)+|\.\d+)/`)
	number := `-?%([1-9]\d{0,2}%(,\d{3})+|\d+)%(\.\d+)?%([.,]?\d)@!`
	p(`syntax match newmakeNumber /\v%s/ nextgroup=newmakeUnit,newmakeRange skipwhite`, number)
	p(`syntax match newmakeRange /\.\./ contained nextgroup=newmakeNumber skipwhite`)
	p(`syntax match newmakeUnit /\v%%(%s|\u{3}%%(\/\a\k*)*)%%(\k|\/)@!/ contained`, vimOneOf(w.Units))
	p(`syntax match newmakeDate /\v\d{4}-\d{2}-\d{2}\d@!/`)
	p(`syntax match newmakeTime /\v[-+]?\d{1,2}:\d{2}%%(:\d{2})?\d@!/`)
	p("")
	p(`syntax match newmakeError /".*$/`)
	p(`syntax region newmakeString start=/\v"%%(%%([^"\\]|\\.)*")@=/ skip=/\\./ end=/"/ oneline contains=newmakeEscape,newmakeBadEscape`)
	p(`syntax match newmakeBadEscape /\\./ contained`)
	p(`syntax match newmakeEscape /\\["\\nt]/ contained`)
	p(`syntax match newmakeComment /#.*$/ contains=newmakeTodo,@Spell`)
	p("syntax keyword newmakeTodo TODO FIXME contained")
	p("")
	for _, link := range [][2]string{
		{"newmakeDeclaration", "Structure"}, {"newmakeBlock", "Keyword"}, {"newmakeStep", "Function"}, {"newmakeField", "Identifier"},
		{"newmakeConnective", "Operator"}, {"newmakeOption", "Constant"}, {"newmakeName", "Normal"}, {"newmakeNumber", "Number"},
		{"newmakeRange", "Operator"}, {"newmakeUnit", "Type"}, {"newmakeDate", "Number"}, {"newmakeTime", "Number"},
		{"newmakeString", "String"}, {"newmakeEscape", "SpecialChar"}, {"newmakeBadEscape", "Error"}, {"newmakeComment", "Comment"},
		{"newmakeTodo", "Todo"}, {"newmakePunctuation", "Delimiter"}, {"newmakeError", "Error"},
	} {
		p("highlight default link %s %s", link[0], link[1])
	}
	p("")
	p("let b:current_syntax = 'newmake'")
	return []byte(b.String())
}

// vimOneOf is oneOf for a very magic pattern of Vim between slashes.
func vimOneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		var q strings.Builder
		for _, r := range w {
			switch {
			case r == ' ':
				q.WriteString(`\s+`)
			case strings.ContainsRune(`%/.()[]{}|+*?<>=@&~^$\`, r):
				q.WriteRune('\\')
				q.WriteRune(r)
			default:
				q.WriteRune(r)
			}
		}
		quoted[i] = q.String()
	}
	return strings.Join(quoted, "|")
}
