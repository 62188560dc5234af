package logbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/record"
)

// A charge begins with the line that charges the still, once the one before has come over. What
// one is made of may have several lines; where nobody wrote that it was charged, its fire or its
// first drop begins it.
func TestCharges(t *testing.T) {
	for lines, want := range map[string][]int{
		"charge; fire; first-drop; ; off; low-wines; charge; first-drop; off; low-wines": {1, 1, 1, 1, 1, 1, 2, 2, 2, 2},
		"charge low-wines; charge feints; first-drop; off":                               {1, 1, 1, 1},
		"charge low-wines; charge feints; charge low-wines; charge feints; off":          {1, 1, 2, 2, 2},
		"charge low-wines \"A\"; charge low-wines \"B\"; off":                            {1, 1, 1},
		"charge; charge; low-wines":                                                      {1, 2, 2},
		"fire; first-drop; off; fire; first-drop; off":                                   {1, 1, 1, 2, 2, 2},
		"first-drop; first-drop; off":                                                    {1, 2, 2},
		"note; charge; note; to hearts; hearts; charge; tails":                           {0, 1, 1, 1, 1, 2, 2},
		"off; feints; charge; off; feints":                                               {1, 1, 2, 2, 2},
	} {
		run := &record.Run{Stages: []record.Stage{{Name: record.Mash}, {Name: record.Spirit}}}
		run.Visits = append(run.Visits, record.Visit{Word: "heat"})
		for _, l := range strings.Split(lines, ";") {
			word, rest, _ := strings.Cut(strings.TrimSpace(l), " ")
			of, from, _ := strings.Cut(rest, " ")
			run.Visits = append(run.Visits, record.Visit{Stage: 1, Word: word, Of: of, From: from})
		}
		charges(run)
		var got []int
		for _, v := range run.Visits[1:] {
			got = append(got, v.Charge)
		}
		assert.Equal(t, want, got, lines)
		assert.Zero(t, run.Visits[0].Charge, "a mash has none")
	}
}
