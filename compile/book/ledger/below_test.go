package ledger_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestBelowNothing: an account that closes below nothing fails a check, also where a reading of
// less than nothing made it so.
func TestBelowNothing(t *testing.T) {
	at := func(gal string) string {
		h, c, _ := read(t, loft+"run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  fill {\n    2024-02-09 10:00 hearts "+gal+" gal, 120 proof at 60 F\n  }\n}\n")
		return fmt.Sprint(failed(booksOf(h, c, month(2024, 2))))
	}
	assert.NotContains(t, at("50"), "no account closes below nothing")
	assert.NotContains(t, at("0"), "no account closes below nothing")
	assert.Contains(t, at("-50"), "no account closes below nothing")
}
