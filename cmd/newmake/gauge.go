package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/compile/show/formats"
	"newmake/compile/show/gauged"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

const gaugeShort = `newmake gauge works a gauger's question put in words, and shows the working.

  newmake gauge 38 gal at 134.1 proof at 66 F, reduce to 114 proof
  newmake gauge reading 192.8 proof at 72.1 F
  newmake gauge reading 63.5 % vol at 18 C

newmake help gauge has more of them.
`

// gaugeFlags are what a person asks of an answer.
type gaugeFlags struct{ answerFlags }

func gaugeCommand(a *app) *cobra.Command {
	var f gaugeFlags
	cmd := &cobra.Command{
		Use:   "gauge WORDS...",
		Short: "Strength, pure alcohol, reduction, filling, blending: with the working",
		Long: "gauge works a question put in words with units, and shows the working line by line, so\n" +
			"that it can be followed with the gauging tables open beside it.\n\n" +
			"A lot is an amount and a strength: 38 gal at 134.1 proof at 66 F. The amount is a volume,\n" +
			"a weight, or pure alcohol; the strength is true: proof and % abv at 60 F beside gallons\n" +
			"(40 % abv is 80 proof), % vol at 20 C beside litres. A reading is what the hydrometer shows,\n" +
			"and needs its temperature: 38 gal reading 136 proof at 66 F. A bare number is US proof; beside\n" +
			"C or litres it needs its unit, reading 63.5 % vol at 18 C. It may be corrected:\n" +
			"hydrometer 0.1, thermometer 0.2 F. Solids in it are written solids 5 g/L. Then comes what to\n" +
			"do: reduce to a strength, fill a cask at a strength, blend with another lot.\n\n" +
			"A number below zero needs quotes about the words, as in the last example.",
		Example: "  newmake gauge 38 gal at 134.1 proof at 66 F, reduce to 114 proof\n" +
			"  newmake gauge reading 192.8 proof at 72.1 F\n" +
			"  newmake gauge 81,000 lb at 190 proof\n" +
			"  newmake gauge fill 53 gal at 60 % abv from 70 % abv\n" +
			"  newmake gauge 20 gal at 134 proof, blend with 5 gal at 100 proof\n" +
			"  newmake gauge 200 L at 63 % vol at 18 C, reduce to 46 % vol with water at 12 C\n" +
			"  newmake gauge 400 lb at 128 proof, fill 30 gal at 114 proof\n" +
			"  newmake gauge reading 84.6 proof at 65 F, solids 5 g/L\n" +
			"  newmake gauge reading 63.5 % vol at 18 C\n" +
			"  newmake gauge 50 proof-gal at 114 proof --units si\n" +
			"  newmake gauge \"reading 192.85 proof at 72.10 F, hydrometer -0.03, thermometer 0.05 F\"",
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				fmt.Fprint(a.out, wording.Restated(gaugeShort, unitsHere()))
				return nil
			}
			return f.run(a, strings.Join(args, " "))
		},
	}
	cmd.SetFlagErrorFunc(func(_ *cobra.Command, err error) error {
		return usage("%v\nFor a number below zero put quotes about the words: newmake gauge \"reading 192.85 at 72 F, hydrometer -0.03\"", err)
	})
	f.declare(cmd, formats.OfAnswer, "those of the words")
	return cmd
}

// run answers one question. Nothing is answered where anything is in doubt.
func (f gaugeFlags) run(a *app, words string) error {
	format, system, err := f.choose(formats.OfAnswer)
	if err != nil {
		return err
	}
	reader := unitsHere()
	if system != nil {
		if reader = quantity.US; *system == recipe.SI {
			reader = quantity.SI
		}
	}
	q, list := proofing.Read(words, reader)
	if list.HasErrors() {
		return a.noAnswer(list, format)
	}
	shown := q.OwnUnits()
	if system != nil {
		if shown = measure.US; *system == recipe.SI {
			shown = measure.SI
		}
	}
	answer, undone := proofing.Solve(q, shown)
	if list = append(list, undone...); list.HasErrors() {
		return a.noAnswer(list, format)
	}
	a.show(list)
	if format == "json" {
		var out bytes.Buffer
		if err := diag.EncodeJSON(&out, "", answer); err != nil {
			return err
		}
		return a.write(f.output, out.Bytes(), nil)
	}
	return a.write(f.output, []byte(gauged.Text(answer)), nil)
}
