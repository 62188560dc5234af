package flow_test

import (
	"cmp"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/flow"
	"newmake/lang/check"
	_ "newmake/lang/testflag" // these tests write nothing anew, and know the switches
)

func vessel(v flow.Vessel) string {
	switch {
	case v.Run != nil:
		return "run " + v.Run.Number
	case v.Life != nil:
		return "cask " + v.Life.Serial + " of " + v.Life.Filled().String()
	case v.Vat != nil:
		return "vat " + v.Vat.Name
	case v.Bottling != nil:
		return "bottling " + v.Bottling.Lot
	case v.Tank != "":
		return "tank " + v.Tank
	}
	return "none"
}

// TestOf: what is drawn on the day on which a cask is emptied and filled again is of the old
// spirit; a line without a day has that of its declaration; of one day, what is made comes before
// what is drawn, and that before what is blended and bottled.
func TestOf(t *testing.T) {
	h, err := check.LoadFS(fstest.MapFS{"house.batch": {Data: []byte(`run "20-01" of "B" on 2020-02-01 {
  spirit {
    2020-02-08 10:00 charge feints 4 gal, 70 proof at 60 F from "Feints tank"
    10:30 hearts 60 gal, 140 proof at 60 F
    11:00 feints 5 gal, 70 proof at 60 F to "Feints tank"
  }
  fill {
    2020-02-09 09:00 gauge 60 gal, 120 proof at 60 F
    into "K" 50 gal
    left 3 gal to "Tank"
  }
}
cask "K" {
  2021-01-01 sample 200 mL, 119 proof at 60 F
  2021-01-02 topped 1 gal, 120 proof at 60 F from "Tank"
  2024-02-29 emptied 40 gal, 118 proof at 60 F to "Other"
}
run "24-01" of "B" on 2024-02-20 {
  fill {
    2024-02-29 09:00 into "K" 50 gal
  }
}
vat "V" on 2024-02-29 in "Other" {
  from tank "Tank" 2 gal, 118 proof at 60 F
  from "Unknown" 2 gal, 118 proof at 60 F
  2024-03-01 gauge 42 gal, 90 proof at 60 F
}
bottling "24C02" of "V" on 2024-03-02 {
  bottles 10 of 750 mL at 90 proof
  left 1 gal, 90 proof at 60 F to "Tank"
  2024-03-09 withdrawn 2 of 750 mL to "Inn"
}
`)}}, "", check.Options{})
	require.NoError(t, err)
	c, _ := h.Inventory()
	var got []string
	for _, e := range flow.Of(c) {
		word := "blended in a tank"
		switch {
		case e.Bottles != nil:
			word = e.Bottles.Word
		case e.Visit != nil:
			word = cmp.Or(e.Visit.Word, "read") // a sample is a reading
		}
		got = append(got, fmt.Sprintf("%s %s: %s -> %s", e.On, word, vessel(e.From), vessel(e.To)))
	}
	assert.Equal(t, strings.TrimSpace(`
2020-02-08 charge: tank Feints tank -> run 20-01
2020-02-08 hearts: run 20-01 -> run 20-01
2020-02-08 feints: run 20-01 -> tank Feints tank
2020-02-09 gauge: run 20-01 -> run 20-01
2020-02-09 into: run 20-01 -> cask K of 2020-02-09
2020-02-09 left: run 20-01 -> tank Tank
2021-01-01 read: cask K of 2020-02-09 -> cask K of 2020-02-09
2021-01-02 topped: tank Tank -> cask K of 2020-02-09
2024-02-29 into: run 24-01 -> cask K of 2024-02-29
2024-02-29 emptied: cask K of 2020-02-09 -> tank Other
2024-02-29 blended in a tank: tank Other -> vat V
2024-02-29 from: tank Tank -> vat V
2024-02-29 from: none -> vat V
2024-03-01 gauge: vat V -> vat V
2024-03-02 bottles: vat V -> bottling 24C02
2024-03-02 left: vat V -> tank Tank
2024-03-09 withdrawn: bottling 24C02 -> none
`), strings.Join(got, "\n"))
}
