package gitsetup_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/cmd/newmake/internal/gitsetup"
)

func batch(head string, lines ...string) string {
	return "batch \"A\"" + head + " {\n  bill 790 lb {\n    " + strings.Join(lines, "\n    ") + "\n  }\n}\n"
}

func TestMergeBills(t *testing.T) {
	base := batch("", "corn  68 %", "oats  10 %", "rye   22 %")
	for name, c := range map[string]struct{ base, ours, theirs, want string }{
		"two pairs that are apart": {
			batch("", "corn  50 %", "oats  10 %", "rye   20 %", "wheat  20 %"), batch("", "corn  48 %", "oats  12 %", "rye   20 %", "wheat  20 %"),
			batch("", "corn  50 %", "oats  10 %", "rye   25 %", "wheat  15 %"), batch("", "corn   48 %", "oats   12 %", "rye    25 %", "wheat  15 %")},
		"one added by theirs, the total changed by ours": {
			base, strings.Replace(base, "790", "800", 1), batch("", "corn  68 %", "oats  10 %", "rye   12 %", "wheat  10 %"),
			strings.Replace(batch("", "corn  68 %", "oats  10 %", "rye   12 %", "wheat  10 %"), "790", "800", 1)},
		"one taken out, a remark added": {
			base, batch("", "corn  68 %", "rye   32 %"), batch("", "corn  68 %  # of the valley", "oats  10 %", "rye   22 %"),
			batch("", "corn  68 %  # of the valley", "rye   32 %")},
		"the same change twice comes to more than 100": {
			base, batch("", "corn  66 %", "oats  12 %", "rye   22 %"), batch("", "corn  66 %", "oats  10 %", "rye   24 %"), ""},
		"one grain changed twice": {
			base, batch("", "corn  66 %", "oats  12 %", "rye   22 %"), batch("", "corn  70 %", "oats  10 %", "rye   20 %"), ""},
		"a rest takes what is left": {
			batch("", "corn  rest", "oats  10 %", "rye   22 %"), batch("", "corn  rest", "oats  12 %", "rye   22 %"),
			batch("", "corn  rest", "oats  10 %", "rye   20 %"), batch("", "corn  rest", "oats  12 %", "rye   20 %")},
		"a rest with nothing left": {
			batch("", "corn  rest", "oats  10 %", "rye   22 %"), batch("", "corn  rest", "oats  60 %", "rye   22 %"),
			batch("", "corn  rest", "oats  10 %", "rye   50 %"), ""},
		"a variant": {
			batch(` from "B"`, "corn  60 %", "oats  20 %", "rye   20 %"), batch(` from "B"`, "corn  60 %", "oats  15 %", "rye   25 %"),
			batch(` from "B"`, "corn  60 %  # dry", "oats  20 %", "rye   20 %"), batch(` from "B"`, "corn  60 %  # dry", "oats  15 %", "rye   25 %")},
		"a variant whose parent may have the grain": {
			batch(` from "B"`, "corn  60 %", "oats  20 %", "rye   20 %"), batch(` from "B"`, "corn  60 %", "oats  15 %", "rye   25 %"),
			batch(` from "B"`, "corn  50 %", "oats  20 %", "rye   20 %", "wheat  10 %"), ""},
	} {
		b, o, th := gitsetup.MergeBills([]byte(c.base), []byte(c.ours), []byte(c.theirs))
		if c.want == "" { // the bill is out of base, so that git leaves a conflict
			assert.NotContains(t, string(b), "bill", name)
			assert.Equal(t, c.ours, string(o), name)
			assert.Equal(t, c.theirs, string(th), name)
			continue
		}
		want := []string{fields(c.want), fields(c.want), fields(c.want)}
		assert.Equal(t, want, []string{fields(string(b)), fields(string(o)), fields(string(th))}, name)
	}

	// What only one side changed, weights, and what cannot be read are git's own.
	for _, c := range [][3]string{
		{base, base, batch("", "corn  66 %", "oats  12 %", "rye   22 %")},
		{batch("", "corn  68 lb", "oats  10 lb"), batch("", "corn  66 lb", "oats  10 lb"), batch("", "corn  68 lb", "oats  12 lb")},
		{base, "batch {{{", batch("", "corn  66 %", "oats  12 %", "rye   22 %")},
	} {
		b, o, th := gitsetup.MergeBills([]byte(c[0]), []byte(c[1]), []byte(c[2]))
		assert.Equal(t, c, [3]string{string(b), string(o), string(th)})
	}
}

func fields(s string) string { return strings.Join(strings.Fields(s), " ") }

func FuzzMergeBills(f *testing.F) {
	f.Add(batch("", "corn  68 %", "rye  32 %"), batch("", "corn  66 %", "rye  34 %"), batch("", "corn  68 %", "rye  rest"))
	f.Fuzz(func(t *testing.T, base, ours, theirs string) {
		gitsetup.MergeBills([]byte(base), []byte(ours), []byte(theirs))
	})
}
