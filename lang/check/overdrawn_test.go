package check

import (
	"fmt"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// TestOverdrawn: the bottlings of a vat together hold up to 3 % more than its last gauge, and no
// more: 249 bottles of 750 mL are 49.3 gal of 48, and 250 are 49.5.
func TestOverdrawn(t *testing.T) {
	said := func(vat string, bottles ...int) (out []string) {
		text := "vat \"V\" on 2030-04-02 {\n" + vat + "}\n"
		for i, n := range bottles {
			text += fmt.Sprintf("bottling \"Lot %d\" of \"V\" on 2030-04-%02d {\n  bottles %d of 750 mL\n}\n", i+1, 10+i, n)
		}
		h, err := LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(text)}}, "", Options{})
		require.NoError(t, err)
		_, list := h.Inventory()
		for _, d := range list {
			if d.Code == diag.CodeOverdrawn {
				out = append(out, d.At.Text()+": "+d.Summary)
			}
		}
		return out
	}
	const gauge = "  gauge 48 gal, 94.6 proof at 64 F\n"
	assert.Empty(t, said(gauge, 249))
	assert.Empty(t, said(gauge, 149, 100))
	require.Len(t, said(gauge, 250), 1)
	require.Len(t, said(gauge, 149, 101), 1)
	assert.Contains(t, said(gauge, 149, 101)[0], "49.5 gal of vat V are in bottles by here, and it held 48 gal")
	assert.Contains(t, said(gauge, 149, 101)[0], `bottling "Lot 2"`)
	assert.Empty(t, said(gauge+"  reduce 10 gal\n", 250), "nobody knows how much it was then")
	assert.Empty(t, said(gauge+"  2030-04-11 gauge 20 gal, 94.6 proof at 64 F\n", 249, 100), "what was bottled before the gauge is not of it")
	assert.NotEmpty(t, said(gauge+"  2030-04-11 gauge 20 gal, 94.6 proof at 64 F\n", 249, 110))
}
