package main

import (
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/quantity"
)

// texts are the files of a house, by their paths below it.
type texts map[string]string

// names are the paths, in order.
func (x texts) names() []string { return slices.Sorted(maps.Keys(x)) }

// parted are the paths of the library, and the others.
func (x texts) parted() (library, other []string) {
	for _, name := range x.names() {
		if strings.HasPrefix(name, "library/") {
			library = append(library, name)
		} else {
			other = append(other, name)
		}
	}
	return library, other
}

// sound is a house without errors from which others are bred.
type sound struct {
	name  string
	files texts
}

// soundHouses are the examples, the published cases, what init writes, and two
// houses that write the whole library anew.
func soundHouses(t testing.TB) []sound {
	t.Helper()
	var all []sound
	for _, glob := range []string{"../../examples/*", "../../testdata/houses/*", "testdata/pages", "internal/newhouse/template/*"} {
		houses, err := filepath.Glob(glob + "/house.batch")
		require.NoError(t, err)
		require.NotEmpty(t, houses, glob)
		for _, house := range houses {
			folder := filepath.Dir(house)
			all = append(all, sound{filepath.Base(folder), readTexts(t, folder)})
		}
	}
	library := readTexts(t, "../../stdlib")
	for _, h := range all[1:3] { // the first puts a figure over the library already
		own := maps.Clone(h.files)
		for name, text := range library {
			own["library/"+name] = text
		}
		all = append(all, sound{h.name + ", own library", own})
	}
	return all
}

func readTexts(t testing.TB, folder string) texts {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(folder, "*.batch"))
	require.NoError(t, err)
	require.NotEmpty(t, paths, folder)
	x := texts{}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		x[filepath.Base(path)] = string(data)
	}
	return x
}

// vocabulary is what a house's text is made of, by the kind of token.
type vocabulary map[lang.TokenKind][]string

func vocabularyOf(houses []sound) vocabulary {
	seen := map[lang.TokenKind]map[string]bool{}
	add := func(kind lang.TokenKind, word string) {
		if seen[kind] == nil {
			seen[kind] = map[string]bool{}
		}
		seen[kind][word] = true
	}
	for _, h := range houses {
		for _, text := range h.files {
			for _, tok := range lang.Tokens([]byte(text)) {
				add(tok.Kind, text[tok.Start:tok.End])
			}
		}
	}
	for _, u := range quantity.All() {
		add(lang.TokUnit, u.Name)
	}
	for _, date := range []string{"0001-01-01", "1900-02-29", "2024-02-29", "2026-13-01", "2037-12-31", "2099-06-30", "9999-12-31"} {
		add(lang.TokDate, date)
	}
	for _, zone := range []string{`"Europe/Dublin"`, `"Australia/Lord_Howe"`, `"Pacific/Apia"`, `"Local"`, `"Nowhere/None"`, `""`} {
		add(lang.TokString, zone)
	}
	words := vocabulary{}
	for kind, set := range seen {
		for word := range set {
			words[kind] = append(words[kind], word)
		}
		slices.Sort(words[kind])
	}
	return words
}

// draw gives a number from 0 to below n.
type draw func(n int) int

// drawn draws from a seed, without end.
func drawn(seed uint64) draw {
	r := rand.New(rand.NewPCG(seed, 9))
	return r.IntN
}

// drawnFrom draws from bytes: two for each number, and zeros when they are out.
// left says how many there still are.
func drawnFrom(data []byte) (d draw, left func() int) {
	return func(n int) int {
		if len(data) < 2 {
			data = nil
			return 0
		}
		v := int(data[0])<<8 | int(data[1])
		data = data[2:]
		return v % n
	}, func() int { return len(data) }
}

// mutator changes the texts of a house as tired people, bad merges and hostile
// ones do.
type mutator struct {
	draw
	words   vocabulary
	files   texts
	changed map[string]bool
}

// mutations are the ways a text goes wrong. One that stands twice comes twice as
// often: most houses should still be read, or only the checker is tried.
var mutations = []func(m *mutator, name string){
	(*mutator).scaleNumber, (*mutator).scaleNumber, (*mutator).scaleNumber, (*mutator).scaleNumber,
	(*mutator).scaleNumber, (*mutator).scaleNumber, (*mutator).scaleNumber, (*mutator).scaleNumber,
	(*mutator).nudgeNumber, (*mutator).nudgeNumber, (*mutator).nudgeNumber, (*mutator).nudgeNumber,
	(*mutator).nudgeNumber, (*mutator).nudgeNumber, (*mutator).nudgeNumber, (*mutator).nudgeNumber,
	(*mutator).oddNumber, (*mutator).oddNumber,
	(*mutator).otherToken, (*mutator).otherToken, (*mutator).otherToken,
	(*mutator).otherUnit,
	(*mutator).deleteLine, (*mutator).deleteLine, (*mutator).deleteLine,
	(*mutator).doubleLine,
	(*mutator).swapLines, (*mutator).swapLines,
	(*mutator).moveLine,
	(*mutator).moveLineAway,
	(*mutator).cutBlock, (*mutator).doubleBlock,
	(*mutator).misspell,
	(*mutator).dropToken, (*mutator).strayMark,
}

// mutate changes one thing in one file: as often in a house's library, if it has
// its own, as in what else there is.
func (m *mutator) mutate() {
	library, names := m.files.parted()
	if len(library) > 0 && m.draw(2) == 0 {
		names = library
	}
	name := names[m.draw(len(names))]
	m.changed[name] = true
	mutations[m.draw(len(mutations))](m, name)
}

// token finds a token that is of one of some kinds; ok is false if there is none.
func (m *mutator) token(name string, kinds ...lang.TokenKind) (at lang.Token, ok bool) {
	all := slices.DeleteFunc(lang.Tokens([]byte(m.files[name])), func(t lang.Token) bool { return !slices.Contains(kinds, t.Kind) })
	if len(all) == 0 {
		return at, false
	}
	return all[m.draw(len(all))], true
}

func (m *mutator) put(name string, at lang.Token, text string) {
	old := m.files[name]
	m.files[name] = old[:at.Start] + text + old[at.End:]
}

// nudgeNumber makes a number a little larger or smaller, as a distiller would.
func (m *mutator) nudgeNumber(name string) { m.times(name, 0.8, 0.9, 0.97, 1.03, 1.1, 1.25) }

// scaleNumber gets a number wrong by much, or its sign.
func (m *mutator) scaleNumber(name string) {
	m.times(name, 0.5, 2, 3, 0.3, 0.1, 10, 0.01, 100, 1e-3, 1e3, 1e-6, 1e6, 1e9, -1)
}

func (m *mutator) times(name string, by ...float64) {
	at, ok := m.token(name, lang.TokNumber)
	if !ok {
		return
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(m.files[name][at.Start:at.End], ",", ""), 64)
	if err != nil {
		return
	}
	m.put(name, at, strconv.FormatFloat(v*by[m.draw(len(by))], 'f', -1, 64))
}

func (m *mutator) oddNumber(name string) {
	at, ok := m.token(name, lang.TokNumber)
	if !ok {
		return
	}
	odd := []string{"0", "0.0", "-0", "1", "100", "0.0000001", "99,999,999", "-1", "1,3", ".5", "1e9", "00012", "NaN", strings.Repeat("9", 400), "0." + strings.Repeat("0", 400) + "1", "12..14", "14..12", "1/2", "1/0"}
	m.put(name, at, odd[m.draw(len(odd))])
}

// otherToken puts another word, name, unit, date or time of day in one's place.
func (m *mutator) otherToken(name string) {
	at, ok := m.token(name, lang.TokWord, lang.TokString, lang.TokUnit, lang.TokDate, lang.TokClock)
	if !ok {
		return
	}
	words := m.words[at.Kind]
	m.put(name, at, words[m.draw(len(words))])
}

// otherUnit puts a unit after a number in place of what stands there.
func (m *mutator) otherUnit(name string) {
	tokens := lang.Tokens([]byte(m.files[name]))
	var after []lang.Token
	for i := 1; i < len(tokens); i++ {
		if k := tokens[i].Kind; tokens[i-1].Kind == lang.TokNumber && (k == lang.TokUnit || k == lang.TokWord) {
			after = append(after, tokens[i])
		}
	}
	if len(after) > 0 {
		at, words := after[m.draw(len(after))], m.words[lang.TokUnit]
		m.put(name, at, words[m.draw(len(words))])
	}
}

func (m *mutator) misspell(name string) {
	at, ok := m.token(name, lang.TokWord, lang.TokString)
	if !ok {
		return
	}
	word := []byte(m.files[name][at.Start:at.End])
	i := m.draw(len(word))
	switch m.draw(4) {
	case 0:
		word = slices.Delete(word, i, i+1)
	case 1:
		word = slices.Insert(word, i, word[i])
	case 2:
		word[i] = 'a' + byte(m.draw(26))
	default:
		j := min(i+1, len(word)-1)
		word[i], word[j] = word[j], word[i]
	}
	m.put(name, at, string(word))
}

func (m *mutator) dropToken(name string) {
	if at, ok := m.token(name, lang.TokNumber, lang.TokUnit, lang.TokWord, lang.TokComma, lang.TokRange, lang.TokOpen, lang.TokClose, lang.TokNewline); ok {
		m.put(name, at, "")
	}
}

// strayMark writes something that has no business where it stands.
func (m *mutator) strayMark(name string) {
	marks := []string{"{", "}", `"`, ",", "..", "#", "\n", "\r", "\x00", "\x1b[2J", "\xff", "\u202e", "\u00a0", "°", "“", "<b>", "=1+1", "\ufeff", "é"}
	text := m.files[name]
	at := m.draw(len(text) + 1)
	m.files[name] = text[:at] + marks[m.draw(len(marks))] + text[at:]
}

// lines gives the lines of a text to a function that changes them.
func (m *mutator) lines(name string, do func(lines []string) []string) {
	m.files[name] = strings.Join(do(strings.Split(m.files[name], "\n")), "\n")
}

func (m *mutator) deleteLine(name string) {
	m.lines(name, func(l []string) []string {
		i := m.draw(len(l))
		return slices.Delete(l, i, i+1)
	})
}

func (m *mutator) doubleLine(name string) {
	m.lines(name, func(l []string) []string {
		i := m.draw(len(l))
		return slices.Insert(l, i, l[i])
	})
}

func (m *mutator) swapLines(name string) {
	m.lines(name, func(l []string) []string {
		i := m.draw(len(l))
		j := min(i+1+m.draw(3), len(l)-1)
		l[i], l[j] = l[j], l[i]
		return l
	})
}

func (m *mutator) moveLine(name string) { m.moveLineTo(name, name) }

// moveLineAway moves a line into another file, or the same if there is no other.
func (m *mutator) moveLineAway(name string) {
	names := m.files.names()
	m.moveLineTo(name, names[m.draw(len(names))])
}

func (m *mutator) moveLineTo(from, to string) {
	var line string
	m.lines(from, func(l []string) []string {
		i := m.draw(len(l))
		line = l[i]
		return slices.Delete(l, i, i+1)
	})
	m.changed[to] = true
	m.lines(to, func(l []string) []string { return slices.Insert(l, m.draw(len(l)+1), line) })
}

// block finds the lines of a block, its head and its closing brace with them.
func (m *mutator) block(lines []string) (from, to int, ok bool) {
	var heads []int
	for i, line := range lines {
		if strings.Contains(line, "{") {
			heads = append(heads, i)
		}
	}
	if len(heads) == 0 {
		return 0, 0, false
	}
	from = heads[m.draw(len(heads))]
	depth := 0
	for to = from; to < len(lines); to++ {
		depth += strings.Count(lines[to], "{") - strings.Count(lines[to], "}")
		if depth <= 0 {
			return from, to + 1, true
		}
	}
	return from, len(lines), true
}

func (m *mutator) cutBlock(name string) {
	m.lines(name, func(l []string) []string {
		from, to, ok := m.block(l)
		if !ok {
			return l
		}
		return slices.Delete(l, from, to)
	})
}

func (m *mutator) doubleBlock(name string) {
	m.lines(name, func(l []string) []string {
		from, to, ok := m.block(l)
		if !ok {
			return l
		}
		return slices.Insert(l, to, slices.Clone(l[from:to])...)
	})
}

// mutant is a house that was bred, and the one it comes from.
type mutant struct {
	parent  sound
	files   texts
	changed []string // files that differ
}

// breed makes a mutant by one to four changes.
func breed(houses []sound, words vocabulary, d draw, more func() bool) mutant {
	parent := houses[d(len(houses))]
	m := &mutator{draw: d, words: words, files: maps.Clone(parent.files), changed: map[string]bool{}}
	for n := []int{1, 1, 1, 2, 2, 4}[d(6)]; n > 0 && more(); n-- {
		m.mutate()
	}
	out := mutant{parent: parent, files: m.files}
	for _, name := range m.files.names() {
		if m.files[name] != parent.files[name] {
			out.changed = append(out.changed, name)
		}
	}
	return out
}
