package ledger

import (
	"fmt"
	"strings"
)

// field is a thing that a section of 27 CFR part 19, subpart V, wants written down, and where
// the books have it.
type field struct {
	section, wants string
	at             string // its way in the ledger's JSON, "" where the books do not have it
	write          string // where it is not there, or comes of a line: what to write, and where
}

// fields are the sections field by field, as far as they were read in a copy of November 2024;
// 19.592, 19.598, 19.599 and 19.601 paragraph by paragraph, in copies of 2024 and 2026 that agree;
// of 19.600 and 19.619 only the older text, 19.750 and 19.769, was read.
var fields = []field{
	{"19.484, 19.485", "lot code of packages filled on a day", "", "a cask's serial and the day of its fill tell it; the sheet of a plan prints the code"},
	{"19.584", "materials received: date, kind, quantity, from whom", "materials.received", "lines of a `store`"},
	{"19.584", "materials used, by run and lot", "uses.used", "`used` in the `run`"},
	{"19.584", "spirits and feints used again", "lines.kind", "`charge feints` of the spirit run"},
	{"19.584", "materials destroyed or discarded", "materials.discarded", "`discarded` in the `store`"},
	{"19.585", "kind and quantity produced, each day", "lines.amount", "`hearts` of the run"},
	{"19.585", "gauge in each receiving tank", "gauges.proof", "a line `hearts` for each receiver"},
	{"19.585", "lost before the production gauge", "accounts.lost", "what was charged and was not gauged again"},
	{"19.585", "trace to the mash", "lines.of", "`newmake trace`"},
	{"19.590", "receipts, tank to tank, package to package", "lines.kind", ""},
	{"19.591", "packages on hand, by the month and the year of their fill", "onHand.since", ""},
	{"19.592(a)", "tank", "onHand.name", "the tank's name in `to`"},
	{"19.592(b)", "serial of the tank's record, from 1 each year", "", "the line in the books is its record: its file and line; gauges have serials of their own"},
	{"19.592(c)", "date of each transaction", "lines.date", ""},
	{"19.592(d)", "kind of spirit", "", "that of the batches: `newmake trace` of the tank"},
	{"19.592(d)(1)", "name and plant number of the producer", "house", "the plant number stands nowhere here: on the cover of the books"},
	{"19.592(d)(4)", "packages dumped into the tank, how many and of how much, or that it came by pipe", "lines.from", "`emptied … to` of each cask; `left … to` and `hearts … to` came by pipe"},
	{"19.592(d)(5)", "youngest age at each deposit", "blends.youngest", "of a vat; of another tank `newmake trace` says what went in"},
	{"19.592(f), (g)", "proof gallons in and out", "lines.amount", ""},
	{"19.592(h)", "related record, with its serial", "lines.of", "the run, cask or vat of the line, and its file and line"},
	{"19.592(i)", "proof gallons left at the end of each month", "onHand.amount", ""},
	{"19.592(j)", "gain or loss", "accounts.lost", "by account; `--full` has each line"},
	{"19.598(a), (h)", "batch serial and date", "blends.date", "the name and the day of the `vat`"},
	{"19.598(b)", "name and plant number of the producer", "house", "the plant number stands nowhere here: on the cover of the books"},
	{"19.598(c)", "kind and age", "blends.spirits.age", "oak chips, caramel and imports are things that nothing here knows of: a `note` of the vat"},
	{"19.598(d), (e)", "tank that is filled, tank or container that is emptied", "lines.from", "`vat … in` and `from`"},
	{"19.598(f), (i), (j)", "other ingredients, formula", "", "the ledger knows no spirit with anything added but water: a `note` of the vat"},
	{"19.598(g)", "serial of the source's record", "gauges.serial", "of what was gauged as it was dumped"},
	{"19.598(k)", "dumped before, and held in tanks", "lines.from", "`from tank`, `from vat`, or what lay in the tank of the vat"},
	{"19.598(l)", "total proof gallons", "gauges.amount.proofGallons", "`gauge` of the vat"},
	{"19.598(m) to (p)", "what went on to where, how much, when", "lines.to", "`bottling … of` the vat, or `from vat` of another"},
	{"19.598(q)", "batch gain or loss", "accounts.lost", "by account; `--full` has each line"},
	{"19.598(r)", "effective tax rate, where wine or flavours are in it", "", "nothing here has such in it"},
	{"19.599(a), (d)", "bottling tank, serial of the batch it is of", "lines.from", "`bottling … of`, the name of the vat"},
	{"19.599(b), (g)", "bottling serial, date of the fill", "blends.name", "`bottling`: its lot code, which stands for no other; `check` holds one that is made of a date against the day"},
	{"19.599(c)", "formula, if any", "", "a `note` of the bottling"},
	{"19.599(e)", "kind, and age if it is claimed", "blends.claims.title", "`standard` of the bottling"},
	{"19.599(f)", "gauge of the bottling tank: proof, wine and proof gallons", "gauges.wineGallons", "`gauge` of the vat before"},
	{"19.599(f)", "obscuration", "", "no solids are in what is reduced with water alone: a `note` of the bottling"},
	{"19.599(h), (j)", "bottles of each size, and their proof", "lines.amount", "`bottles`"},
	{"19.599(h), (i)", "bottles a case, cases and their serials", "", "a `note` of the bottling"},
	{"19.599(k)", "all that was bottled, or left in bulk", "lines.amount", "`bottles` and `left`"},
	{"19.599(l)", "loss or gain", "accounts.lost", "what the bottles and `left` do not answer for"},
	{"19.599(m)", "statement of what is bottled in bond", "blends.claims.met", "`standard bottled-in-bond` of the bottling"},
	{"19.600", "test of strength and fill: time, size, found", "", "`test` of the bottling, which the ledger misses where there is none"},
	{"19.601(a)", "bottled goods on hand first and last, bottled, inventory overages", "accounts.opening", "by the month; each day is in its lines; a count of bottles is not read"},
	{"19.601(b)(2), (10), (11)", "withdrawn tax determined, losses, samples", "outside.amount", "`withdrawn`, `broken`, `samples` of the bottling"},
	{"19.601(b), the others", "in bond, free of tax, to wine, exported, redistilled, for research, destroyed, dumped again", "", "`withdrawn … to` says to whom, and a remark for what: they are not told apart"},
	{"19.616", "samples: date, account, quantity", "lines.from", "`sample` of the cask, `samples` of the bottling; for whom stands in the remark"},
	{"19.617", "destroyed: date, quantity, manner, who saw it", "lines.amount", "`destroyed` of the cask, with a remark, which the ledger misses where there is none"},
	{"19.618", "serial, date, what it is of", "gauges.serial", ""},
	{"19.618", "proof of distillation", "blends.claims.conditions.found", "`hearts` of the run"},
	{"19.618", "by weight or by volume, with temperature", "gauges.method", ""},
	{"19.618", "proof and wine gallons", "gauges.proof", ""},
	{"19.618", "entry proof of whisky", "gauges.proof", "that of the gauge of the fill"},
	{"19.618", "cooperage: charred, reused, plain and so on", "", "`wood` of the cask, or the `fill` of its batch"},
	{"19.618", "proof gallons a package, and in all", "gauges.amount.proofGallons", ""},
	{"19.619", "gross, tare and net of each package", "gauges.grossKg", "`gross` and `tare`"},
	{"19.623", "inventory, signed", "", "`count` of a store, and `dip` or `gross` of tanks and casks; a signature is of paper"},
}

// Fields is the page that says which field of a section the books have, and where the others
// are written.
func Fields() string {
	var b strings.Builder
	b.WriteString("# What the law of the United States wants in the books, field by field\n\n")
	b.WriteString("27 CFR part 19, subpart V, read in a copy of November 2024, not in the official print;\n19.592, 19.598, 19.599 and 19.601 paragraph by paragraph, in copies of 2024 and 2026 that agree;\nof 19.600 and 19.619 only the older texts, 19.750 and 19.769. Not legal advice. The ledger is\nthat of `newmake ledger MONTH --format json`; where a field has no place in it, the last\ncolumn says where it is written. `go test ./compile/book/ledger -update` writes this page.\n\n")
	b.WriteString("| section | field | in the ledger | comes of, or is written |\n|---|---|---|---|\n")
	for _, f := range fields {
		at := "not there"
		if f.at != "" {
			at = "`" + f.at + "`"
		}
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", f.section, f.wants, at, f.write)
	}
	return b.String()
}
