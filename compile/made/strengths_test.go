package made_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/made"
	"newmake/lang/quantity"
	"newmake/lang/record"
)

// A true strength that somebody worked out is held against what was read: the gauger's own
// example, 121.9 at 65 F, is 120.0 (27 CFR 30.61, table 1).
func TestTruly(t *testing.T) {
	run := func(at *record.Value, truly, unit string, si float64) *record.Run {
		rd := read(quantity.Strength, "proof", 121.9/200)
		rd.At, rd.True = at, &record.Value{Num: truly, Unit: unit, Kind: quantity.Strength, SI: si}
		return &record.Run{Stages: []record.Stage{{Name: record.Fill}}, Visits: []record.Visit{{Word: "gauge", Read: []record.Reading{*rd}}}}
	}
	warm := &record.Value{Num: "65", Number: 65, Unit: "F", Kind: quantity.Temperature, SI: (65 - 32) / 1.8}
	for truly, right := range map[string]bool{"119.75": false, "119.9": true, "120.0": true, "120.1": true, "120.25": false} {
		var number float64
		for _, c := range truly {
			if c != '.' {
				number = 10*number + float64(c-'0')
			}
		}
		number /= map[bool]float64{true: 100, false: 10}[len(truly) == 6]
		list := made.Truly(run(warm, truly, "proof", number/200))
		assert.Equal(t, right, len(list) == 0, "%s: %s", truly, list.Error())
	}
	list := made.Truly(run(warm, "121", "proof", 0.605))
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Summary, "at 65 F is 120.0 proof, and `true 121 proof` stands beside it")
	assert.Empty(t, made.Truly(run(nil, "121", "proof", 0.605)), "how warm it was is not known")
	list = made.Truly(run(warm, "58", "% abv", 0.58))
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Summary, "% abv, and `true 58 % abv`")
}
