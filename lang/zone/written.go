package zone

import (
	"encoding/binary"
	"time"
)

// writtenTo is the year up to which the changes of clocks are written out.
const writtenTo = 2040

// written is a zone's data with the changes of clocks written out that its rule for
// the future gives: package time looks a written one up in a fifth of the time that
// the rule takes, and a plan asks hundreds of times. It is the data as they are where
// there is no rule. The format is TZif (RFC 9636).
func written(tzif []byte, z *time.Location) []byte {
	const header = 44
	counts := func(at int) (n [6]int) { // UT/local, standard/wall, leap seconds, changes, kinds, letters
		for i := range n {
			n[i] = int(binary.BigEndian.Uint32(tzif[at+20+4*i:]))
		}
		return n
	}
	if len(tzif) < 2*header || tzif[4] < '2' {
		return tzif
	}
	first := counts(0)
	second := header + 5*first[3] + 6*first[4] + first[5] + 8*first[2] + first[1] + first[0]
	n := counts(second)
	changes, kinds := n[3], n[4]
	times := tzif[second+header:][:8*changes]
	of := tzif[second+header+8*changes:][:changes]
	types := tzif[second+header+9*changes:]
	letters := types[6*kinds:][:n[5]]
	if changes == 0 {
		return tzif
	}
	kind := func(t time.Time) int {
		// Each of these is a look into the rule, which is slow.
		name, offset := t.Zone()
		isDST := t.IsDST()
		for i := range kinds {
			k := types[6*i:]
			abbreviation := letters[k[5]:]
			if int32(binary.BigEndian.Uint32(k)) == int32(offset) && (k[4] != 0) == isDST &&
				len(abbreviation) > len(name) && string(abbreviation[:len(name)]) == name && abbreviation[len(name)] == 0 {
				return i
			}
		}
		return -1
	}
	moreTimes, moreOf := []byte{}, []byte{}
	at, last := time.Unix(int64(binary.BigEndian.Uint64(times[8*(changes-1):])), 0).In(z), of[changes-1]
	end := time.Date(writtenTo+1, 1, 1, 0, 0, 0, 0, time.UTC)
	for at.Before(end) {
		_, next := at.ZoneBounds()
		if next.IsZero() {
			break
		}
		if !next.After(at) { // on the last day of a leap year ZoneBounds gives one that has gone by
			at = at.Add(time.Hour)
			next = at
		}
		at = next
		i := kind(at)
		if i < 0 {
			return tzif
		}
		if byte(i) != last {
			last = byte(i)
			moreTimes = binary.BigEndian.AppendUint64(moreTimes, uint64(at.Unix()))
			moreOf = append(moreOf, last)
		}
	}
	out := append([]byte{}, tzif[:second+header]...)
	binary.BigEndian.PutUint32(out[second+20+4*3:], uint32(changes+len(moreOf)))
	out = append(append(out, times...), moreTimes...)
	out = append(append(out, of...), moreOf...)
	return append(out, types...)
}
