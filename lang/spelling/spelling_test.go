package spelling

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"corn", "corn", 0}, {"cron", "corn", 1}, {"ocrn", "corn", 1}, {"con", "corn", 1}, {"corns", "corn", 1},
		{"rey", "rye", 1}, {"gla", "gal", 1}, {"pitch", "pihct", 2}, {"distilelrs-mlt", "distillers-malt", 2},
		{"élan", "lean", 2}, {"", "", 0}, {"a", "", 1}, {"abcdef", "uvwxyz", 6},
	} {
		assert.Equal(t, c.want, Distance(c.a, c.b), "%s and %s", c.a, c.b)
		assert.Equal(t, c.want, Distance(c.b, c.a), "%s and %s", c.b, c.a)
	}
}
