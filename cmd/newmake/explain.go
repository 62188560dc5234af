package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/lang/diag"
	"newmake/lang/explain"
)

func (a *app) explainCommand() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "explain [CODE | WORD]",
		Short: "Say what a code, a word of the language, a unit or a term means",
		Long: "explain shows the page of a diagnostic's code: what it means, why it matters at the\n" +
			"still, a wrong and a right example. It also knows every word of the language, every\n" +
			"unit, and the terms of the trade. The first digits of a code list its family; without\n" +
			"a word it lists all that there is.",
		Example: "  newmake explain NM0303\n" +
			"  newmake explain hearts\n" +
			"  newmake explain proof gallon\n" +
			"  newmake explain NM06",
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			return a.explain(strings.Join(args, " "), format)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return explain.Names(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	cmd.Flags().StringVar(&format, "format", "", "text or json")
	completeFlag(cmd, "format", oneOf("text", "json"))
	return cmd
}

// explanation is pages as one JSON document.
type explanation struct {
	Format  string     `json:"format"`
	Version string     `json:"version"`
	Word    string     `json:"word"`
	Near    []string   `json:"near,omitempty"` // names like the word, if it has no page
	Pages   []jsonPage `json:"pages"`
}

type jsonPage struct {
	Name     string      `json:"name"`
	Also     []string    `json:"also,omitempty"`
	Sort     string      `json:"sort"`
	Title    string      `json:"title,omitempty"`
	Severity string      `json:"severity,omitempty"`
	Body     []jsonBlock `json:"body,omitempty"`
}

type jsonBlock struct {
	Kind string `json:"kind"` // text, item, example, form or value
	Role string `json:"role,omitempty"`
	In   string `json:"in,omitempty"`
	Text string `json:"text"`
}

func (a *app) explain(word, format string) error {
	pages, index := explain.Find(word), false
	switch {
	case word == "":
		pages, index = explain.Pages(), true
	case len(pages) == 0:
		pages, index = explain.Family(word), true
	}
	var near []string
	if len(pages) == 0 {
		near = explain.Near(word)
	}
	text := ""
	switch {
	case format == "json":
		var out strings.Builder
		if err := diag.EncodeJSON(&out, "", document(word, near, pages, index)); err != nil {
			return err
		}
		text = out.String()
	case index:
		text = contents(pages)
	default:
		for i, p := range pages {
			if i > 0 {
				text += "\n"
			}
			text += severity(p)
		}
	}
	if a.plain() && format != "json" {
		text = ascii(text)
	}
	if _, err := fmt.Fprint(a.out, text); err != nil {
		return usage("cannot write: %v", err)
	}
	if len(pages) > 0 {
		return nil
	}
	if format != "json" {
		a.say("%s", noPage(word, near))
	}
	return errSaid
}

// ascii writes a text for a terminal that knows no other characters.
func ascii(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = diag.Safe(line, true)
	}
	return strings.Join(lines, "\n")
}

// severity is a page with the severity of its code in its first line.
func severity(p explain.Page) string {
	text := p.Text()
	if i, ok := diag.Lookup(diag.Code(p.Name)); ok {
		title, rest, _ := strings.Cut(text, "\n")
		return fmt.Sprintf("%s (%s)\n%s", title, i.Severity, rest)
	}
	return text
}

func noPage(word string, near []string) string {
	message := fmt.Sprintf("there is no page on %q", word)
	if len(near) > 0 {
		message += "; did you mean `" + strings.Join(near, "` or `") + "`?"
	}
	return diag.Safe(message, false) + "\n`newmake explain` lists all pages."
}

// contents lists pages by their sort: codes with their titles, one a line,
// words many to a line.
func contents(pages []explain.Page) string {
	var b strings.Builder
	for _, s := range []struct {
		sort  explain.Sort
		title string
	}{
		{explain.OfCode, "Codes"}, {explain.OfTerm, "Terms of the trade"}, {explain.OfLine, "Words that begin a line"},
		{explain.OfWord, "Words inside a line"}, {explain.OfValue, "Values"}, {explain.OfUnit, "Units"}, {explain.OfStock, "The stock"},
	} {
		var names []string
		for _, p := range pages {
			switch {
			case p.Sort != s.sort:
			case s.sort == explain.OfCode:
				names = append(names, fmt.Sprintf("  %s  %s\n", p.Name, p.Title))
			default:
				names = append(names, p.Name)
			}
		}
		if len(names) == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(s.title + "\n\n")
		switch s.sort {
		case explain.OfCode:
			b.WriteString(strings.Join(names, ""))
			continue
		case explain.OfUnit, explain.OfValue: // in the order of what they measure
		default:
			slices.Sort(names)
		}
		b.WriteString(explain.Columns(names, 2))
	}
	return b.String()
}

func document(word string, near []string, pages []explain.Page, index bool) explanation {
	e := explanation{Format: "newmake.explain", Version: "1.0", Word: word, Near: near, Pages: []jsonPage{}}
	for _, p := range pages {
		j := jsonPage{Name: p.Name, Also: p.Also, Sort: string(p.Sort), Title: p.Title}
		if i, ok := diag.Lookup(diag.Code(p.Name)); ok {
			j.Severity = i.Severity.String()
		}
		for _, b := range p.Body {
			if !index {
				j.Body = append(j.Body, jsonBlockOf(b))
			}
		}
		e.Pages = append(e.Pages, j)
	}
	return e
}

func jsonBlockOf(b explain.Block) jsonBlock {
	j := jsonBlock{Kind: "text", Text: b.Text}
	switch b.Kind {
	case explain.Item:
		j.Kind = "item"
	case explain.Code:
		e, _ := explain.ReadInfo(b.Info)
		j.Kind, j.Role, j.In = "example", e.Role, e.In
		if e.Lang == "form" || e.Lang == "value" {
			j.Kind = e.Lang
		}
	}
	return j
}
