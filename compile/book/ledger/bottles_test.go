package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/ledger"
)

// TestBottlesAreMeasuredAsTheHouseCounts: 308 bottles of 750 mL at 94 proof are
// 308 x 0.75 / 3.785411784 gallons, and 94 hundredths of that in proof gallons, where a liter
// is that at 60 F; where it is that at 20 C, they are 308 x 0.75 x 0.47 litres of alcohol.
func TestBottlesAreMeasuredAsTheHouseCounts(t *testing.T) {
	in := func(label string, us bool) ledger.Amount {
		h, c, said := read(t, loft+filled("22-01", "2022-02-01", "K", 60)+"bottling \"26H12\" of \"K\" on 2026-08-12 {\n  bottles 308 of 750 mL at "+label+"\n}\n")
		require.False(t, said.HasErrors(), "%v", said)
		o := ledger.HouseOf(h, c, "us", false)
		o.US = us
		return account(ledger.Of(o, 2026, 8), ledger.Bottles).Closing
	}
	assert.InDelta(t, 308*0.75/3.785411784*0.94, in("94 proof", true).ProofGallons, 0.006)
	assert.InDelta(t, 308*0.75*0.47, in("47 % vol", false).PureL, 0.006)
	assert.Less(t, in("94 proof", false).ProofGallons, in("94 proof", true).ProofGallons-0.15, "at 20 C they hold less, as it were at 60 F")
}
