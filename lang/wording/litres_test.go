package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestInLitres(t *testing.T) {
	for _, c := range []struct{ us, si string }{
		{`charge feints 44 gal, 70.5 proof at 64 F from "26-02"`, `charge feints 167 L, 35.2 % abv at 18 C from "26-02"`},
		{`into "LH-0012" 53 gal, tare 98 lb, gross 501 lb`, `into "LH-0012" 201 L, tare 44 kg, gross 227 kg`},
		{`corn 4,200 lb lot "C-118"`, `corn 1,905 kg lot "C-118"`},
		{`leaked about 0.3 gal "the 50 gal butt"`, `leaked about 1.1 L "the 50 gal butt"`},
		{`bottles 12 of 750 mL at 94 proof`, `bottles 12 of 750 mL at 47.0 % abv`},
		{`used { corn 541 lb lot "C-118" }`, `used { corn 245 kg lot "C-118" }`},
		{"gallows, lbs, proofing, 12 Fahr", "gallows, lbs, proofing, 12 Fahr"},
	} {
		assert.Equal(t, c.si, InLitres(c.us))
	}
}
