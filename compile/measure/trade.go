package measure

import "strings"

// american are the words of the trade that a reader of US units has others for. What is
// written here is Scottish; longer ones stand before what is in them. The trade's words for
// water are replaced only where they stand in a sentence of ours, for a tank may be named so.
var american = strings.NewReplacer(
	"Set the hot liquor", "Set the mash water",
	"Heat the liquor", "Heat the mash water",
	"Treat the liquor", "Treat the mash water",
	"into the liquor", "into the mash water",
	"liquor and additions", "water and additions",
	"pot ale", "stillage",
	"spent lees", "stillage",
	"draff", "spent grain",
	"Draff", "Spent grain",
)

// Words are words of the trade as a reader of these units says them: stillage for pot ale
// and spent lees, spent grain for draff, mash water for liquor.
func (u Units) Words(s string) string {
	if u == US {
		return american.Replace(s)
	}
	return s
}
