package plan

import "time"

// Moment is a time of the plan. It carries the plant's own offset, so that no
// zone is needed to show it. It is zero for a text that is no time of a plan.
func Moment(rfc3339 string) time.Time {
	t, err := time.Parse(time.RFC3339, rfc3339)
	if err != nil {
		return time.Time{}
	}
	return t
}
