package explain

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/mattn/go-runewidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	_ "newmake/lang/testflag"
)

// TestEveryCodeHasAPage: by its number and by its name.
func TestEveryCodeHasAPage(t *testing.T) {
	for _, i := range diag.Table {
		for _, word := range []string{string(i.Code), i.Name} {
			found := find(word)
			if assert.NotEmpty(t, found, "%s (%s) has no page: a heading in the file of its family in lang/explain/pages", i.Code, i.Name) {
				assert.Equal(t, string(i.Code), found[0].Name)
				assert.NotEmpty(t, found[0].Body, "%s has an empty page", i.Code)
			}
		}
	}
}

// TestEveryPageIsOfSomething: no page of a code that is none, none twice.
func TestEveryPageIsOfSomething(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range written(quantity.Both) {
		require.NotEmpty(t, p.Body, p.Name)
		require.False(t, seen[p.Name], "two pages are called %s", p.Name)
		seen[p.Name] = true
		if p.Sort != OfTerm {
			_, known := diag.Lookup(diag.Code(p.Name))
			require.True(t, known, "a page of %s, which is no code", p.Name)
		}
	}
}

// TestEveryWordHasAPage: every word of the language, every unit and every entry
// of the library.
func TestEveryWordHasAPage(t *testing.T) {
	var words []string
	for _, p := range places() {
		if p.field.Name != "" {
			words = append(words, p.field.Name)
		}
		words = append(words, p.field.Words()...)
	}
	require.Greater(t, len(words), 150)
	for _, u := range quantity.All() {
		words = append(append(words, u.Name), u.Aliases...)
	}
	for _, s := range schema.SlotTypes {
		words = append(words, s.Name)
	}
	for name := range check.Builtin().Library.Grains {
		words = append(words, name)
	}
	for _, p := range schema.Promises {
		words = append(words, p.What)
	}
	for _, w := range words {
		assert.NotEmpty(t, find(w), "%s has no page", w)
	}
}

// TestTermsOfTheTrade: those that the messages and the documents lean on.
func TestTermsOfTheTrade(t *testing.T) {
	for _, w := range strings.Split(`backset, feints, foreshots, hearts, low wines, entry proof, proof gallon, wine gallon,
		bushel, set, draff, pot ale, spent lees, gelatinization, limit dextrin, diastatic power, Lintner, Plato,
		Rayleigh distillation, reflux, wash, wort, pitch, gauging, original gravity, standard of identity, methanol,
		hogshead, butt, quarter cask, first fill, refill, dunnage, racked, washback, puncheon, demisting test, third water, hot water tank,
		heads, tails, sparge, steep, setback, whiskey, corn meal, boiler horsepower, run record, ledger, cellar, trace,
		unfinished spirits`, ",") {
		w = strings.Join(strings.Fields(w), " ")
		assert.True(t, slices.ContainsFunc(find(w), func(p Page) bool { return p.Sort == OfTerm }), "%q is no term", w)
	}
}

// TestPagesFit: every page fits 80 columns, and what it refers to exists.
func TestPagesFit(t *testing.T) {
	refers := regexp.MustCompile("NM\\d{4}|`newmake explain ([a-zA-Z0-9-]+)`")
	for _, p := range Pages() {
		text := p.Text()
		for line := range strings.Lines(text) {
			require.LessOrEqual(t, runewidth.StringWidth(strings.TrimRight(line, "\n")), pageWidth, "%s: %s", p.Name, line)
		}
		for _, m := range refers.FindAllStringSubmatch(text, -1) {
			word := m[0]
			if m[1] != "" {
				word = m[1]
			}
			require.NotEmpty(t, find(word), "%s refers to %s", p.Name, word)
		}
	}
}

// A page says a sentence once.
func TestPagesDoNotRepeat(t *testing.T) {
	sentence := regexp.MustCompile(`[A-Z][^.]{80,}\.`)
	for _, p := range Pages() {
		if p.Sort != OfWord {
			continue
		}
		said := map[string]bool{}
		for _, b := range p.Body {
			for _, s := range sentence.FindAllString(b.Text, -1) {
				require.False(t, said[s], "%s says twice: %s", p.Name, s)
				said[s] = true
			}
		}
	}
	require.Equal(t, "Puts one in.", unsaid("Puts one in. STEP is what it does.", []Block{{Text: "`a`: Takes one out. STEP is what it does."}}))
	require.Equal(t, "Puts one in.", unsaid("Puts one in.", nil))
	require.Equal(t, "", unsaid("Puts one in.", []Block{{Text: "`a`: Puts one in."}}))
}

func TestFind(t *testing.T) {
	for _, c := range []struct{ word, first string }{
		{"NM0303", "NM0303"}, {"nm0303", "NM0303"}, {"no-unit", "NM0303"}, {"No unit", "NM0303"},
		{"low-wines", "low wines"}, {"Low Wines", "low wines"}, {"tails", "tails"}, {"heads", "heads"}, {"feints", "feints"}, {"setback", "backset"}, {"whiskey", "whisky"}, {"corn meal", "corn meal"}, {"corn-meal", "corn meal"}, {"lbs", "lb"}, {"heat", "heat"},
		{"303", "NM0303"}, {"0303", "NM0303"}, {"angel's share", "angels' share"}, {"angels share", "angels' share"}, {"foreshot", "foreshots"},
		{"low wine", "low wines"}, {"heart", "hearts"}, {"lauter", "drain"}, {"variant", "variant"}, {"variants", "variant"},
		{"promise", "promise"}, {"house", "house"},
		{"`heat`", "heat"}, {"straight-bourbon", "straight-bourbon"}, {"TEMP", "TEMP"},
	} {
		found := find(c.word)
		require.NotEmpty(t, found, c.word)
		require.Equal(t, c.first, found[0].Name, c.word)
	}
	units := func(word string) (names []string) {
		for _, p := range find(word) {
			if p.Sort == OfUnit {
				names = append(names, p.Name)
			}
		}
		return names
	}
	require.Equal(t, []string{"m"}, units("m"))
	require.Equal(t, []string{"mL"}, units("mL"))
	require.Equal(t, []string{"mL"}, units("ML"))
	for _, word := range []string{"", " ", "xyzzy", strings.Repeat("a", 1000)} {
		require.Empty(t, find(word))
		require.Empty(t, near(word))
	}
}

func TestNear(t *testing.T) {
	for word, want := range map[string]string{
		"forshots": "foreshots", "gelatinisation": "gelatinization", "NM0333": "NM0303", "backst": "backset",
		"gallons": "gal", "straight-burbon": "straight-bourbon", "hartes": "hearts",
	} {
		if len(find(word)) > 0 {
			continue
		}
		require.Contains(t, near(word), want, word)
	}
	var of, want []string
	for _, p := range familyPages("NM06") {
		of = append(of, p.Name)
	}
	for _, i := range diag.Table {
		if strings.HasPrefix(string(i.Code), "NM06") {
			want = append(want, string(i.Code))
		}
	}
	require.ElementsMatch(t, want, of, "a code of the family has no page in lang/explain/pages")
	require.Empty(t, familyPages("NM"))
	require.Empty(t, familyPages("cask"))
}

func TestReadInfo(t *testing.T) {
	e, known := ReadInfo("newmake wrong in cask also NM0950 as codes")
	require.True(t, known)
	require.Equal(t, Example{Lang: "newmake", Role: "wrong", In: "cask", Also: []string{"NM0950"}, As: "codes"}, e)
	e, known = ReadInfo("newmake right house")
	require.True(t, known)
	require.True(t, e.All)
	_, known = ReadInfo("newmake wrnog")
	require.False(t, known)
	for _, info := range []string{"", "newmake in", "newmake also", "newmake as"} {
		_, known = ReadInfo(info)
		require.True(t, known, info)
	}
}

// TestWrap: no word is lost, and none stands past the width unless it is wider.
func TestWrap(t *testing.T) {
	long := strings.Repeat("x", 100)
	for _, text := range []string{"", "one", strings.Repeat("word ", 60), long, "a " + long + " b"} {
		out := wrap(text, "- ", "  ")
		require.Equal(t, strings.Fields(text), strings.Fields(strings.TrimPrefix(out, "- ")))
		for line := range strings.Lines(out) {
			if !strings.Contains(line, long) {
				require.LessOrEqual(t, len(strings.TrimRight(line, "\n")), pageWidth)
			}
		}
	}
}

// ofOthers are the pages that are about what is not counted in litres, whose customary
// units stay for every reader.
var ofOthers = []string{
	"NM0301", "NM0302", "NM0307", "NM0308", "NM0607", "NM0104", // wrong units, and what is wrong with them
	"NM1314",                                                  // the gauging of the United States, by their tables
	"bushel", "BUSHELS", "TESTWEIGHT", "grain", "test weight", // grain by measure
	"bill", "rest", "lot", // which names all ways of writing a grain
	"proof", "PROOFGAL", "PROOFPERYEAR", "proof gallon", "US gallon", "ounce", "boiler horsepower",
	"abv", "cask", "yield", "liquor", "gristing", "excise", // which compare the two systems
}

// TestPagesInLitres: who counts in litres reads no customary unit, but on the pages about
// one, in what a regulation says, and in the remarks of the library, whose sources
// measured so.
func TestPagesInLitres(t *testing.T) {
	customary := regexp.MustCompile(`(?i)\bbushels?\b|[0-9] proof\b|\bgallons?\b|\bpounds?\b|Fahrenheit|\bgal\b|\bpg\b|27 CFR`)
	symbols := regexp.MustCompile(`[0-9] (F|lb|lbs|oz|ft)\b`)
	law := regexp.MustCompile(`[^.]*\(?27 CFR[^.]*\.[^A-Z]*`)
	excused := map[string]bool{}
	for _, p := range PagesFor(quantity.SI) {
		for _, b := range p.Body {
			text := law.ReplaceAllString(b.Text, "")
			found := customary.FindString(text) + symbols.FindString(text)
			switch {
			case found == "" || p.Sort == OfUnit || p.Sort == OfLibrary:
			case slices.Contains(ofOthers, p.Name):
				excused[p.Name] = true
			default:
				t.Errorf("%s says %q: %s", p.Name, found, text)
			}
		}
	}
	for _, name := range ofOthers {
		assert.True(t, excused[name], "%s needs no excuse", name)
	}
}
