package weeks

import (
	"time"

	"newmake/lang/record"
)

// day reads a date as it is written.
func day(text string) (record.Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return record.Date{}, err
	}
	return record.DateOf(t), nil
}
