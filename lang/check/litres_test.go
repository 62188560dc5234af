package check

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// customary are the units that nobody reads who counts in litres, unless the text itself
// has them.
var customary = regexp.MustCompile(`(?i:\bbushels?\b|[0-9] proof\b|\bgallons?\b|\bpounds?\b|\b(?:imp-)?gal\b|proof-gal\b|fl oz|sqft|\bqt\b)|\bPG\b|[0-9/] ?(?:F|lb|lbs|oz|ft)\b`)

var meantF = regexp.MustCompile("(?:did you mean|write) `-?[0-9.]+ F`")

// TestMistakesInLitres makes the mistakes of the fixtures in a house that counts in
// litres: what is said of them has no unit of the United States, but where the text has.
func TestMistakesInLitres(t *testing.T) {
	paths, err := filepath.Glob("testdata/mistakes/*.batch")
	require.NoError(t, err)
	said := 0
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		name := "fixture.batch"
		if filepath.Base(path) == house.FileName {
			name = house.FileName
		}
		fsys := bench(t, map[string]string{name: string(data)})
		for _, f := range fsys {
			f.Data = []byte(inLitres(string(f.Data)))
		}
		h, err := LoadFS(fsys, "", Options{})
		require.NoError(t, err)
		for _, d := range h.Check() {
			said++
			if d.Advise != nil {
				d.Help, d.Fix = d.Advise(true)
			}
			written := ""
			if d.At.Src != nil {
				line, _ := d.At.Position()
				written = strings.ToLower(strings.Split(string(d.At.Src.Text), "\n")[line-1])
			}
			all := d.Summary + "\n" + d.Help + "\n" + d.Reason
			if d.Fix != nil {
				all += "\n" + d.Fix.Label
			}
			for _, r := range d.Related {
				all += "\n" + r.Text
			}
			if strings.Contains(d.Reason, " CFR ") { // a law is quoted as it stands
				continue
			}
			all = meantF.ReplaceAllString(all, "") // it may be what was meant by a temperature
			for _, found := range customary.FindAllString(all, -1) {
				if !strings.Contains(written, strings.TrimSuffix(strings.ToLower(strings.TrimLeft(found, "0123456789/ ")), "s")) {
					t.Errorf("%s: %q of %q:\n%s", d.Header(), found, written, all)
					break
				}
			}
		}
	}
	require.Greater(t, said, 300)
}

// inLitres is a text with its quantities in litres, and its remarks as they are.
func inLitres(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		code, remark, has := strings.Cut(line, "#")
		if lines[i] = wording.Restated(code, quantity.SI); has {
			lines[i] += "#" + remark
		}
	}
	return strings.Join(lines, "\n")
}
