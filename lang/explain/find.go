package explain

import (
	"slices"
	"strings"

	"newmake/lang/spelling"
)

// find gives the pages on a word: a code, also by its number alone, a word of the language, a unit or a
// term. Capitals and hyphens do not matter, but that M is no m where units
// differ in that alone.
func find(word string) []Page { return findIn(Pages(), word) }

func findIn(pages []Page, word string) []Page {
	word = strings.Trim(strings.TrimSpace(word), "`\"")
	if word == "" {
		return nil
	}
	if len(word) <= 4 && strings.Trim(word, "0123456789") == "" {
		word = "NM" + strings.Repeat("0", 4-len(word)) + word
	}
	exact := func(p Page) bool { return p.called(word, func(name string) string { return name }) }
	folded := fold(word)
	found := slices.DeleteFunc(slices.Clone(pages), func(p Page) bool { return !p.called(folded, fold) })
	if len(found) == 0 { // one for many, many for one: angel's share, low wine
		one := singular(word)
		found = slices.DeleteFunc(slices.Clone(pages), func(p Page) bool { return p.Sort == OfUnit || !p.called(one, singular) })
	}
	if slices.ContainsFunc(found, func(p Page) bool { return p.Sort == OfUnit && exact(p) }) {
		found = slices.DeleteFunc(found, func(p Page) bool { return p.Sort == OfUnit && !exact(p) })
	}
	return found
}

// familyPages gives the pages of the codes that begin with a few characters, as NM06.
func familyPages(prefix string) []Page {
	if len(prefix) < 3 || !strings.HasPrefix(strings.ToUpper(prefix), "NM") {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(Pages()), func(p Page) bool {
		return p.Sort != OfCode || !strings.HasPrefix(p.Name, strings.ToUpper(prefix))
	})
}

// called reports whether a page has a name that comes to a word as names are compared.
func (p Page) called(word string, as func(name string) string) bool {
	return as(p.Name) == word || slices.ContainsFunc(p.Also, func(other string) bool { return as(other) == word })
}

// fold makes low-wines, Low wines and low_wines one word.
func fold(word string) string {
	return marks.Replace(strings.ToLower(strings.Join(strings.Fields(word), " ")))
}

var marks = strings.NewReplacer("-", " ", "_", " ")

// singular folds a word and takes out its apostrophes and each part's final s.
func singular(word string) string {
	parts := strings.Fields(fold(strings.NewReplacer("'", "", "’", "").Replace(word)))
	for i, part := range parts {
		if len(part) > 2 {
			parts[i] = strings.TrimSuffix(part, "s")
		}
	}
	return strings.Join(parts, " ")
}

// near gives the names of pages that are spelt nearly as a word, best first, at
// most three.
func near(word string) []string {
	word = fold(word)
	if word == "" || len(word) > 60 {
		return nil
	}
	if other := spelling.Called(strings.ReplaceAll(word, " ", "-"), Names()); other != "" {
		return []string{other}
	}
	limit := 1
	if len(word) > 4 {
		limit = 2
	}
	best := map[string]int{}
	var names []string
	for _, p := range Pages() {
		for _, name := range append([]string{p.Name}, p.Also...) {
			d := spelling.Distance(word, fold(name))
			if strings.HasPrefix(fold(name), word) && len(word) > 2 {
				d = min(d, 1)
			}
			if d > limit || d >= len(name) {
				continue
			}
			if had, ok := best[p.Name]; !ok {
				names, best[p.Name] = append(names, p.Name), d
			} else {
				best[p.Name] = min(had, d)
			}
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return best[a] - best[b] })
	return names[:min(3, len(names))]
}

// Names lists what can be asked for, each once: for completion.
func Names() []string {
	var out []string
	for _, p := range Pages() {
		out = append(out, p.Name)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
