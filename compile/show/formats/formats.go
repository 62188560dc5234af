// Package formats holds the forms in which answers are written: their names, the
// endings of files that choose them, and what writes each.
package formats

import (
	"bytes"
	"fmt"
	"io"
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

// The formats of answers that their commands write themselves. Those of a plan, of books
// and of a season stand beside what writes them.
var (
	OfAnswer = Ways{{"text", ".txt"}, {"json", ".json"}}
	OfTrial  = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}}
	OfReview = Ways{{"text", ".txt"}, {"html", ".html"}, {"json", ".json"}}
	OfOdds   = Ways{{"text", ".txt"}, {"json", ".json"}, {"csv", ".csv"}, {"md", ".md"}}
)

// form is a format of an answer T, with what writes it by the options O.
type form[T, O any] struct {
	name, ending string
	write        func(io.Writer, T, O) error
}

// ways is the formats of a table.
func ways[T, O any](forms []form[T, O]) Ways {
	out := make(Ways, len(forms))
	for i, f := range forms {
		out[i] = Format{f.name, f.ending}
	}
	return out
}

// written is an answer in one of the formats of a table, by its name.
func written[T, O any](forms []form[T, O], name string, answer T, o O) ([]byte, error) {
	for _, f := range forms {
		if f.name == name {
			var out bytes.Buffer
			err := f.write(&out, answer, o)
			return out.Bytes(), err
		}
	}
	return nil, fmt.Errorf("there is no format %q", name)
}

// recipeEnding is the ending of what a house's people write.
const recipeEnding = ".batch"

// Standard reports whether an output is standard output.
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
