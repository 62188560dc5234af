package tree

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// What a plan prints as a length of time can be read.
func TestHoursAndMinutes(t *testing.T) {
	for _, tt := range []struct {
		line    string
		minutes float64 // 0: two numbers as before
	}{
		{"rest 4 h 20 min", 260}, {"rest 1 hour 59 minutes", 119}, {"rest 1 h 60 min", 0}, {"rest 1.5 h 20 min", 0}, {"rest 20 min 4 h", 0}, {"rest 4 h", 0},
	} {
		f, list := lang.Parse(diag.NewSource("t.batch", []byte(tt.line+"\n")))
		require.False(t, list.HasErrors(), tt.line)
		items := hoursAndMinutes(f.Stmts[0].Items)
		if tt.minutes == 0 {
			assert.Equal(t, f.Stmts[0].Items, items, tt.line)
			continue
		}
		require.Len(t, items, 2)
		assert.Equal(t, tt.minutes, items[1].Value)
		assert.Equal(t, tt.line[len("rest "):], items[1].At.Text(), "both are its place")
	}
}
