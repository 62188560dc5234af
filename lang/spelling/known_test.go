package spelling

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNearest(t *testing.T) {
	known := []string{"corn", "oats", "rye", "distillers-malt", "wheat"}
	for word, want := range map[string]string{
		"cron": "corn", "crn": "corn", "Corn": "corn", "ots": "oats", "rey": "rye", "distiler-malt": "distillers-malt",
		"barley": "", "x": "", "": "", "rice": "",
	} {
		assert.Equal(t, want, Nearest(word, known), word)
	}
}
