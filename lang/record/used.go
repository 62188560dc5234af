package record

import "strings"

// Bought reports whether what was used came from somebody, as a lot. Water did not, hot or cold,
// and backset is of an earlier run.
func (u *Used) Bought() bool {
	return u.What != "water" && u.What != "backset" && !strings.HasPrefix(u.What, "hot water")
}
