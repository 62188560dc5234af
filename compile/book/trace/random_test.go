package trace_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/trace"
	"newmake/lang/check"
	"newmake/lang/inventory"
)

// read reads a text as a house of its own. It has no batches: a chain needs none.
func read(t *testing.T, text string) *inventory.Inventory {
	t.Helper()
	h, err := check.LoadFS(fstest.MapFS{"house.batch": {Data: []byte(text)}}, "", check.Options{})
	require.NoError(t, err)
	c, _ := h.Inventory()
	return c
}

// history is an invented house and what the invention knows of it: what each thing holds.
type history struct {
	text  strings.Builder
	holds map[string][]string // what went into a thing, directly
	lots  []string
	ends  []string // bottlings
}

func invent(r *rand.Rand) *history {
	h := &history{holds: map[string][]string{}}
	w := &h.text
	fmt.Fprintln(w, "store \"Loft\" {")
	nLots := 2 + r.IntN(5)
	for i := range nLots {
		h.lots = append(h.lots, fmt.Sprintf("L-%d", i))
		fmt.Fprintf(w, "  2020-01-%02d %s 9,000 lb lot \"L-%d\" from \"Seller %d\"\n", i+1, []string{"corn", "rye"}[i%2], i, i/2)
	}
	fmt.Fprintln(w, "}")
	casks := []string{}
	tank := []string{}
	for i := range 1 + r.IntN(6) {
		run := fmt.Sprintf("20-%02d", i+1)
		fmt.Fprintf(w, "run %q of \"B\" on 2020-02-%02d {\n  used {\n", run, i+1)
		for range 1 + r.IntN(3) {
			k := r.IntN(nLots)
			fmt.Fprintf(w, "    %s 100 lb lot \"L-%d\"\n", []string{"corn", "rye"}[k%2], k)
			h.holds[run] = append(h.holds[run], fmt.Sprintf("L-%d", k))
		}
		if i > 0 && r.IntN(2) == 0 {
			p := fmt.Sprintf("20-%02d", 1+r.IntN(i))
			fmt.Fprintf(w, "    backset 40 gal from %q\n", p)
			h.holds[run] = append(h.holds[run], p)
		}
		fmt.Fprintf(w, "  }\n  fill {\n    2020-02-%02d 10:00 hearts 60 gal, 140 proof at 60 F\n", i+2)
		for k := range 1 + r.IntN(3) {
			c := fmt.Sprintf("K-%d-%d", i, k)
			fmt.Fprintf(w, "    into %q 10 gal\n", c)
			casks = append(casks, c)
			h.holds[c] = append(h.holds[c], run)
		}
		if r.IntN(2) == 0 {
			fmt.Fprintf(w, "    left 3 gal to \"Tank\"\n")
			tank = append(tank, run)
		}
		fmt.Fprintln(w, "  }\n}")
	}
	var vats []string
	var blended []string       // vats in the tank
	heel := slices.Clone(tank) // of the tank since a vat was last blended in it
	for i := 0; len(casks) > 0 && i < 3; i++ {
		v := fmt.Sprintf("Vat %d", i)
		in := ""
		if r.IntN(2) == 0 {
			in = ` in "Tank"`
			h.holds[v] = append(h.holds[v], heel...)
			heel = nil
		}
		fmt.Fprintf(w, "vat %q on 2024-03-%02d%s {\n", v, i+1, in)
		for n := 1 + r.IntN(len(casks)); n > 0; n-- {
			k := r.IntN(len(casks))
			fmt.Fprintf(w, "  from %q 9 gal, 118 proof at 60 F\n", casks[k])
			h.holds[v] = append(h.holds[v], casks[k])
			casks = slices.Delete(casks, k, k+1)
		}
		if len(tank) > 0 && r.IntN(2) == 0 {
			fmt.Fprintln(w, "  from tank \"Tank\" 3 gal, 118 proof at 60 F")
			h.holds[v] = append(append(h.holds[v], tank...), blended...)
		}
		if len(vats) > 0 && r.IntN(3) == 0 {
			fmt.Fprintf(w, "  from vat %q part 1 gal\n", vats[0])
			h.holds[v] = append(h.holds[v], vats[0])
		}
		fmt.Fprintln(w, "}")
		if vats = append(vats, v); in != "" {
			blended = append(blended, v)
		}
	}
	for i, v := range append(vats, casks...) {
		b := fmt.Sprintf("Bottled %d", i)
		fmt.Fprintf(w, "bottling %q of %q on 2024-04-01 {\n  bottles 10 of 750 mL\n}\n", b, v)
		h.holds[b] = []string{v}
		h.ends = append(h.ends, b)
	}
	return h
}

// reach is all that a thing holds, however far down.
func (h *history) reach(of string, seen map[string]bool) map[string]bool {
	for _, n := range h.holds[of] {
		if !seen[n] {
			seen[n] = true
			h.reach(n, seen)
		}
	}
	return seen
}

func names(all []trace.Step, kind trace.Kind) []string {
	out := []string{}
	for _, s := range all {
		if s.Kind == kind && !slices.Contains(out, s.Name) {
			out = append(out, s.Name)
		}
	}
	slices.Sort(out)
	return out
}

// TestComplete follows every bottling and every lot of 300 invented houses, and finds what
// the invention knows: nothing is lost, nothing is added, and both directions agree.
func TestComplete(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 15))
	for range 300 {
		h := invent(r)
		c := read(t, h.text.String())
		into := map[string][]string{}
		for _, b := range h.ends {
			got, _ := trace.Of(c, b, false)
			require.NotNil(t, got, h.text.String())
			want := []string{}
			for n := range h.reach(b, map[string]bool{}) {
				if slices.Contains(h.lots, n) {
					want = append(want, n)
					into[n] = append(into[n], b)
				}
			}
			slices.Sort(want)
			require.Equal(t, want, names(got.MadeOf, trace.Lot), "%s in\n%s", b, h.text.String())
			require.Empty(t, got.Broken, h.text.String())
		}
		for _, l := range h.lots {
			got, _ := trace.Of(c, l, false)
			require.NotNil(t, got)
			want := append([]string{}, into[l]...)
			slices.Sort(want)
			require.Equal(t, want, names(got.WentInto, trace.Bottling), "%s in\n%s", l, h.text.String())
		}
	}
}

// TestBroken leaves out a line at a time, and is told which.
func TestBroken(t *testing.T) {
	store := "store \"Loft\" {\n  2020-01-01 corn 9,000 lb lot \"C\" from \"Seller\"\n}\n"
	run := "run \"20-01\" of \"B\" on 2020-02-01 {\n  used {\n    corn 100 lb lot \"C\"\n  }\n  fill {\n    2020-02-09 10:00 hearts 60 gal, 140 proof at 60 F\n    into \"K\" 53 gal\n  }\n}\n"
	vat := "vat \"V\" on 2024-02-29 {\n  from \"K\" 50 gal, 118 proof at 60 F\n}\n"
	end := "bottling \"24C01\" of \"V\" on 2024-03-01 {\n  bottles 10 of 750 mL\n}\n"
	for _, c := range []struct{ text, what, mend string }{
		{store + run + vat + end, "", ""},
		{run + vat + end, "no store says when it came", `2020-02-01 corn 100 lb lot "C" from "who sold it"`},
		{strings.Replace(store, ` from "Seller"`, "", 1) + run + vat + end, "from whom it came", `from "who sold it"`},
		{store + strings.Replace(run, ` lot "C"`, "", 1) + vat + end, "of which lot its corn was", `corn 100 lb lot "C"`},
		{store + strings.Replace(run, "  used {\n    corn 100 lb lot \"C\"\n  }\n", "", 1) + vat + end, "which lots went into it", "used {"},
		{store + run + "cask \"K2\" {\n}\n" + strings.Replace(vat, `"K"`, `"K2"`, 1) + end, "no run says that it filled it", `into "K2" __ gal`},
		{store + run + "vat \"V\" on 2024-02-29 {\n}\n" + end, "nothing says what went into it", "from "},
		{store + run + strings.Replace(vat, `from "K"`, `from tank "Tank"`, 1) + end, `what was in tank "Tank"`, `to "Tank"`},
	} {
		got, _ := trace.Of(read(t, c.text), "24C01", false)
		require.NotNil(t, got)
		if c.what == "" {
			assert.Empty(t, got.Broken)
			continue
		}
		require.Len(t, got.Broken, 1, c.text)
		assert.Contains(t, got.Broken[0].What, c.what)
		assert.Contains(t, got.Broken[0].Mend, c.mend)
		assert.Positive(t, got.Broken[0].Line)
	}

	// A run that names no lot may hold any that had come by then, and none that came later.
	may, _ := trace.Of(read(t, store+strings.Replace(run, ` lot "C"`, "", 1)+vat+end), "C", false)
	require.Len(t, may.Broken, 1)
	assert.True(t, may.Broken[0].May)
	later, _ := trace.Of(read(t, strings.Replace(store, "2020-01-01", "2020-02-02", 1)+strings.Replace(run, ` lot "C"`, "", 1)+vat+end), "C", false)
	assert.Empty(t, later.Broken)
	other, _ := trace.Of(read(t, strings.Replace(store, "corn", "rye", 1)+strings.Replace(run, ` lot "C"`, "", 1)+vat+end), "C", false)
	assert.Empty(t, other.Broken)
}

// TestMingled: what was left in a tank is in what is blended or reduced in there next, and
// in nothing after that.
func TestMingled(t *testing.T) {
	run := func(number, day, hearts, left string) string {
		return fmt.Sprintf("run %q of \"B\" on 2020-02-01 {\n  spirit {\n    %s 10:00 hearts 60 gal, 140 proof at 60 F%s\n  }\n  fill {\n    %s 12:00 gauge 60 gal, 120 proof at 60 F\n    into \"K-%s\" 53 gal\n%s  }\n}\n", number, day, hearts, day, number, left)
	}
	in := ` to "Receiver"`
	left := "    left 3 gal to \"Receiver\"\n"
	text := run("20-01", "2020-02-08", in, left) + run("20-02", "2020-02-15", in, "") + run("20-03", "2020-02-22", in, left) +
		"vat \"V\" on 2024-03-01 in \"Receiver\" {\n  from \"K-20-02\" 50 gal, 118 proof at 60 F\n}\n" +
		"vat \"W\" on 2024-04-01 in \"Receiver\" {\n  from \"K-20-03\" 50 gal, 118 proof at 60 F\n}\n"
	c := read(t, text)
	for of, want := range map[string][]string{
		"K-20-01": {"20-01"},
		"K-20-02": {"20-01", "20-02"},
		"K-20-03": {"20-03"}, // 20-02 took what 20-01 had left
		"V":       {"20-01", "20-02", "20-03"},
		"W":       {"20-03"},
	} {
		got, _ := trace.Of(c, of, false)
		assert.Equal(t, want, names(got.MadeOf, trace.Run), of)
	}
}

// TestMends: a lot that came later, or a run that was made later, is not proposed.
func TestMends(t *testing.T) {
	text := "store \"Loft\" {\n  2020-02-03 corn 9,000 lb lot \"Later\" from \"S\"\n}\n" +
		"run \"20-01\" of \"B\" on 2020-02-01 {\n  used {\n    corn 100 lb\n    backset 40 gal\n  }\n}\n" +
		"run \"20-02\" of \"B\" on 2020-02-04 {\n  used {\n    corn 100 lb\n    backset 40 gal\n  }\n}\n"
	mends := func(of string, litres bool) (out []string) {
		got, _ := trace.Of(read(t, text), of, litres)
		for _, b := range got.Broken {
			out = append(out, b.Mend)
		}
		return out
	}
	assert.Equal(t, []string{`corn 100 lb lot "as the sack says"`, `backset 40 gal from "N"`}, mends("20-01", false))
	assert.Equal(t, []string{`corn 100 lb lot "Later"`, `backset 40 gal from "20-01"`}, mends("20-02", false))
	assert.Equal(t, []string{`corn 45 kg lot "Later"`, `backset 150 L from "20-01"`}, mends("20-02", true))
}

// TestNoSuchName gives the names that there are.
func TestNoSuchName(t *testing.T) {
	got, near := trace.Of(read(t, "store \"Loft\" {\n  2020-01-01 corn 9,000 lb lot \"C\"\n}\n"), "D", false)
	assert.Nil(t, got)
	assert.Equal(t, []string{"C"}, near)
}

// TestFilledAgain keeps the lives of one serial apart, on the very day too.
func TestFilledAgain(t *testing.T) {
	fill := func(run, day string) string {
		return fmt.Sprintf("run %q of \"B\" on %s {\n  fill {\n    %s 10:00 into \"K\" 53 gal\n  }\n}\n", run, day, day)
	}
	c := read(t, fill("20-01", "2020-02-01")+fill("24-01", "2024-02-29")+
		"vat \"V\" on 2024-02-29 {\n  from \"K\" 50 gal, 118 proof at 60 F\n}\nvat \"W\" on 2028-02-29 {\n  from \"K\" 50 gal, 118 proof at 60 F\n}\n")
	v, _ := trace.Of(c, "V", false)
	assert.Equal(t, []string{"20-01"}, names(v.MadeOf, trace.Run))
	w, _ := trace.Of(c, "W", false)
	assert.Equal(t, []string{"24-01"}, names(w.MadeOf, trace.Run))
	k, _ := trace.Of(c, "K", false)
	assert.Len(t, k.Of, 2)
}

// TestFirstInFirstOut: of a run that names no lot the oldest that was there is taken, two where
// the first runs out; back from the bottle, and forth from each lot. That it names none is said.
func TestFirstInFirstOut(t *testing.T) {
	c := read(t, "store \"Loft\" {\n  2020-01-01 corn 80 lb lot \"A\" from \"Seller\"\n  2020-01-02 corn 80 lb lot \"B\" from \"Seller\"\n  2020-02-02 corn 80 lb lot \"C\" from \"Seller\"\n}\n"+
		"run \"20-01\" of \"X\" on 2020-02-01 {\n  used {\n    corn 100 lb\n  }\n  fill {\n    2020-02-09 10:00 hearts 60 gal, 140 proof at 60 F\n    into \"K\" 53 gal\n  }\n}\n"+
		"vat \"V\" on 2024-02-29 {\n  from \"K\" 50 gal, 118 proof at 60 F\n}\nbottling \"24C01\" of \"V\" on 2024-03-01 {\n  bottles 10 of 750 mL\n}\n")
	got, _ := trace.Of(c, "24C01", false)
	assert.Equal(t, []string{"A", "B"}, names(got.MadeOf, trace.Lot))
	require.Len(t, got.Broken, 1)
	assert.Equal(t, `corn 100 lb lot "A"`, got.Broken[0].Mend)
	for lot, bottled := range map[string]bool{"A": true, "B": true, "C": false} {
		got, _ := trace.Of(c, lot, false)
		assert.Equal(t, bottled, len(names(got.WentInto, trace.Bottling)) == 1, lot)
	}
}
