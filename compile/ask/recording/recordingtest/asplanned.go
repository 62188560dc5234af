// Package recordingtest fills a run in exactly as its plan said, for tests: who did what
// the sheet says, and read what it says, has nothing to be told.
package recordingtest

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/ask/recording"
	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
)

var (
	line    = regexp.MustCompile(`^( *)(\d{4}-\d\d-\d\d +)?(.*?) +# planned (\d\d:\d\d): (.*)$`)
	weighed = regexp.MustCompile(`^( *)(\S.*?) +# (\d.*)$`)
	casks   = regexp.MustCompile(`# a line for each cask, planned (\S+) (\S+): into "its serial" (.*)$`)
)

// AsPlanned is the record of a run that went as its plan says, to the figures of its sheet.
func AsPlanned(t testing.TB, number string, p *plan.Plan, u measure.Units) string {
	t.Helper()
	skeleton, err := recording.Skeleton(recording.Head{Number: number, Batch: p.Batch.Name, Date: p.Batch.Start[:10]}, blank.Of(p), u)
	require.NoError(t, err)
	var out []string
	for _, l := range strings.Split(string(skeleton), "\n") {
		switch m := line.FindStringSubmatch(l); {
		case m != nil:
			out = append(out, m[1]+m[2]+m[4]+" "+filled(m[3], strings.Split(m[5], ", ")))
		case casks.MatchString(l):
			m := casks.FindStringSubmatch(l)
			for i := range p.Cask.Casks {
				out = append(out, fmt.Sprintf("%s %s into %q %s", m[1], m[2], fmt.Sprintf("%s-%d", number, i+1), m[3]))
			}
		case weighed.MatchString(l):
			m := weighed.FindStringSubmatch(l)
			out = append(out, m[1]+m[2]+" "+m[3])
		default:
			out = append(out, l)
		}
	}
	return strings.Join(out, "\n")
}

// filled puts values behind the words of what to read, which end a line.
func filled(words string, values []string) string {
	labels := strings.Split(words, ", ")
	names, labels := labels[:len(labels)-len(values)+1], labels[len(labels)-len(values)+1:]
	word, label := "", strings.Join(names, ", ")
	if at := strings.LastIndex(label, " "); at >= 0 {
		word, label = label[:at+1], label[at+1:]
	}
	labels = append([]string{label}, labels...)
	for i, l := range labels {
		value, _, _ := strings.Cut(values[i], " (") // the same in other terms
		labels[i] = l + " " + value
	}
	return word + strings.Join(labels, ", ")
}
