package schema

import (
	"regexp"
	"strings"
)

// Between is the slot of the range that holds a figure 9 times in 10: it follows the
// figure after a comma, in the same unit. Of a figure that is itself a range, both
// ends lie within it.
const Between = "between"

// figure is the shape of a line that states one figure, or the two ends of one, and
// perhaps the temperature at which it holds.
var figure = regexp.MustCompile(`^(?:NAME )?([A-Z]+)(?:\.\.[A-Z]+)?(?: "at" TEMP)?$`)

// uncertain lets the figures of blocks carry the range that holds them 9 times in 10.
func uncertain(blocks ...*Field) {
	for _, b := range blocks {
		b.Doc += " A range after a figure, in its unit, holds it 9 times in 10."
		for _, f := range b.Block.Lines() {
			m := figure.FindStringSubmatch(f.Shape)
			if m == nil || slotByName[m[1]] == nil || !slotByName[m[1]].IsQuantity() {
				continue
			}
			f.Shape += ` ["," ` + Between + ":" + m[1] + ".." + m[1] + "]"
			for _, l := range f.Limits {
				if l.Slot == strings.ToLower(m[1]) {
					l.Slot = Between
					f.Limits = append(f.Limits, l)
				}
			}
		}
	}
}
