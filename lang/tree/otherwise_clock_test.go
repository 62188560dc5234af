package tree

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestClock24(t *testing.T) {
	for said, want := range map[string]string{
		"7 am": "07:00", "7am": "07:00", "7 AM": "07:00", "7 a.m.": "07:00", "5:30 pm": "17:30", "5.30pm": "17:30",
		"12 am": "00:00", "12 pm": "12:00", "12:30 am": "00:30", "noon": "12:00", "11 pm": "23:00", "1 am": "01:00",
		"0700": "07:00", "7:00": "07:00", "700": "07:00", "1730": "17:30", "23:59": "23:59", "24:00": "24:00",
		"24:01": "", "23:60": "", "0 am": "", "13 pm": "", "7:60 am": "", "": "", "soon": "",
	} {
		assert.Equal(t, want, clock24(said), said)
	}
}

func TestDated(t *testing.T) {
	inUS := dated(3, 1, 2, 4)
	assert.Equal(t, "2028-02-29 07:00", inUS([]string{"", "February", "29", "2028", "7 am"}))
	assert.Equal(t, "2026-12-01", inUS([]string{"", "dec", "1", "2026", ""}))
	assert.Empty(t, inUS([]string{"", "Feb", "29", "2026", ""}))
	assert.Empty(t, inUS([]string{"", "Feb", "28", "2026", "13 pm"}))
}
