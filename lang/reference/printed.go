package reference

import (
	_ "embed"
	"html"
	"strings"

	"newmake/lang/schema"
)

//go:embed cheatsheet.css
var printedStyle string

// PrintedSheet is the cheat sheet as a page to print: one sheet of paper, A4 or letter,
// one side. It holds what the Markdown holds.
func PrintedSheet() string {
	var b strings.Builder
	b.WriteString("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>newmake cheat sheet</title>\n<style>\n" + printedStyle + "</style>\n</head>\n<body>\n<h1>newmake</h1>\n")
	_, rules, _ := strings.Cut(cheatsheet, "\n\n")
	rules, _, _ = strings.Cut(rules, "\n\n")
	b.WriteString("<p>" + code(strings.Join(strings.Fields(rules), " ")) + "</p>\n<main>\n")
	for _, f := range schema.Language.Fields {
		if f.Block == nil || !daily[f.Name] {
			continue
		}
		for line := range strings.Lines(synopsis(f, "")) {
			text := strings.TrimSpace(line)
			depth := (len(line) - len(strings.TrimLeft(line, " "))) / 2
			if text == "}" { // indents say where a block ends
				continue
			}
			b.WriteString(`<div class="d` + string(rune('0'+depth)) + `">` + firstWord(text) + "</div>\n")
		}
	}
	b.WriteString("</main>\n</body>\n</html>\n")
	return b.String()
}

// code is a text with what stands in backquotes as code.
func code(text string) string {
	parts := strings.Split(html.EscapeString(text), "`")
	for i := 1; i < len(parts); i += 2 {
		parts[i] = "<code>" + parts[i] + "</code>"
	}
	return strings.Join(parts, "")
}

// firstWord is a line with the word that it begins with in bold, unless that stands for a
// value.
func firstWord(line string) string {
	word, rest, _ := strings.Cut(line, " ")
	if word == strings.ToUpper(word) {
		return html.EscapeString(line)
	}
	return "<b>" + html.EscapeString(word) + "</b> " + html.EscapeString(rest)
}
