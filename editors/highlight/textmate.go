package highlight

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// scope is the TextMate name of the language; each scope ends in .newmake.
const scope = "source.newmake"

// rule is one rule of a TextMate grammar.
type rule struct {
	Name          string          `json:"name,omitempty"`
	Match         string          `json:"match,omitempty"`
	Begin         string          `json:"begin,omitempty"`
	End           string          `json:"end,omitempty"`
	Captures      map[string]rule `json:"captures,omitempty"`
	BeginCaptures map[string]rule `json:"beginCaptures,omitempty"`
	EndCaptures   map[string]rule `json:"endCaptures,omitempty"`
	Patterns      []rule          `json:"patterns,omitempty"`
	Include       string          `json:"include,omitempty"`
}

// grammar is a TextMate grammar.
type grammar struct {
	Comment   string   `json:"$comment"`
	Name      string   `json:"name"`
	ScopeName string   `json:"scopeName"`
	FileTypes []string `json:"fileTypes"`
	Patterns  []rule   `json:"patterns"`
}

const (
	wordEnd = `(?![\p{L}\p{N}_-])`
	number  = `-?(?:[1-9]\d{0,2}(?:,\d{3})+|\d+)(?:\.\d+)?(?![.,]?\d)`
	unitEnd = `(?![\p{L}\p{N}_/-])`
	price   = `[A-Z]{3}(?:/\p{L}[\p{L}\p{N}_-]*)*`
)

// TextMate writes the grammar.
func TextMate(w Words) ([]byte, error) {
	begins := func(words []string, place, scope string) rule {
		return rule{Match: place + "(" + oneOf(words) + ")" + wordEnd, Captures: map[string]rule{"1": {Name: scope}}}
	}
	const lineStart = `(?:^\s+|(?<=\{)\s*)`
	g := grammar{
		Comment: "Made by go test ./editors/highlight -update from the checker's tables: do not edit.",
		Name:    "newmake", ScopeName: scope, FileTypes: []string{"batch"},
		Patterns: []rule{
			{Name: "comment.line.number-sign.newmake", Match: "#.*$"},
			{
				Name: "string.quoted.double.newmake", Begin: `"(?=(?:[^"\\]|\\.)*")`, End: `"`,
				BeginCaptures: map[string]rule{"0": {Name: "punctuation.definition.string.begin.newmake"}},
				EndCaptures:   map[string]rule{"0": {Name: "punctuation.definition.string.end.newmake"}},
				Patterns: []rule{
					{Name: "constant.character.escape.newmake", Match: `\\["\\nt]`},
					{Name: "invalid.illegal.escape.newmake", Match: `\\.`},
				},
			},
			{Name: "invalid.illegal.unclosed-string.newmake", Match: `".*$`},
			begins(w.Declarations, "^", "storage.type.declaration.newmake"),
			begins(w.Blocks, lineStart, "keyword.control.block.newmake"),
			begins(w.Steps, lineStart, "support.function.step.newmake"),
			begins(w.Fields, lineStart, "keyword.other.field.newmake"),
			{Name: "constant.other.date.newmake", Match: `\d{4}-\d{2}-\d{2}(?!\d)`},
			{Name: "constant.other.time.newmake", Match: `[-+]?\d{1,2}:\d{2}(?::\d{2})?(?!\d)`},
			{
				Match: fmt.Sprintf(`(%s)(?:\s*(\.\.)\s*(%s))?(?:\s*(%s|%s)%s)?`, number, number, oneOf(w.Units), price, unitEnd),
				Captures: map[string]rule{
					"1": {Name: "constant.numeric.newmake"}, "2": {Name: "keyword.operator.range.newmake"},
					"3": {Name: "constant.numeric.newmake"}, "4": {Name: "keyword.other.unit.newmake"},
				},
			},
			{Name: "invalid.illegal.number.newmake", Match: `-?(?:\d+(?:[.,]\d+)+|\.\d+)`},
			{Name: "keyword.operator.word.newmake", Match: `(?<![\p{L}\p{N}_-])(?:` + oneOf(w.Connectives) + ")" + wordEnd},
			{Name: "constant.language.option.newmake", Match: `(?<![\p{L}\p{N}_-])(?:` + oneOf(w.Options) + ")" + wordEnd},
			{Name: "variable.other.name.newmake", Match: `[\p{L}_][\p{L}\p{N}\p{M}_-]*`},
			{Name: "punctuation.section.block.newmake", Match: `[{}]`},
			{Name: "punctuation.separator.newmake", Match: `,|/`},
			{Name: "invalid.illegal.character.newmake", Match: `[:;=()\[\]*+<>~\\'|&!?^@` + "`" + `]`},
		},
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(g); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}
