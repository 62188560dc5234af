package vocabulary_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/check"
	"newmake/lang/recipe"
	_ "newmake/lang/testflag"
	"newmake/lang/vocabulary"
)

func stock() *vocabulary.Words { return vocabulary.Of(check.Builtin().Library.Aromas) }

func found(w *vocabulary.Words, text string) (out []string) {
	for _, h := range w.In(text) {
		out = append(out, h.Aroma.Name+": "+h.Word.Word)
	}
	return out
}

// The longest that fits is found, in the plural and as what is like it; what is said to be
// absent is not.
func TestFound(t *testing.T) {
	for text, want := range map[string][]string{
		"green apple, apples":            {"heads: green apple", "ferment: apple"},
		"Pear drops over nutty BISCUIT.": {"ferment: pear drops", "grain: nut", "grain: biscuit"},
		"smoky, oaky; buttery":           {"wood: smoke", "wood: oak", "ferment: butter"},
		"no solvent, without smoke, oak": {"wood: oak"},
		"oak and oak again":              {"wood: oak"},
		"must wait; applesauce":          nil,
		"":                               nil,
	} {
		assert.Equal(t, want, found(stock(), text), text)
	}
}

// A house's word goes before the library's of the same name.
func TestHousesOwn(t *testing.T) {
	all := map[string]*recipe.Aroma{}
	for name, a := range check.Builtin().Library.Aromas {
		all[name] = a
	}
	all["spice"] = &recipe.Aroma{Entry: recipe.Entry{Name: "spice", House: true}, Words: []recipe.AromaWord{{Word: "clove"}}}
	assert.Equal(t, []string{"spice: clove"}, found(vocabulary.Of(all), "clove"))
}

// What a slip is, and just not any more: one letter; of a longer word one that is another;
// a letter doubled; of short words and of other forms none.
func TestSlips(t *testing.T) {
	for said, want := range map[string]string{
		"vannila": "vanilla", "vanila": "vanilla", "vanlila": "vanilla", "cinamon": "cinnamon", "carmel": "caramel",
		"cocanut": "coconut", "tobbaco": "tobacco", "leahter": "leather", "bananna": "banana", "solvant": "solvent",
		"vanilla": "", "bitter": "", "better": "", "oka": "", "tosat": "toast", "toasted": "", "smoky": "", "smoker": "",
		"grassy": "", "varmish": "varnish", "tarnish": "", "vamilas": "", "peppery": "", "sweet": "",
	} {
		got := ""
		if s := stock().Slips("a " + said + " there"); len(s) > 0 {
			got = s[0].Word
			assert.Equal(t, said, ("a " + said + " there")[s[0].Start:s[0].End])
		}
		assert.Equal(t, want, got, said)
	}
}

// No word of the vocabulary is a slip of another, nor found as another.
func TestStock(t *testing.T) {
	w := stock()
	for _, h := range w.All() {
		assert.Empty(t, w.Slips(h.Word.Word), h.Word.Word)
		assert.Equal(t, []string{h.Aroma.Name + ": " + h.Word.Word}, found(w, h.Word.Word))
	}
}
