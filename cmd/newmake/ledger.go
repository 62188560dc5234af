package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/compile/blank"
	"newmake/compile/book/ledger"
	"newmake/compile/plan"
	"newmake/compile/show/formats"
	"newmake/compile/show/ledgered"
	"newmake/lang/check"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/words"
)

// ledgerFlags are what a person asks of the books.
type ledgerFlags struct {
	booksFlags
	law                string
	full, people, cost bool
	margin             float64
}

func ledgerCommand(a *app) *cobra.Command {
	var f ledgerFlags
	cmd := &cobra.Command{
		Use:   "ledger MONTH",
		Short: "A month's books, from the records of runs, casks, vats and bottles",
		Long: "ledger keeps the books of a month by the records alone: materials used, spirit produced,\n" +
			"filled, dumped, bottled, withdrawn, sampled, destroyed and lost, and what is on hand; each\n" +
			"line with its run or cask and the section that wants it, each gauge with its serial. It\n" +
			"checks that all of it balances, and names each field that is missing with the line to\n" +
			"write. A correction, or an entry written late, is a line of its own in its own month: what a\n" +
			"month reported stays as it was. --cost adds what a run, a cask and a bottle cost, the excise,\n" +
			"and the price that leaves a margin: heat, water and work by the plan that `record` kept when it\n" +
			"opened the run, materials by the prices of their lots, all else by the house's costs as they\n" +
			"stand now. Not an official form, not legal advice.",
		Example: "  newmake ledger 2026-03\n" +
			"  newmake ledger 2026-03 --full\n" +
			"  newmake ledger 2026-03 --house examples/lantern-hollow --law uk\n" +
			"  newmake ledger 2026-03 --cost --margin 45\n" +
			"  newmake ledger 2026-03 -o march.csv",
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usage("ledger needs a month, as in `newmake ledger 2026-03`")
			}
			return f.run(a, args[0])
		},
	}
	f.declare(cmd, formats.OfLedger)
	cmd.Flags().StringVar(&f.law, "law", "", "whose books: a country of the library, such as us, uk or ireland (default: that of the plant; else us for a house that counts in gallons, and eu)")
	cmd.Flags().BoolVar(&f.full, "full", false, "every line, gauge record and use")
	cmd.Flags().BoolVar(&f.people, "people", false, "with the initials of who wrote each line")
	cmd.Flags().BoolVar(&f.cost, "cost", false, "what runs, casks and bottles cost, and the excise")
	cmd.Flags().Float64Var(&f.margin, "margin", 0, "per cent of a bottle's price that is to be left, with --cost")
	completeFlag(cmd, "law", func([]string) []cobra.Completion { return house.Builtin().EntryNames(schema.Country) })
	return cmd
}

func (f ledgerFlags) run(a *app, asked string) error {
	format, err := formats.OfLedger.Choose(f.format, f.output)
	if err != nil {
		return err
	}
	month, err := time.Parse("2006-01", asked)
	if err != nil || !record.DateOf(month).Planned() {
		return usage("a month is written 2026-03, not %q", asked)
	}
	if !(f.margin >= 0 && f.margin < 100) || f.margin > 0 && !f.cost {
		return usage("--margin is a share of the price, from 0 to 100 per cent, and stands beside --cost")
	}
	b, err := f.read(a, format)
	if err != nil {
		return err
	}
	h := ledger.HouseOf(b.House, b.texts, f.law, f.people)
	if h.Law.Country == nil {
		return usage("--law is a country: %s, not %q", words.Or(b.House.EntryNames(schema.Country)), f.law)
	}
	if f.cost {
		h.Prices = pricesOf(b.House, b.texts)
		h.Prices.Margin = f.margin / 100
	}
	out, err := formats.Ledger(ledger.Of(h, month.Year(), month.Month()), format, ledgered.Options{Bold: a.bold(f.output), Full: f.full || f.output != ""})
	if err != nil {
		return err
	}
	return f.answer(a, b, format, out)
}

// pricesOf are the prices of a house, and what its runs cost by their plans: those that were
// kept when they were opened, else those of their batches, each computed once.
func pricesOf(h *check.House, texts *inventory.Inventory) *ledger.Prices {
	p := &ledger.Prices{}
	plans := map[string]*plan.Cost{}
	p.Plan = func(r *record.Run) (*plan.Cost, bool) {
		if k := keptCost(r); k != nil {
			return k, true
		}
		if k, is := plans[r.Batch]; is {
			return k, false
		}
		plans[r.Batch] = nil
		if b, said := h.Batch(r.Batch); b != nil && !said.HasErrors() {
			if is, _ := compile.Compile(b); is != nil {
				plans[r.Batch] = is.Cost
			}
		}
		return plans[r.Batch], false
	}
	p.New = func(name string) bool { b, _ := h.Batch(name); return b != nil && b.Cask.New }
	if b := h.BatchOfBooks(texts); b != nil {
		p.Costs = b.Costs
	}
	return p
}

// keptCost is what a run was to cost by the plan that is kept in the folder of its record;
// nil where none is kept, or none of that batch.
func keptCost(r *record.Run) *plan.Cost {
	if r.At.Src == nil || !plainNumber().MatchString(r.Number) {
		return nil
	}
	text, err := os.ReadFile(plannedBeside(filepath.Join(filepath.Dir(r.At.Src.Name), r.Number+ending)))
	if err != nil {
		return nil
	}
	var kept blank.Planned
	if json.Unmarshal(text, &kept) != nil || kept.Format != blank.Format || kept.Batch != r.Batch {
		return nil
	}
	return kept.Cost
}
