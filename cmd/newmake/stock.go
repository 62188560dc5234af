package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/spelling"
)

func (a *app) stockCommand() *cobra.Command {
	var format, at string
	cmd := &cobra.Command{
		Use:   "stock [KIND] [SEARCH...]",
		Short: "Show the stock: grains, yeasts, enzymes, casks, standards, models",
		Long: "stock lists what a batch may use, and shows the figures of an entry with the source of each.\n" +
			"The kinds are " + strings.Join(house.StockKinds(), ", ") + ". Words after the\n" +
			"kind are looked for in names, comments, lines and sources; an entry of just that name is\n" +
			"shown. Inside a house its own entries are in the list, marked, with what they change.",
		Example: "  newmake stock\n" +
			"  newmake stock grain\n" +
			"  newmake stock grain oats\n" +
			"  newmake stock corn\n" +
			"  newmake stock standard 80 proof\n" +
			"  newmake stock enzyme --format json",
		ValidArgsFunction: a.completeStock,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			return a.stock(args, at, format)
		},
	}
	cmd.Flags().StringVar(&format, "format", "", "text or json")
	completeFlag(cmd, "format", oneOf("text", "json"))
	cmd.Flags().StringVar(&at, "house", ".", "a file or folder of the house whose stock is shown")
	return cmd
}

func (a *app) stock(args []string, at, format string) error {
	all, root, err := a.stockOf(at)
	if err != nil {
		return err
	}
	kind, words := "", args
	if len(args) > 0 {
		if kind = stockKind(args[0]); kind != "" {
			words = args[1:]
		}
	}
	found := all
	if kind != "" {
		found = only(found, func(i house.StockItem) bool { return i.Kind == kind })
	}
	named := only(found, func(i house.StockItem) bool { return isNamed(i, words) })
	about := only(found, func(i house.StockItem) bool { return isAbout(i, []string{strings.Join(words, " ")}) })
	if len(about) == 0 {
		about = only(found, func(i house.StockItem) bool { return isAbout(i, words) })
	}
	show := named
	if len(named) == 0 {
		show = about
	}
	if len(show) == 0 {
		return a.nothingInStock(kind, words, found, format, root)
	}
	if format == "json" {
		return a.writeJSON(stockDocument(show, root))
	}
	p := stockPage{ascii: a.plain()}
	switch {
	case kind == "" && len(words) == 0:
		p.overview(all)
	case len(named) > 0 || len(show) == 1:
		p.entries(show)
		if len(named) > 0 {
			p.alsoAbout(about, named, words)
		}
	default:
		p.list(show)
	}
	if _, err := fmt.Fprint(a.out, p.b.String()); err != nil {
		return usage("cannot write: %v", err)
	}
	return nil
}

// stockOf is the stock of the house around a path, with the house's folder. Where
// there is no house it is the built-in one.
func (a *app) stockOf(path string) ([]house.StockItem, string, error) {
	h, err := check.Load(path, check.Options{})
	if list, ok := err.(diag.List); ok {
		if path != "." {
			return nil, "", a.refuse(list, "text")
		}
		return check.Builtin().StockItems(), "", nil
	}
	if err != nil {
		return nil, "", usage("cannot read %s: %v", path, reason(err))
	}
	return h.StockItems(), h.Root, nil
}

// stockKind gives the kind that a word names, in the singular or the plural, or
// "".
func stockKind(word string) string {
	for _, k := range house.StockKinds() {
		if word == k || word == k+"s" {
			return k
		}
	}
	return ""
}

func only(all []house.StockItem, want func(house.StockItem) bool) []house.StockItem {
	var out []house.StockItem
	for _, i := range all {
		if want(i) {
			out = append(out, i)
		}
	}
	return out
}

// isNamed says that the words are an entry's name.
func isNamed(i house.StockItem, words []string) bool {
	return len(words) > 0 && (strings.EqualFold(i.Name, strings.Join(words, " ")) || strings.EqualFold(i.Name, strings.Join(words, "-")))
}

// isAbout says that every word stands somewhere in an entry.
func isAbout(i house.StockItem, words []string) bool {
	text := []string{i.Kind, i.Name, i.Doc, i.From}
	for _, l := range i.Lines {
		text = append(text, l.Field+" "+l.Text, l.Source)
	}
	all := strings.ToLower(strings.Join(text, "\n"))
	for _, w := range words {
		if !strings.Contains(all, strings.ToLower(w)) {
			return false
		}
	}
	return true
}

// nothingInStock says that a search found nothing, and what is like it.
func (a *app) nothingInStock(kind string, words []string, in []house.StockItem, format, root string) error {
	if format == "json" {
		if err := a.writeJSON(stockDocument(nil, root)); err != nil {
			return err
		}
		return errSaid
	}
	what := "stock"
	if kind != "" {
		what = kind + "s"
	}
	message := fmt.Sprintf("nothing in the %s is about %q", what, strings.Join(words, " "))
	if near := nearStock(strings.Join(words, "-"), in); near != "" {
		message += "; did you mean `" + near + "`?"
	}
	a.say("%s\n`%s` lists them all.", diag.Safe(message, a.plain()), strings.TrimSpace("newmake stock "+kind))
	return errSaid
}

// nearStock is the entry whose name is most like a word, "" if none is.
func nearStock(word string, in []house.StockItem) string {
	best, distance := "", 3
	if len(word) < 4 {
		distance = 2
	}
	for _, i := range in {
		if d := spelling.Distance(strings.ToLower(word), i.Name); d < distance {
			best, distance = i.Name, d
		}
	}
	return best
}

// stockReport is the stock as one JSON document.
type stockReport struct {
	Format  string       `json:"format"`
	Version string       `json:"version"`
	House   string       `json:"house,omitempty"` // whose stock it is; none: the built-in one
	Entries []stockEntry `json:"entries"`
}

type stockEntry struct {
	Kind  string      `json:"kind"`
	Name  string      `json:"name"`
	Doc   string      `json:"doc,omitempty"`
	From  string      `json:"from,omitempty"` // the entry from which it begins
	House bool        `json:"house"`          // the house has it or changes it
	Own   bool        `json:"own"`            // only the house has it
	Lines []stockFact `json:"lines"`
}

type stockFact struct {
	Field  string   `json:"field"`
	Text   string   `json:"text"`
	Value  *float64 `json:"value,omitempty"`
	High   *float64 `json:"high,omitempty"` // of a range, which begins at value
	Unit   string   `json:"unit,omitempty"`
	Source string   `json:"source,omitempty"`
	House  bool     `json:"house"`
	Was    string   `json:"builtIn,omitempty"` // what the built-in line says
}

func stockDocument(items []house.StockItem, root string) stockReport {
	r := stockReport{Format: "newmake.stock", Version: "1.0", House: root, Entries: []stockEntry{}}
	for _, i := range items {
		e := stockEntry{Kind: i.Kind, Name: i.Name, Doc: i.Doc, From: i.From, House: i.House, Own: i.Own, Lines: []stockFact{}}
		for _, l := range i.Lines {
			f := stockFact{Field: l.Field, Text: l.Text, Source: l.Source, House: l.House, Was: l.Was}
			if n := l.Figure; n != nil {
				f.Value, f.Unit = &n.Low, n.Unit
				if n.High != n.Low {
					f.High = &n.High
				}
			}
			e.Lines = append(e.Lines, f)
		}
		r.Entries = append(r.Entries, e)
	}
	return r
}

// completeStock offers kinds first, then the names of that kind.
func (a *app) completeStock(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	all, _, err := a.stockOf(".")
	if err != nil || len(args) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var out []cobra.Completion
	kind := ""
	if len(args) == 0 {
		out = slices.Clone(house.StockKinds())
	} else if kind = stockKind(args[0]); kind == "" {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	for _, i := range all {
		if kind == "" || i.Kind == kind {
			out = append(out, cobra.CompletionWithDesc(i.Name, i.Kind))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}
