package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/wording"
)

// TestCompleted puts what is missing where the language has it.
func TestCompleted(t *testing.T) {
	strength := wording.More{Readings: []string{"__ proof at __ F"}}
	for _, c := range []struct {
		line string
		more wording.More
		want string
	}{
		{`into  "LH 1" 48.0 gal, tare 98 lb by "M" "hoop, loose"`, wording.More{Readings: []string{"gross __ lb"}}, `into "LH 1" 48.0 gal, tare 98 lb, gross __ lb by "M" "hoop, loose"`},
		{`2026-04-02 topped 2 gal from "26-07" "slow"`, strength, `2026-04-02 topped 2 gal, __ proof at __ F from "26-07" "slow"`},
		{`topped 2 gal from "LH-0107"`, wording.More{From: `"26-07"`}, `topped 2 gal from "26-07"`},
		{`from tank "Old" part`, wording.More{Readings: []string{"__ gal"}}, `from tank "Old" part __ gal`},
		{`from K1`, strength, `from K1 __ proof at __ F`},
		{`charge feints 40 gal`, wording.More{From: `"N"`}, `charge feints 40 gal from "N"`},
		{`thu 14:00 hearts volume, strength`, strength, `thu 14:00 hearts __ proof at __ F`},
		{`corn 600 lb from "Seller"`, wording.More{Lot: `"C"`}, `corn 600 lb lot "C" from "Seller"`},
		{`emptied 31 gal, 118 proof at 60 F, written 2026-03-04`, wording.More{To: `"Tank"`}, `emptied 31 gal, 118 proof at 60 F to "Tank", written 2026-03-04`},
		{`destroyed 12 gal by "A"`, wording.More{Remark: `"poured away"`}, `destroyed 12 gal by "A" "poured away"`},
		{`destroyed 12 gal "fire"`, wording.More{Remark: `"poured away"`}, `destroyed 12 gal "fire"`},
		{`lost 3 gal of hearts "hose"`, strength, `lost 3 gal, __ proof at __ F of hearts "hose"`},
		{`"LH-1"`, strength, `"LH-1" __ proof at __ F`},
		{``, strength, `__ proof at __ F`},
	} {
		assert.Equal(t, c.want, wording.Completed(c.line, c.more), c.line)
	}
	assert.Equal(t, `2026-04-02 from tank "Old"`, wording.Head(`2026-04-02 from tank "Old" 30 gal`))
}
