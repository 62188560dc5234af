package ledger_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/ledger"
	"newmake/lang/diag"
)

// written puts a line that the books ask for into a text, as its words say, with its blanks filled.
func written(t *testing.T, text string, m ledger.Missing) string {
	t.Helper()
	line := m.Mend
	for blank, with := range map[string]string{"__ gal": "5 gal", "__ proof": "115 proof", "__ F": "60 F", "gross __ lb": "gross 480 lb", "tare __ lb": "tare 110 lb", "on __": "on 2024-02-28", "__ of": "10 of", `"which run"`: `"24-01"`, `"which cask"`: `"K"`, `"which tank"`: `"Small tank"`} {
		line = strings.ReplaceAll(line, blank, with)
	}
	lines := strings.Split(text, "\n")
	at := m.Line - 1
	put := func(i int, s string) string {
		return strings.Join(append(append(append([]string{}, lines[:i]...), s), lines[i:]...), "\n")
	}
	// closing is where the block ends that begins on a line, or that a stage of it is in.
	closing := func(from int, stage string) (int, bool) {
		depth := 0
		inner := -1
		for i := from; i < len(lines); i++ {
			if stage != "" && strings.HasPrefix(lines[i], "  "+stage) {
				inner = i
			}
			depth += strings.Count(lines[i], "{") - strings.Count(lines[i], "}")
			if inner >= 0 && depth == 1 && i > inner || inner < 0 && depth == 0 {
				return i, inner >= 0
			}
		}
		t.Fatal("no end")
		return 0, false
	}
	instage := func(from int, stage string) string {
		end, there := closing(from, stage)
		if there {
			return put(end, line)
		}
		return put(end, "  "+stage+" {\n"+line+"\n}")
	}
	number := func() string { // a run "N" is to be written too
		if strings.Contains(m.In, `a run "N"`) {
			return "run \"N\" of \"B\" on 2024-01-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  spirit {\n    2024-01-05 10:00 feints 50 gal, 70 proof at 60 F\n  }\n}\n"
		}
		return ""
	}
	run := -1
	for i, l := range lines {
		if strings.HasPrefix(l, "run ") && run < 0 {
			run = i
		}
	}
	switch in := m.In; {
	case m.Instead:
		lines[at] = line
		return number() + strings.Join(lines, "\n")
	case strings.HasPrefix(in, "in its `spirit`"):
		return number() + instage(at, "spirit")
	case in == "in its `fill`":
		return instage(at, "fill")
	case in == "in the `fill` of the run that it comes from":
		return instage(run, "fill")
	case strings.HasPrefix(in, "before"):
		return put(at, line)
	case strings.HasPrefix(in, "below it"):
		return put(at+1, line)
	case in == "in the bottling":
		for !strings.HasPrefix(lines[at], "bottling") {
			at--
		}
		end, _ := closing(at, "")
		return put(end, line)
	case strings.HasPrefix(in, "in store "):
		for i, l := range lines {
			if strings.HasPrefix(l, "store ") {
				return put(i+1, line)
			}
		}
	case strings.HasPrefix(in, "in one store for all"):
		return "store \"Grain loft\" {\n" + line + "\n}\n" + text
	case in == "in a file of the house":
		return text + line + "\n"
	}
	t.Fatalf("where is `%s` written? %q", m.Mend, m.In)
	return ""
}

// asks are texts to each of which a line is missing that the books ask for, by the words that it
// is asked with.
func asks() map[string]string {
	whole := loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  spirit {\n    2024-02-06 12:00 off\n    feints 40 gal, 70 proof at 60 F\n  }\n  fill {\n    2024-02-09 10:00 hearts 51.5 gal, 120 proof at 60 F\n    11:00 gauge 51.4 gal, 120 proof at 60 F\n    into \"K\" 50 gal, tare 100 lb\n    left 1 gal, 120 proof at 60 F to \"Tank\"\n  }\n}\n" +
		"cask \"K\" {\n  2024-02-10 leaked 1 gal, 120 proof at 60 F\n  2024-02-11 topped 1 gal, 120 proof at 60 F from \"24-01\" \"slow\"\n}\n" +
		"vat \"V\" on 2024-02-20 {\n  from \"K\" 45 gal, 118 proof at 60 F\n  from tank \"Tank\" 1 gal, 120 proof at 60 F\n  2024-02-21 gauge 59 gal, 90 proof at 60 F\n}\n" +
		"bottling \"24B21\" of \"V\" on 2024-02-21 {\n  test 750 mL, 90 proof at 60 F\n  bottles 295 of 750 mL at 90 proof\n}\n"
	with := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(whole) }
	vatless := whole[:strings.Index(whole, "vat ")]
	end := func(line string) string {
		return strings.Replace(vatless, "from \"24-01\" \"slow\"", "from \"24-01\"\n  2024-02-19 "+line, 1)
	}
	return map[string]string{
		"how much leaked from cask K":                              with("leaked 1 gal, 120 proof at 60 F", "leaked"),
		"how much cask K was topped with, and how strong it was":   with("topped 1 gal, 120 proof at 60 F", "topped"),
		"what cask K was topped with":                              with("from \"24-01\" \"slow\"", "from \"Elsewhere\" \"slow\""),
		"how cask K was destroyed, and who saw it":                 end("destroyed 50 gal, 120 proof at 60 F by \"M\""),
		"where cask K was emptied to":                              end("emptied 50 gal, 120 proof at 60 F \"it wept\""),
		"the strength of cask K when it was emptied":               with("from \"K\" 45 gal, 118 proof at 60 F", "from \"K\" 45 gal by \"M\" \"dark\""),
		"how much of cask K was drawn":                             with("from \"K\" 45 gal, 118 proof at 60 F", "from \"K\" part \"dark\""),
		"what cask K held when it was emptied":                     with("from \"K\" 45 gal, 118 proof at 60 F", "from \"K\" \"dark\", written 2024-02-23"),
		"how much was left of hearts of run 24-01, and how strong": with("left 1 gal, 120 proof at 60 F to", "left to"),
		"to which tank went what was left of hearts of run 24-01":  with("left 1 gal, 120 proof at 60 F to \"Tank\"", "left 6 gal, 120 proof at 60 F \"clear\"", "hearts 51.5 gal", "hearts 56.5 gal", "gauge 51.4 gal", "gauge 56.4 gal", "  from tank \"Tank\" 1 gal, 120 proof at 60 F\n", ""),
		"how much was lost of vat V, and how strong it was":        with("  2024-02-21 gauge 59 gal", "  lost 1 gal \"spilt\"\n  2024-02-21 gauge 59 gal", "from \"K\" 45 gal, 118 proof at 60 F", "from \"K\" 45 gal, 118 proof at 60 F\n  reduce 10 gal"),
		"how much is in vat V, and how strong":                     with("gauge 59 gal, 90 proof at 60 F", "gauge 90 proof at 60 F by \"M\""),
		"what was in tank Old when it went into vat V":             with("from tank \"Tank\"", "from tank \"Old\""),
		"how much of tank Tank went into vat V":                    with("from tank \"Tank\" 1 gal, 120 proof at 60 F", "from tank \"Tank\" part"),
		"how much came from tank Tank":                             with("from tank \"Tank\" 1 gal, 120 proof at 60 F", "from tank \"Tank\""),
		"where the other":                                          with("bottles 295", "bottles 195"),
		"the fill and the strength that were found in a bottle":    with("  test 750 mL, 90 proof at 60 F\n", ""),
		"the strength in the bottles of 24B21":                     with("2024-02-21 gauge 59 gal, 90 proof at 60 F", "reduce 10 gal", "  test 750 mL, 90 proof at 60 F\n", "", "bottles 295 of 750 mL at 90 proof", "bottles 295 of 750 mL \"clear\"\n  2024-02-25 samples 1 of 750 mL"),
		"what was in \"Gone\" when it was bottled":                 "",
		"no spirit reads":                                          with("45 gal, 118 proof at 60 F", "45 gal, 198 proof at 20 F"),
		"200 proof is stronger than any still makes":               with("45 gal, 118 proof at 60 F", "45 gal, 200 proof at 60 F"),
		"when lot D of corn came, and from whom":                   with("lot \"C\"\n  }\n  spirit", "lot \"D\"\n  }\n  spirit"),
		"of which lot the corn of run 24-01 was":                   with("corn 600 lb lot \"C\"\n  }\n  spirit", "corn 600 lb from \"Seller\" by \"M\"\n  }\n  spirit"),
		"the strength of the feints of run 24-01":                  with("feints 40 gal, 70 proof at 60 F", "feints 40 gal to \"Feints tank\" by \"M\""),
		"from where the feints of run 24-01 came":                  with("    2024-02-06 12:00 off", "    2024-02-06 08:00 charge feints 40 gal, 70 proof at 60 F \"old\"\n    12:00 off"),
		"how much the hearts of run 24-01 are, and how strong":     with("hearts 51.5 gal, 120 proof at 60 F", "hearts volume, strength"),
		"the strength of the hearts of run 24-01":                  with("hearts 51.5 gal, 120 proof at 60 F", "hearts 51.5 gal"),
		"how much the hearts of run 24-01 are":                     with("hearts 51.5 gal, 120 proof at 60 F", "hearts 120 proof at 60 F"),
		"how much went into cask K":                                with("into \"K\" 50 gal, tare 100 lb", "into \"K\" tare 100 lb"),
		"at which strength cask K was filled":                      with("hearts 51.5 gal, 120 proof at 60 F", "hearts 51.5 gal", "gauge 51.4 gal, 120 proof at 60 F", "gauge 51.4 gal"),
		"the tare of cask K":                                       with("into \"K\" 50 gal, tare 100 lb", "into \"K\" 50 gal, gross 480 lb \"new\""),
		"how much of which feints run 24-01 charged":               with("  spirit {\n", "  strip {\n    2024-02-05 10:00 low-wines 140 gal, 50 proof at 60 F\n  }\n  spirit {\n"),
		"how much feints run 24-01 left":                           with("  spirit {\n", "  strip {\n    2024-02-05 10:00 low-wines 240 gal, 50 proof at 60 F\n  }\n  spirit {\n", "    feints 40 gal, 70 proof at 60 F\n", ""),
		"where the other 6":                                        with("    left 1 gal, 120 proof at 60 F to \"Tank\"\n", "", "hearts 51.5 gal", "hearts 53.5 gal", "gauge 51.4 gal", "gauge 53.4 gal", "  from tank \"Tank\" 1 gal, 120 proof at 60 F\n", ""),
	}
}

// TestMendsParse writes every line that the books can ask for into the text that lacks it: it is
// of the language, and is asked for no more.
func TestMendsParse(t *testing.T) {
	n := 0
	for what, text := range asks() {
		if text == "" {
			continue // check refuses a bottling of nothing that the house has
		}
		h, c, said := read(t, text)
		require.False(t, said.HasErrors(), "%s: %v\n%s", what, said, text)
		l := booksOf(h, c, month(2024, 2))
		found := false
		for _, m := range l.Missing {
			is := written(t, text, m)
			h, c, said := read(t, is)
			for _, r := range c.Runs {
				_, of := h.Run(r.Number)
				said = append(said, of...)
			}
			for _, d := range said { // what is filled in here, 5 of everything, may be too little for the bottles
				assert.False(t, d.Severity == diag.Error && d.Code != diag.CodeUnknownName && d.Code != diag.CodeOverdrawn, "%s: `%s`: %s\n%s", what, m.Mend, d.Summary, is)
			}
			if !strings.HasPrefix(m.What, what) {
				continue
			}
			found = true
			for _, o := range booksOf(h, c, month(2024, 2)).Missing {
				assert.NotEqual(t, m.What, o.What, "`%s` does not mend it\n%s", m.Mend, is)
			}
		}
		if assert.True(t, found, "%s: %v", what, fmt.Sprint(l.Missing)) {
			n++
		}
	}
	// Each place where the books ask for a line is one of them.
	all := 0
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, f := range files {
		if !strings.HasSuffix(f, "_test.go") {
			text, err := os.ReadFile(f)
			require.NoError(t, err)
			all += len(regexp.MustCompile(`Missing\{What|w\.What, w\.Mend`).FindAll(text, -1))
		}
	}
	assert.Equal(t, all-1, n, "but that for a bottling of nothing")
}
