package main

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// browsing is a page that is served, and a browser that has it open.
type browsing struct {
	t    *testing.T
	url  string
	said *heard
}

// browse serves a batch of a copy of the example's house.
func browse(t *testing.T, f planFlags) (*browsing, string) {
	t.Helper()
	house := houseCopy(t)
	b := &browsing{t: t, said: &heard{}}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	f.open = true
	go func() { ended <- watch(ctx, quietApp(b.said), filepath.Join(house, "ferry-landing.batch"), f) }()
	t.Cleanup(func() { stop(); <-ended })
	served := regexp.MustCompile(`http://127\.0\.0\.1:\d+/[A-Z2-7]{26}/`)
	soon(t, "it says where it serves", func() bool { return served.MatchString(b.said.String()) })
	b.url = served.FindString(b.said.String())
	return b, house
}

func (b *browsing) get(path string) (int, string) {
	b.t.Helper()
	r, err := http.Get(b.url + path)
	require.NoError(b.t, err)
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	require.NoError(b.t, err)
	return r.StatusCode, string(text)
}

func (b *browsing) page() string { _, text := b.get(""); return text }

// seen is the mark of the record that the page shows.
func (b *browsing) seen() string {
	m := regexp.MustCompile(`data-seen="([0-9a-f]+)"`).FindStringSubmatch(b.page())
	if m == nil {
		return ""
	}
	return m[1]
}

func (b *browsing) post(path string, body any) (int, map[string]any) {
	b.t.Helper()
	text, err := json.Marshal(body)
	require.NoError(b.t, err)
	if raw, ok := body.(string); ok {
		text = []byte(raw)
	}
	r, err := http.NewRequest(http.MethodPost, b.url+path, strings.NewReader(string(text)))
	require.NoError(b.t, err)
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Origin", "http://"+r.URL.Host)
	answer, err := http.DefaultClient.Do(r)
	require.NoError(b.t, err)
	defer answer.Body.Close()
	var out map[string]any
	require.NoError(b.t, json.NewDecoder(answer.Body).Decode(&out))
	return answer.StatusCode, out
}

// opened opens the run of the page's day, and gives its file.
func (b *browsing) opened(house string) string {
	b.t.Helper()
	status, said := b.post("run", struct{}{})
	require.Equal(b.t, http.StatusOK, status, said)
	soon(b.t, "the run is on the page", func() bool { return b.seen() != "" })
	number := regexp.MustCompile(`data-run="([0-9-]+)"`).FindStringSubmatch(b.page())
	require.NotNil(b.t, number)
	return filepath.Join(house, "runs", number[1]+".batch")
}

// runs are the files of runs that a house has.
func runs(t *testing.T, house string) []string {
	t.Helper()
	all, err := filepath.Glob(filepath.Join(house, "runs", "*"))
	require.NoError(t, err)
	return all
}

func heat(seen, read string) sent {
	return sent{Seen: seen, Values: []sentReading{{Blank: "mash.5.temperature", Read: read}}, Clock: "10:04", By: "M"}
}

// A run is opened from the page, and filled in from it by the way of `record`.
func TestOpenKeepsReadings(t *testing.T) {
	b, house := browse(t, planFlags{})
	status, said := b.post("readings", heat("", "191"))
	assert.Equal(t, http.StatusConflict, status)
	assert.Contains(t, said["refused"], "no run of that day is opened")
	assert.NotContains(t, b.page(), "<form")

	file := b.opened(house)
	assert.Contains(t, b.page(), ", runs/"+filepath.Base(file))
	before := runs(t, house)
	assert.Contains(t, before, file)
	status, said = b.post("run", struct{}{})
	assert.Equal(t, http.StatusOK, status, said)
	assert.Equal(t, before, runs(t, house), "it is there: it goes on")

	status, said = b.post("readings", heat(b.seen(), "191"))
	require.Equal(t, http.StatusOK, status, said)
	assert.Equal(t, []any{}, said["doubts"])
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Regexp(t, `10:04 heat +191 F by "M"`, string(text))
	soon(t, "it is on the page", func() bool { return strings.Contains(b.page(), "read <b>191 F</b> at 10:04 by M") })
	assert.Equal(t, said["seen"], b.seen(), "the browser knows it already")
	assert.Contains(t, b.page(), "From here on", "the rest is reckoned from it")

	// The same again is refused: it stands there.
	status, said = b.post("readings", heat(b.seen(), "192"))
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Contains(t, said["refused"], "no open blank")

	// What was mistyped is put right beside it, and both are shown.
	status, said = b.post("readings", sent{Seen: b.seen(), Slip: true, Values: []sentReading{{Blank: "mash.5.temperature", Read: "190"}}, Clock: "10:06", By: "A"})
	require.Equal(t, http.StatusOK, status, said)
	text, err = os.ReadFile(file)
	require.NoError(t, err)
	assert.Regexp(t, `10:04 heat +191 F by "M"`, string(text), "what was written stays")
	assert.Regexp(t, `corrected 10:04 heat 191 F to 190 F on \d{4}-\d\d-\d\d by "A"\n +corrected 10:04 heat 10:04 to 10:06 on`, string(text))
	soon(t, "it is on the page", func() bool {
		return strings.Contains(b.page(), "read <b>190 F</b> (first written: 191 F) at 10:06 by M")
	})
	status, said = b.post("readings", sent{Seen: b.seen(), Slip: true, Values: []sentReading{{Blank: "mash.6.temperature", Read: "190"}}})
	assert.Equal(t, http.StatusUnprocessableEntity, status)
	assert.Contains(t, said["refused"], "no reading here to correct")

	// What is hard to believe is kept, and said.
	status, said = b.post("readings", sent{Seen: b.seen(), Values: []sentReading{{Blank: "ferment.pitch.gravity", Read: "1.666", Sample: "68"}}, Clock: "13:55"})
	require.Equal(t, http.StatusOK, status, said)
	require.NotEmpty(t, said["doubts"])
}

// A record that is another than the page shows is not written over.
func TestOpenRefusesWhatItHasNotSeen(t *testing.T) {
	b, house := browse(t, planFlags{})
	file := b.opened(house)
	seen := b.seen()
	was, err := os.ReadFile(file)
	require.NoError(t, err)
	other := append(was, "# another hand\n"...)
	require.NoError(t, os.WriteFile(file, other, 0o644))
	status, said := b.post("readings", heat(seen, "191"))
	assert.Equal(t, http.StatusConflict, status)
	assert.Equal(t, true, said["changed"])
	assert.Contains(t, said["refused"], "changed meanwhile")
	now, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(other), string(now))
	soon(t, "the page shows it as it is", func() bool { // not as it was while it was being written
		if b.seen() == seen {
			return false
		}
		status, _ = b.post("readings", heat(b.seen(), "191"))
		return status == http.StatusOK
	})
	now, _ = os.ReadFile(file)
	assert.Contains(t, string(now), "# another hand")

	// It is broken: nothing is written to it, and the page says so.
	require.NoError(t, os.WriteFile(file, append(now, "run {\n"...), 0o644))
	status, said = b.post("readings", heat(b.seen(), "191"))
	assert.Equal(t, http.StatusConflict, status)
	require.NoError(t, os.Remove(file))
	status, said = b.post("readings", heat(seen, "191"))
	assert.Equal(t, http.StatusConflict, status)
	assert.Contains(t, said["refused"], "no run of that day")
	assert.NoFileExists(t, file)
}

// What is sent is a visit, of a length that a visit has, and nothing else is written.
func TestOpenTakesVisitsAlone(t *testing.T) {
	b, house := browse(t, planFlags{})
	file := b.opened(house)
	was, err := os.ReadFile(file)
	require.NoError(t, err)
	seen := b.seen()
	long := func(n int) string { return strings.Repeat("x", n) }
	values := func(n int) sent {
		v := heat(seen, "191")
		for len(v.Values) < n {
			v.Values = append(v.Values, sentReading{Blank: "x", Read: "1"})
		}
		return v
	}
	for name, body := range map[string]any{
		"nothing": "", "no JSON": "x", "a list": "[]", "a number": "1", "another field": `{"file":"../house.batch"}`, "two": `{} {}`, "not UTF-8": "{\"by\":\"\xff\"}",
		"a long word":   sent{Seen: seen, Values: []sentReading{{Blank: "mash.5.temperature", Read: long(mostWord + 1)}}},
		"a long blank":  sent{Seen: seen, Values: []sentReading{{Blank: long(mostWord + 1), Read: "1"}}},
		"a long name":   sent{Seen: seen, Values: heat(seen, "191").Values, By: long(mostWord + 1)},
		"a long remark": sent{Seen: seen, Values: heat(seen, "191").Values, Remark: long(mostRemark + 1)},
		"many":          values(mostValues + 1),
	} {
		status, said := b.post("readings", body)
		assert.Equal(t, http.StatusBadRequest, status, "%s: %v", name, said)
	}
	for name, body := range map[string]sent{ // as long as may be, and refused for what they say
		"a word": {Seen: seen, Values: []sentReading{{Blank: "mash.5.temperature", Read: long(mostWord)}}}, "most values": values(mostValues),
		"a block":   heat(seen, "191 F\n}\nplant \"x\" {"),
		"a comment": heat(seen, "191 # and"),
	} {
		status, said := b.post("readings", body)
		assert.Equal(t, http.StatusUnprocessableEntity, status, "%s: %v", name, said)
	}
	now, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(was), string(now))
	v := heat(seen, "191")
	v.Remark = `} # "` + long(mostRemark-5)
	status, said := b.post("readings", v)
	assert.Equal(t, http.StatusOK, status, said)
}

// Another cut, from the compiler; the recipe stays.
func TestOpenCut(t *testing.T) {
	b, house := browse(t, planFlags{})
	was, err := os.ReadFile(filepath.Join(house, "ferry-landing.batch"))
	require.NoError(t, err)
	said := &heard{}
	require.Equal(t, 0, run(&app{in: strings.NewReader(""), out: said, err: io.Discard, color: "never", env: func(string) string { return "" }},
		[]string{"plan", filepath.Join(house, "ferry-landing.batch"), "--try", "spirit.hearts.to=58 % abv"}))
	status, text := b.get("cut?to=58")
	require.Equal(t, http.StatusOK, status)
	var gives cutGives
	require.NoError(t, json.Unmarshal([]byte(text), &gives))
	assert.Equal(t, "58.0 % abv", gives.At)
	require.Len(t, gives.Gives, 4)
	assert.Contains(t, said.String(), gives.Gives[0][1]+" of hearts", "as plan --try has it")
	for _, bad := range []string{"", "x", "NaN", "Inf", "1e999", "-5", "0", "3.9", "99", "58 % abv", "0x3a"} {
		status, text := b.get("cut?to=" + strings.ReplaceAll(strings.ReplaceAll(bad, "%", "%25"), " ", "+"))
		assert.Equal(t, http.StatusBadRequest, status, "%s: %s", bad, text)
	}
	now, err := os.ReadFile(filepath.Join(house, "ferry-landing.batch"))
	require.NoError(t, err)
	assert.Equal(t, string(was), string(now))
}

// What the last save changed stands on the page; a save of the run alone changes
// nothing of it.
func TestOpenSaysWhatChanged(t *testing.T) {
	b, house := browse(t, planFlags{})
	text := filepath.Join(house, "ferry-landing.batch")
	good, err := os.ReadFile(text)
	require.NoError(t, err)
	assert.NotContains(t, b.page(), "What the last save changed")
	require.NoError(t, os.WriteFile(text, []byte(strings.Replace(string(good), "rest     45 min", "rest     60 min", 1)), 0o644))
	soon(t, "it says what changed", func() bool { return strings.Contains(b.page(), "rest 15 min longer") })
	assert.Contains(t, b.page(), "What the last save changed")
	b.opened(house)
	assert.Contains(t, b.page(), "rest 15 min longer", "it is the last of the recipe")
}

// Where it is not to be served is said, and nothing is.
func TestOpenWhere(t *testing.T) {
	house := houseCopy(t)
	for lan, why := range map[string]string{"0.0.0.0": "every address", "8.8.8.8": "from outside", "127.0.0.1": "this machine alone", "still-house": "no address",
		"10.255.254.253": "cannot serve"} {
		said := &heard{}
		err := watch(t.Context(), quietApp(said), filepath.Join(house, "ferry-landing.batch"), planFlags{open: true, lan: lan})
		require.Error(t, err, lan)
		assert.Contains(t, err.Error(), why, lan)
		assert.NotContains(t, said.String(), "http://", lan)
	}
	said := &heard{}
	code := run(&app{in: strings.NewReader(""), out: said, err: said, color: "never", env: func(string) string { return "" }},
		[]string{"plan", filepath.Join(house, "ferry-landing.batch"), "--lan", "192.168.1.20"})
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, said.String(), "write both")
}

// The page says which version it is, so that one that was changed while it was on its
// way to the browser is fetched again.
func TestOpenKnowsItsVersion(t *testing.T) {
	b, _ := browse(t, planFlags{})
	m := regexp.MustCompile(`<body data-version="([0-9a-f]{16})"`).FindStringSubmatch(b.page())
	require.NotNil(t, m)
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, b.url+"events", nil)
	require.NoError(t, err)
	answer, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer answer.Body.Close()
	lines := bufio.NewScanner(answer.Body)
	var told []string
	for len(told) < 5 && lines.Scan() { // when to come again, the clock, an empty line, the version
		told = append(told, lines.Text())
	}
	assert.Contains(t, told, "data: "+m[1])
}

// What is wrong is said by the file's name in the house, not by where the house lies.
func TestOpenSaysNoPaths(t *testing.T) {
	b, house := browse(t, planFlags{})
	text := filepath.Join(house, "ferry-landing.batch")
	good, err := os.ReadFile(text)
	require.NoError(t, err)
	b.opened(house)
	require.NoError(t, os.WriteFile(text, []byte(strings.Replace(string(good), "corn  ", "cron  ", 1)), 0o644))
	// The file is seen empty where it is looked at while it is written, and then whole.
	var page string
	soon(t, "the trouble is shown", func() bool {
		page = b.page()
		return strings.Contains(page, "last good plan") && strings.Contains(page, "ferry-landing.batch:")
	})
	assert.False(t, strings.Contains(page, house), "the page says where the house lies")
	_, paper := b.get("sheet")
	assert.True(t, strings.Contains(paper, "this is the last good sheet"))
	assert.False(t, strings.Contains(paper, house))

	// Readings are kept all the same: the run is as it was.
	status, said := b.post("readings", heat(b.seen(), "191"))
	assert.Equal(t, http.StatusOK, status, said)
}
