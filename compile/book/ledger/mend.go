package ledger

import (
	"fmt"
	"strings"

	"newmake/lang/record"
	"newmake/lang/wording"
)

// whichRun stands where a run is to be named.
const whichRun = `"which run"`

// more is the line of a visit with more in it, as it would be written.
func (f *fold) more(v *record.Visit, more wording.More) string {
	return wording.Completed(v.At.Text(), more)
}

// amountOf adds to a line how much it was, and how strong, as far as it does not say so.
func (f *fold) amountOf(v *record.Visit, more wording.More) wording.More {
	if f.read(v, record.Dip, record.Volume, record.Receiver, record.Gross, record.Mass) == nil {
		more.Readings = append(more.Readings, "__ gal")
	}
	if f.read(v, record.Strength) == nil {
		more.Readings = append(more.Readings, "__ proof at __ F")
	}
	return more
}

// weightOf adds to a line the tare and the gross, as far as it does not say them; and how strong
// it was, of a cask that is emptied.
func (f *fold) weightOf(v *record.Visit) wording.More {
	var more wording.More
	for _, w := range []record.What{record.Tare, record.Gross} {
		if f.read(v, w) == nil {
			more.Readings = append(more.Readings, string(w)+" __ lb")
		}
	}
	if v.Word != "into" && f.read(v, record.Strength) == nil {
		more.Readings = append(more.Readings, "__ proof at __ F")
	}
	return more
}

// correcting is the line that puts a reading right: the line is named as it begins, and what it
// is corrected to is left open.
func (f *fold) correcting(v *record.Visit, r *record.Reading) string {
	now, _ := r.Holds()
	text := v.At.Text()
	begin := strings.TrimRight(wording.Head(text), " ")
	return fmt.Sprintf("corrected %s %s to __ %s on __", begin, now, now.Unit)
}
