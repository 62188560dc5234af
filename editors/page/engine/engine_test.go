package engine

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/front"
	"newmake/compile/show/inlay"
	"newmake/lang/assist"
	"newmake/lang/testflag"
)

// houseOn reads an example house as the page holds it.
func houseOn(t testing.TB, name string) map[string]string {
	t.Helper()
	root := "../../../examples/" + name
	files := map[string]string{}
	require.NoError(t, filepath.WalkDir(root, func(p string, d os.DirEntry, err error) error {
		if err == nil && filepath.Ext(p) == front.Ending {
			text, err := os.ReadFile(p)
			if err != nil {
				return err
			}
			rel, _ := filepath.Rel(root, p)
			files[filepath.ToSlash(rel)] = string(text)
		}
		return err
	}))
	return files
}

func ask(t testing.TB, e *Engine, q Question) Answer {
	t.Helper()
	question, err := json.Marshal(q)
	require.NoError(t, err)
	var a Answer
	require.NoError(t, json.Unmarshal(e.Ask(question), &a))
	return a
}

// unitsOf are the UTF-16 units of a text, as a browser has it.
func unitsOf(text string) []uint16 { return utf16.Encode([]rune(text)) }

func part(text string, from, to int) string { return string(utf16.Decode(unitsOf(text)[from:to])) }

func behind(t testing.TB, text, words string) int {
	t.Helper()
	i := strings.Index(text, words)
	require.GreaterOrEqual(t, i, 0, words)
	return len(unitsOf(text[:i+len(words)]))
}

const ferry = "ferry-landing.batch"

func TestExamplesAreSilent(t *testing.T) {
	for house, file := range map[string]string{"lantern-hollow": ferry, "herring-stair": "grey-creel.batch"} {
		files := houseOn(t, house)
		e := &Engine{}
		a := ask(t, e, Question{Ask: "check", Files: files, File: file})
		assert.Empty(t, a.Problem)
		assert.Empty(t, a.Said, house)
		assert.NotEmpty(t, a.Tokens)
		a = ask(t, e, Question{Ask: "plan", Files: files, File: file})
		assert.Empty(t, a.Problem)
		assert.NotEmpty(t, a.Batches)
		assert.Contains(t, a.Page, "<h1")
		for _, said := range a.Said {
			for _, d := range said {
				assert.NotEqual(t, "error", d.Severity, d.Summary)
			}
		}
	}
}

// TestAsTheServerSays: predictions and proposals are those that an editor is given.
func TestAsTheServerSays(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	e := &Engine{}
	a := ask(t, e, Question{Ask: "plan", Files: files, File: ferry})
	src, err := front.Load(front.Place{Path: "../../../examples/lantern-hollow"})
	require.NoError(t, err)
	src.Path = filepath.Join(src.House.Root, ferry)
	var want []string
	for _, name := range src.House.BatchesIn(src.Path) {
		made, err := src.Plan(name, nil)
		require.NoError(t, err)
		for _, h := range inlay.Hints(src.House.Find(name), made.Recipe, made.Plan, made.Recipe.Units) {
			want = append(want, h.Text)
		}
	}
	var got []string
	for _, h := range a.Hints {
		got = append(got, h.Text)
		assert.Greater(t, h.At, 0)
		assert.NotContains(t, h.More, "newmake ", "a page has no command line")
	}
	assert.ElementsMatch(t, want, got)

	text := strings.Replace(files[ferry], "heat     to 190 F", "heat     to 190 ", 1)
	files[ferry] = text
	a = ask(t, e, Question{Ask: "complete", Files: files, File: ferry, At: behind(t, text, "heat     to 190 ")})
	var labels []string
	for _, p := range a.Proposals {
		labels = append(labels, p.Label)
		assert.Equal(t, "unit", p.Sort)
	}
	assert.Equal(t, []string{"F", "C", "K"}, labels)
	for _, sort := range []assist.Sort{assist.Line, assist.Word, assist.Name, assist.Unit, assist.Value} {
		assert.NotEmpty(t, proposalSorts[sort])
	}
}

// TestMistake: it is marked where it stands, in the units of a browser, the fix mends it,
// and the sheet stands again.
func TestMistake(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	was := files[ferry]
	for i, before := range []string{mark + "# 𝛼\n", "", "# 𝛼 größe\n", mark} {
		if i%testflag.Every(4) != 0 {
			continue
		}
		text := before + strings.Replace(was, "rest     20 min", "rest     20 minuts", 1)
		files[ferry] = text
		e := &Engine{}
		a := ask(t, e, Question{Ask: "check", Files: files, File: ferry})
		require.Len(t, a.Said[ferry], 1, "%q", before)
		d := a.Said[ferry][0]
		assert.Equal(t, "error", d.Severity)
		assert.Contains(t, part(text, d.From, d.To), "minuts")
		require.NotNil(t, d.Fix)
		units := unitsOf(text)
		mended := string(utf16.Decode(units[:d.Fix.From])) + d.Fix.Text + string(utf16.Decode(units[d.Fix.To:]))
		assert.Equal(t, before+was, mended)

		a = ask(t, e, Question{Ask: "plan", Files: files, File: ferry})
		assert.Empty(t, a.Page, "nothing is shown of a text with errors")
		assert.Len(t, a.Said[ferry], 1)
		files[ferry] = mended
		a = ask(t, e, Question{Ask: "plan", Files: files, File: ferry, Sure: true})
		assert.NotEmpty(t, a.Page)
		assert.Contains(t, a.Page, "±")
		for _, tok := range ask(t, e, Question{Ask: "check", Files: files, File: ferry}).Tokens {
			if tok.Sort == "comment" {
				assert.Equal(t, "#", part(mended, tok.From, tok.From+1))
			}
		}
	}
}

func TestHoverAndDefinition(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	e := &Engine{}
	text := files[ferry]
	a := ask(t, e, Question{Ask: "hover", Files: files, File: ferry, At: behind(t, text, "to 190")})
	assert.Contains(t, a.Words, "87.8 C")
	assert.Contains(t, a.Words, "\n\n", "it has its lines")
	assert.Contains(t, part(text, a.From, a.To), "190 F")
	a = ask(t, e, Question{Ask: "definition", Files: files, File: ferry, At: behind(t, text, `mash in "Copper`)})
	assert.Equal(t, "house.batch", a.File)
	assert.Contains(t, part(files["house.batch"], a.From, a.To), "Copper kettle")
	a = ask(t, e, Question{Ask: "hover", Files: files, File: ferry, At: 1 << 30})
	assert.Empty(t, a.Words)
}

func TestSlide(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	for _, before := range []string{"", "# 𝛼 größe\n", mark} {
		text := before + files[ferry]
		now := maps.Clone(files)
		now[ferry] = text
		a := ask(t, &Engine{}, Question{Ask: "slide", Files: now, File: ferry, At: behind(t, text, "corn             68")})
		require.NotNil(t, a.Slider)
		assert.Equal(t, []any{"corn", "%"}, []any{a.Slider.Label, a.Slider.Unit})
		for i, p := range a.Slider.Places {
			assert.Equal(t, part(text, p.From, p.To), a.Slider.Texts[a.Slider.Now][i])
		}
		units := unitsOf(text)
		for i := len(a.Slider.Places) - 1; i >= 0; i-- { // moved: the house is still without errors
			p := a.Slider.Places[i]
			units = slices.Concat(units[:p.From:p.From], unitsOf(a.Slider.Texts[a.Slider.Now+5][i]), units[p.To:])
		}
		now[ferry] = string(utf16.Decode(units))
		assert.NotEmpty(t, ask(t, &Engine{}, Question{Ask: "plan", Files: now, File: ferry}).Page)
	}
	assert.Nil(t, ask(t, &Engine{}, Question{Ask: "slide", Files: files, File: ferry, At: 3}).Slider)
}

func TestFormat(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	text := files[ferry]
	files[ferry] = strings.Replace(text, "rest     45 min", "rest 45     min", 1)
	assert.Equal(t, text, ask(t, &Engine{}, Question{Ask: "format", Files: files, File: ferry}).Text)
	files[ferry] = strings.Replace(text, "}", "", 1)
	a := ask(t, &Engine{}, Question{Ask: "format", Files: files, File: ferry})
	assert.Empty(t, a.Text)
	assert.Contains(t, a.Problem, "mistake")
}

func TestCompare(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	now := maps.Clone(files)
	now[ferry] = strings.Replace(now[ferry], "rest     45 min", "rest     30 min", 1)
	a := ask(t, &Engine{}, Question{Ask: "compare", Files: now, Old: files, File: ferry, Batch: "Ferry Landing"})
	assert.Empty(t, a.Problem)
	assert.Contains(t, a.Page, "45 min")
	assert.Contains(t, a.Page, "30 min")
	now[ferry] = strings.Replace(now[ferry], "rest     30 min", "rest     30", 1)
	a = ask(t, &Engine{}, Question{Ask: "compare", Files: now, Old: files, File: ferry, Batch: "Ferry Landing"})
	assert.Contains(t, a.Problem, "the version now has a mistake")
	assert.Contains(t, a.Problem, ferry+":")
	a = ask(t, &Engine{}, Question{Ask: "compare", Files: files, Old: map[string]string{}, File: ferry})
	assert.NotEmpty(t, a.Problem)
}

func TestExplain(t *testing.T) {
	assert.Contains(t, ask(t, &Engine{}, Question{Ask: "explain", Word: "NM0303"}).Words, "unit")
	assert.NotEmpty(t, ask(t, &Engine{}, Question{Ask: "explain", Word: "no such thing at all"}).Problem)
}

// TestPacked: what is packed comes back, by address and by file.
func TestPacked(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	files["größe.batch"] = mark + "# 𝛼\r\n"
	for pack, unpack := range map[string]string{"pack": "unpack", "zip": "unzip"} {
		data := ask(t, &Engine{}, Question{Ask: pack, Files: files}).Data
		assert.Equal(t, data, ask(t, &Engine{}, Question{Ask: pack, Files: files}).Data, "the same bytes")
		a := ask(t, &Engine{}, Question{Ask: unpack, Data: data})
		assert.Empty(t, a.Problem)
		assert.Equal(t, files, a.Files)
	}
	assert.Regexp(t, `^[A-Za-z0-9_-]+$`, ask(t, &Engine{}, Question{Ask: "pack", Files: files}).Data, "an address takes it as it is")
}

// TestNotAHouse: what carries no house, or too much of one, is refused with a reason.
func TestNotAHouse(t *testing.T) {
	pack := func(files map[string]string) string { return packed(Question{Files: files}).Data }
	zip := func(files map[string]string) string { return zipped(Question{Files: files}).Data }
	large := strings.Repeat("a", maxBytes)
	for name, q := range map[string]Question{
		"no base64":       {Ask: "unpack", Data: "<script>"},
		"no deflate":      {Ask: "unpack", Data: "AAAA"},
		"nothing":         {Ask: "unpack"},
		"no texts":        {Ask: "unpack", Data: pack(map[string]string{})},
		"a page":          {Ask: "unpack", Data: pack(map[string]string{"index.html": "x"})},
		"a hidden file":   {Ask: "unpack", Data: pack(map[string]string{".x.batch": "x"})},
		"above":           {Ask: "unpack", Data: pack(map[string]string{"../x.batch": "x"})},
		"absolute":        {Ask: "unpack", Data: pack(map[string]string{"/x.batch": "x"})},
		"a device":        {Ask: "unpack", Data: pack(map[string]string{"a:b.batch": "x"})},
		"escapes":         {Ask: "unpack", Data: pack(map[string]string{"\x1b]8;.batch": "x"})},
		"too large":       {Ask: "unpack", Data: pack(map[string]string{"a.batch": large + "a"})},
		"far too large":   {Ask: "unpack", Data: pack(map[string]string{"a.batch": large + large + large})},
		"no zip":          {Ask: "unzip", Data: "AAAA"},
		"a zip of none":   {Ask: "unzip", Data: zip(map[string]string{"index.html": "x"})},
		"a zip too large": {Ask: "unzip", Data: zip(map[string]string{"a.batch": large + "a"})},
		"no question":     {Ask: "brew"},
	} {
		a := ask(t, &Engine{}, q)
		assert.NotEmpty(t, a.Problem, name)
		assert.Nil(t, a.Files, name)
	}
	assert.Empty(t, ask(t, &Engine{}, Question{Ask: "unpack", Data: pack(map[string]string{"a.batch": large})}).Problem, "at the limit")
	many := map[string]string{}
	for i := range maxFiles {
		many[strings.Repeat("a", 1+i%50)+strings.Repeat("b", i/50)+".batch"] = ""
	}
	require.Len(t, many, maxFiles)
	assert.Empty(t, refused(many))
	many["c.batch"] = ""
	assert.Contains(t, refused(many), "200")
	long := strings.Repeat("a", maxName-len(".batch"))
	assert.Empty(t, misnamed(long+".batch"))
	assert.NotEmpty(t, misnamed(long+"a.batch"))
}

// TestZipOfAFolder: a house that was packed with its folder around it is read, and what
// is no text of it is left out.
func TestZipOfAFolder(t *testing.T) {
	data := zipped(Question{Files: map[string]string{"my-house/house.batch": "h", "my-house/runs/1.batch": "r", "my-house/notes.md": "n", "other.batch": "o"}}).Data
	assert.Equal(t, map[string]string{"house.batch": "h", "runs/1.batch": "r"}, unzipped(Question{Data: data}).Files)
}

// TestHostileHouse: words of a text are shown, and never become part of a page.
func TestHostileHouse(t *testing.T) {
	files := houseOn(t, "lantern-hollow")
	const evil = `<script>alert(1)</script><img src=x onerror=alert(1)>`
	was := maps.Clone(files)
	files[ferry] = strings.ReplaceAll(files[ferry], `"Ferry Landing"`, `"`+evil+`"`)
	was[ferry] = strings.Replace(files[ferry], "rest     45 min", "rest     40 min", 1)
	e := &Engine{}
	for _, q := range []Question{
		{Ask: "plan", Files: files, File: ferry, Sure: true},
		{Ask: "compare", Files: files, Old: was, File: ferry},
	} {
		a := ask(t, e, q)
		require.NotEmpty(t, a.Page, a.Problem)
		assert.NotContains(t, a.Page, "<script")
		assert.NotContains(t, a.Page, "<img")
		for _, tag := range regexp.MustCompile(`<[a-z][^>]*>`).FindAllString(a.Page, -1) {
			for _, m := range regexp.MustCompile(`\s([a-zA-Z-]+)=`).FindAllStringSubmatch(regexp.MustCompile(`"[^"]*"`).ReplaceAllString(tag, `""`), -1) {
				assert.False(t, strings.HasPrefix(m[1], "on") || m[1] == "style", "the page's policy would refuse it: %s", tag)
			}
		}
	}
}

func TestPlaces(t *testing.T) {
	const text = "a𝛼ö\n"
	for _, c := range []struct{ offset, unit int }{{0, 0}, {1, 1}, {5, 3}, {7, 4}, {8, 5}, {99, 5}, {1, 1}} {
		p := placesOf(text)
		assert.Equal(t, c.unit, p.unit(c.offset))
		assert.Equal(t, min(c.offset, len(text)), p.byteAt(c.unit))
		assert.Equal(t, c.unit+1, placesOf(mark+text).unit(c.offset))
	}
	assert.Equal(t, 1, placesOf(text).byteAt(2), "in the middle of a character is its beginning")
	p := placesOf(text)
	assert.Equal(t, 5, p.unit(8))
	assert.Equal(t, 1, p.unit(1), "asked out of order")
}

// FuzzAsk: no question makes a fault, and each has an answer.
func FuzzAsk(f *testing.F) {
	for _, kind := range []string{"check", "plan", "complete", "hover", "definition", "slide", "format", "compare", "explain", "pack", "unpack", "zip", "unzip"} {
		f.Add(kind, "plant \"P\" {\n}\n", "batch \"𝛼\" {\n  mash {\n    rest 5 min\n  }\n}\n", "AAAA", 7)
	}
	f.Fuzz(func(t *testing.T, kind, house, batch, data string, at int) {
		q := Question{Ask: kind, Files: map[string]string{"house.batch": house, "a.batch": batch}, File: "a.batch", At: at, Word: data, Data: data,
			Old: map[string]string{"house.batch": house, "a.batch": data}}
		question, err := json.Marshal(q)
		if err != nil {
			return
		}
		e := &Engine{}
		answer := e.Ask(question)
		var a Answer
		require.NoError(t, json.Unmarshal(answer, &a))
		require.NotContains(t, a.Problem, "a fault in newmake")
		length := len(unitsOf(batch))
		for _, tok := range a.Tokens {
			require.True(t, 0 <= tok.From && tok.From <= tok.To && tok.To <= length)
		}
		for _, d := range a.Said["a.batch"] {
			require.True(t, 0 <= d.From && d.From <= d.To && d.To <= length)
		}
		require.JSONEq(t, string(answer), string(e.Ask(question)), "asked again")
		_ = e.Ask([]byte(data))
	})
}

// BenchmarkChange is one change of the example: diagnostics, predictions and the sheet.
func BenchmarkChange(b *testing.B) {
	files := houseOn(b, "lantern-hollow")
	was := files[ferry]
	e := &Engine{}
	for i := 0; b.Loop(); i++ {
		files[ferry] = was + strings.Repeat("#\n", i%10)
		ask(b, e, Question{Ask: "check", Files: files, File: ferry})
		ask(b, e, Question{Ask: "plan", Files: files, File: ferry})
	}
}
