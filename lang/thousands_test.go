package lang_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// `4.400 L` is four litres and may be meant as thousands: said, and read as
// written. What nobody writes for thousands is left alone.
func TestPointForThousands(t *testing.T) {
	for _, text := range []string{"holds 4.400 L", "holds 12.000 kg", "holds 250.000 gal", "holds 1.250 lb", "hearts 1.000 proof-gal"} {
		file, list := lang.Parse(diag.NewSource("x", []byte(text)))
		require.Len(t, list, 1, text)
		assert.Equal(t, diag.CodeThousands, list[0].Code, text)
		assert.Equal(t, diag.Warning, list[0].Severity, text)
		require.Len(t, file.Stmts, 1)
	}
	file, list := lang.Parse(diag.NewSource("x", []byte("holds 4.400 L")))
	assert.InDelta(t, 4.4, file.Stmts[0].Items[1].Value, 1e-12, "the point is the decimal mark")
	assert.Contains(t, list[0].Help, "`4,400 L` if the point parts thousands")
	for _, text := range []string{
		"holds 4.4 L", "holds 4.40 L", "holds 4.4000 L", "holds 4,400 L", "holds 4400.000 L", "holds 0.400 L", "holds 4.425 L",
		"gravity 1.040 sg", "gravity 1.040", "rest 1.500 h",
	} {
		_, list := lang.Parse(diag.NewSource("x", []byte(text)))
		assert.Empty(t, list, text)
	}
}
