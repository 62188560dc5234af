package ledger_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/book/ledger"
	"newmake/compile/book/trace"
	"newmake/lang/testflag"
)

// plainly is a holder's name as the house has it: the serial of a cask, the number of a run.
func plainly(holder string) (kind trace.Kind, name string) {
	name, _, _ = strings.Cut(holder, ", filled ")
	for prefix, kind := range map[string]trace.Kind{"cask ": trace.Cask, "vat ": trace.Vat, "bottling ": trace.Bottling} {
		if rest, is := strings.CutPrefix(name, prefix); is {
			return kind, rest
		}
	}
	for _, prefix := range []string{"hearts of run ", "feints of run ", "run "} {
		if rest, is := strings.CutPrefix(name, prefix); is {
			return trace.Run, strings.TrimSuffix(rest, ", in the stills")
		}
	}
	return "", ""
}

// TestTraceAgrees follows every bottling of invented houses by the movements of their books,
// and finds the casks, runs and lots of grain that a trace finds; and back from each lot to
// the bottles. Nothing in the chain is broken.
func TestTraceAgrees(t *testing.T) {
	bottled := 0
	for seed := uint64(0); seed < 1000; seed += uint64(testflag.Every(20)) {
		h := invent(seed)
		house, c, _ := read(t, h.text.String())
		from := map[string][]ledger.Line{}
		lots := map[string][]string{}
		for _, m := range months {
			l := booksOf(house, c, m)
			for _, x := range l.Lines {
				if x.Corrects == "" {
					from[x.To] = append(from[x.To], x)
				}
			}
			for _, u := range l.Uses {
				lots[u.Run] = append(lots[u.Run], u.Lot)
			}
		}
		into := map[string][]string{}
		for lot := range h.out {
			want := map[trace.Kind][]string{}
			add := func(kind trace.Kind, name string) {
				if kind != "" && !slices.Contains(want[kind], name) {
					want[kind] = append(want[kind], name)
				}
			}
			seen := map[string]bool{}
			var walk func(holder, on string)
			walk = func(holder, on string) {
				if holder == "Tank" { // what came since it was last emptied into a vat
					since := ""
					for _, vat := range from {
						for _, x := range vat {
							if x.From == "Tank" && x.On < on {
								since = max(since, x.On)
							}
						}
					}
					for _, x := range from["Tank"] {
						if x.On <= on && x.On >= since {
							walk(x.From, x.On)
						}
					}
					return
				}
				if seen[holder] {
					return
				}
				seen[holder] = true
				kind, name := plainly(holder)
				if kind == "" {
					return // over the edge: what was lost leads nowhere
				}
				add(kind, name)
				if kind == trace.Run {
					for _, l := range lots[name] {
						add(trace.Lot, l)
						if !slices.Contains(into[l], lot) {
							into[l] = append(into[l], lot)
						}
					}
				}
				for _, x := range from[holder] {
					walk(x.From, x.On)
				}
			}
			walk("bottling "+lot, "")
			got, _ := trace.Of(c, lot, false)
			require.NotNil(t, got, lot)
			require.Empty(t, got.Broken, "%d: %s", seed, lot)
			for _, kind := range []trace.Kind{trace.Vat, trace.Cask, trace.Run, trace.Lot} {
				slices.Sort(want[kind])
				require.Equal(t, want[kind], named(got.MadeOf, kind), "%d: %s of %s\n%s", seed, kind, lot, h.text.String())
			}
			bottled++
		}
		for l, want := range into {
			got, _ := trace.Of(c, l, false)
			require.NotNil(t, got)
			slices.Sort(want)
			require.Equal(t, want, named(got.WentInto, trace.Bottling), "%d: %s\n%s", seed, l, h.text.String())
		}
	}
	require.Greater(t, bottled, 50)
}

// named are the names of one kind among the steps of a trace, each once.
func named(all []trace.Step, kind trace.Kind) []string {
	var out []string
	for _, s := range all {
		if s.Kind == kind && !slices.Contains(out, s.Name) {
			out = append(out, s.Name)
		}
	}
	slices.Sort(out)
	return out
}
