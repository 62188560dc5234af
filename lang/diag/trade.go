package diag

import "newmake/lang/words"

// InTrade gives each diagnostic the words of its reader's trade: stillage in a house of
// gallons, pot ale in one of litres. It is for lists whose texts were read whole, for by
// then it is known in which system each reader counts.
func (l List) InTrade() List {
	for i := range l {
		d := &l[i]
		reader := d.At.Units()
		d.Summary, d.Help, d.Reason = words.Trade(d.Summary, reader), words.Trade(d.Help, reader), words.Trade(d.Reason, reader)
		for j, r := range d.Related {
			if text := words.Trade(r.Text, reader); text != r.Text {
				d.Related = append(d.Related[:j:j], d.Related[j:]...)
				d.Related[j].Text = text
			}
		}
	}
	return l
}
