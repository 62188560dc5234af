// Package formats holds the forms in which answers are written: their names, the
// endings of files that choose them, and what writes each.
package formats

import (
	"path/filepath"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/words"
)

// Format is one way of writing an answer, with the ending that chooses it.
type Format struct{ Name, Ending string }

// Ways is the formats that one answer can be written in; the first is for
// standard output.
type Ways []Format

// What a plan can be written as, what its variants and a comparison can, and what
// an answer in words can.
var (
	OfPlan = Ways{
		{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}, {"csv", ".csv"}, {"ics", ".ics"}, {"md", ".md"},
	}
	OfVariants   = Ways{{"text", ".txt"}, {"json", ".json"}, {"md", ".md"}}
	OfComparison = Ways{{"text", ".txt"}, {"md", ".md"}, {"json", ".json"}, {"html", ".html"}}
	OfAnswer     = Ways{{"text", ".txt"}, {"json", ".json"}}
	OfCellar     = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}, {"csv", ".csv"}, {"ics", ".ics"}}
	OfLedger     = Ways{{"text", ".txt"}, {"md", ".md"}, {"json", ".json"}, {"csv", ".csv"}}
	OfTrial      = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}}
	OfReview     = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}}
	OfOdds       = Ways{{"text", ".txt"}, {"json", ".json"}, {"csv", ".csv"}, {"md", ".md"}}
)

// recipeEnding is the ending of what a house's people write.
const recipeEnding = ".batch"

// Standard says that an output is standard output.
func Standard(output string) bool { return output == "" || output == "-" }

// NoRecipe refuses to write where a house would read it as a recipe.
func (w Ways) NoRecipe(output string) error {
	if strings.EqualFold(filepath.Ext(output), recipeEnding) {
		return diag.Refuse("%s is the ending of recipes, which are written by hand: end %s in %s", recipeEnding, output, w.endings())
	}
	return nil
}

// Choose finds the format from its name, or from the ending of the file to be
// written.
func (w Ways) Choose(name, output string) (string, error) {
	if err := w.NoRecipe(output); err != nil {
		return "", err
	}
	for _, f := range w {
		if name == f.Name {
			return f.Name, nil
		}
	}
	if name != "" {
		return "", diag.Refuse("there is no format %q: write %s", name, words.Or(w.Names()))
	}
	if Standard(output) {
		return w[0].Name, nil
	}
	ending := strings.ToLower(filepath.Ext(output))
	for _, f := range w {
		if ending == f.Ending {
			return f.Name, nil
		}
	}
	return "", diag.Refuse("the ending of %s does not say what to write: end it in %s, or give --format", output, w.endings())
}

// Names are those of the formats, in order.
func (w Ways) Names() []string {
	var names []string
	for _, f := range w {
		names = append(names, f.Name)
	}
	return names
}

func (w Ways) endings() string {
	var all []string
	for _, f := range w {
		all = append(all, f.Ending)
	}
	return words.Or(all)
}
