package sheet

import (
	"strings"
	"unicode/utf8"

	"newmake/lang/words"
)

// block is a part of the sheet that needs no page of its own.
type block struct {
	*view
	Kind string
}

// The blocks, in the order in which they stand where several are on one page.
const (
	notices  = "notices"
	promises = "promises"
	law      = "law"
	tanks    = "tanks"
	how      = "how" // to fill in the sheet
	trade    = "trade words"
)

// The pages that take blocks where they have room.
const (
	onCover   = "cover"
	onWeigh   = "weigh"
	onFilling = "filling"
	onCard    = "card"
	onWood    = "wood"
	onClosing = "closing"
)

// settle gives each block its page: what the batch is held against follows the years in
// wood, the tanks are seen to when the casks are filled, and how to fill in the sheet is
// read before it is. If the verdicts find no room there, a last page takes all.
func (v *view) settle() {
	v.blocks = map[string][]string{}
	verdicts := v.have(notices, promises, law)
	left := map[string]float64{onCover: v.coverLeftMM(), onWeigh: v.weighLeftMM(), onFilling: v.fillingLeftMM(), onCard: v.cardLeftMM()}
	fits := false
	for _, v.WoodRows = range []string{"", "close", "low"} {
		if left[onWood] = pageMM - v.woodMM() - v.blocksMM(verdicts...); left[onWood] >= 0 {
			fits = true
			break
		}
	}
	take := func(page, kind string) bool {
		mm := v.blocksMM(kind)
		if left[page] < mm {
			return false
		}
		left[page] -= mm
		v.blocks[page] = append(v.blocks[page], kind)
		return true
	}
	if len(v.Cask.Forecast) == 0 || !fits {
		v.lastPage()
		return
	}
	v.blocks[onWood] = verdicts
	homeless := false
	for _, of := range []struct {
		kind  string
		pages []string
	}{
		{tanks, []string{onFilling, onWood, onWeigh}},
		{how, []string{onWeigh, onCover, onFilling, onWood}},
		{trade, []string{onWeigh, onCover, onFilling, onWood, onCard}},
	} {
		found := len(v.have(of.kind)) == 0
		for _, page := range of.pages {
			found = found || take(page, of.kind)
		}
		homeless = homeless || !found
	}
	if homeless {
		v.lastPage()
	}
}

// lastPage is where all blocks stand together if one has no other place: a page is not left
// nearly empty.
func (v *view) lastPage() {
	v.blocks = map[string][]string{onClosing: v.have(notices, promises, law, tanks, how, trade)}
	for _, v.WoodRows = range []string{"", "close", "low"} {
		if v.woodMM() <= pageMM {
			return
		}
	}
}

// have are the blocks of some that the plan has anything for.
func (v *view) have(kinds ...string) []string {
	var out []string
	for _, kind := range kinds {
		empty := kind == notices && len(v.Notices) == 0 || kind == promises && len(v.Promises) == 0 ||
			kind == law && v.Law == nil || kind == tanks && len(v.Tanks()) == 0
		if !empty {
			out = append(out, kind)
		}
	}
	return out
}

// BlocksOn are the blocks of a page.
func (v *view) BlocksOn(page string) []block {
	var out []block
	for _, kind := range v.blocks[page] {
		out = append(out, block{v, kind})
	}
	return out
}

// Title is what the head of a page says of a block.
func (b block) title() string {
	switch b.Kind {
	case law:
		return "the law"
	case how:
		return "how to fill in this sheet"
	}
	return b.Kind
}

// ClosingTitle names what stands on the last page.
func (v *view) ClosingTitle() string {
	var names []string
	for _, b := range v.BlocksOn(onClosing) {
		if b.Kind == notices || b.Kind == promises || b.Kind == law {
			names = append(names, b.title())
		}
	}
	title := words.And(names)
	if title == "" {
		return "Tanks and words"
	}
	return string(title[0]-'a'+'A') + title[1:]
}

// Heights of blocks, as sheet.css has them.
const (
	blockPt    = 10.0
	blockLine  = blockPt * 0.3528 * 1.14
	blockHead  = 7.3
	pageWide   = 215.9 - 13 - 11
	halfWide   = (pageWide - 6 - listIndent) / 2
	listIndent = 4.0
)

// blocksMM is about how high blocks are, one below the other.
func (v *view) blocksMM(kinds ...string) float64 {
	mm := 0.0
	for _, kind := range kinds {
		switch kind {
		case notices:
			mm += blockHead
			for _, n := range v.Notices {
				mm += linesOf(strings.Join([]string{n.Severity, ", line 100:", n.Summary, n.Reason, "To mend it:", n.Help, "(NM0000)"}, " "), blockPt, pageWide-5)*blockLine + 0.5
			}
		case promises:
			var each []string
			for _, p := range v.Promises {
				each = append(each, strings.Join([]string{"kept:", p.What, p.Basis, "promised", v.Units.Quantity(p.Promised), v.Units.Tolerance(p.Tolerance), "should be", v.Units.Quantity(p.Found)}, " "))
			}
			mm += blockHead + columnsMM(each)
		case law:
			var each []string
			for _, c := range v.Law.Conditions {
				each = append(each, strings.Join([]string{c.Met + ":", c.Asks, "; found", c.Found, "[" + c.Section + "]"}, " "))
			}
			mm += blockHead + columnsMM(each)
		case tanks:
			const row, two = 4.4, 8.4
			mm += 15
			for _, t := range v.Tanks() {
				if utf8.RuneCountInString(t.Name)+utf8.RuneCountInString(t.What) > 48 {
					mm += two
				} else {
					mm += row
				}
			}
		case how:
			mm += blockHead + 4*blockLine
		case trade:
			mm += blockHead + 3*blockLine
		}
	}
	return mm
}

// columnsMM is how high a list in two columns is, none of its items split.
func columnsMM(each []string) float64 {
	var items []float64
	all := 0.0
	for _, text := range each {
		mm := linesOf(text, blockPt, halfWide-1)*blockLine + 0.5
		items, all = append(items, mm), all+mm
	}
	best, first := all, 0.0
	for _, mm := range items {
		first += mm
		best = min(best, max(first, all-first))
	}
	return best
}

// coverLeftMM is about what the cover has free: nothing where it warns or tells what it
// varies, for then it is full.
func (v *view) coverLeftMM() float64 {
	const fixed, figure, rows = 129.0, 5.0, 10.0
	if len(v.Warnings()) > 0 || len(v.Batch.Changes) > 0 {
		return 0
	}
	mm := fixed + rows + 6.2*float64(len(v.Days()))
	if v.DaysChart.H > 0 {
		mm += figure + pxMM*float64(v.DaysChart.H)
	}
	if v.Long() {
		mm += 6
	}
	return pageMM - mm
}

// weighLeftMM is about what the page has free on which the grain is weighed out.
func (v *view) weighLeftMM() float64 {
	mm := v.weighMM()
	if v.MashOpposite {
		mm += figureHighMM(v.MashChart.H)
	}
	return pageMM - mm - slackMM
}

// fillingLeftMM is about what the page of the filling has free below the casks.
func (v *view) fillingLeftMM() float64 {
	if v.Filling.Size != "tall" {
		return 0
	}
	return v.Filling.leftMM()
}

// cardLeftMM is about what the page of the proofing card has free.
func (v *view) cardLeftMM() float64 {
	const fixed, step = 115.0, 8.5 + 11.4
	if v.Card == nil {
		return 0
	}
	return pageMM - fixed - step*float64(len(v.Card.Steps))
}

// woodMM is about how high the page of the years in wood is without blocks.
func (v *view) woodMM() float64 {
	const heading, said, head = 9.0, 17.0, 16.5
	n := len(v.Schedule.Samples)
	if v.TwoColumns() {
		n = (n + 1) / 2
	}
	return heading + said + figureHighMM(v.CaskChart.H) + head + woodRowMM[v.WoodRows]*float64(n)
}

// woodRowMM is how high a row of the samples is.
var woodRowMM = map[string]float64{"": 8.4, "close": 7.4, "low": 6.8} // 1 px of a border more than in sheet.css

// TwoColumns reports whether there are so many samples that they stand side by side.
func (v *view) TwoColumns() bool { return len(v.Schedule.Samples) > 9 }

// SampleTables are the samples, in one table or in two side by side.
func (v *view) SampleTables() [][]sampling {
	all := v.Samplings()
	if !v.TwoColumns() {
		return [][]sampling{all}
	}
	half := (len(all) + 1) / 2
	return [][]sampling{all[:half], all[half:]}
}
