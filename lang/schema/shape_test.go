package schema

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShapeString(t *testing.T) {
	for shape, want := range map[string]string{
		`VOLUME ["at" TEMP]`:        "VOLUME [at TEMP]",
		`NAME ("," NAME)*`:          "NAME (, NAME)*",
		`GRAIN (MASS|SHARE|"rest")`: "GRAIN (MASS | SHARE | rest)",
		"TEMP..TEMP|TEMP":           "TEMP..TEMP | TEMP",
		`"from" cut:TEMP "to" TEMP`: "from TEMP to TEMP",
	} {
		assert.Equal(t, want, MustCompile(shape).String())
	}
}
