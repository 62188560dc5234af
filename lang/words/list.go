package words

import "strings"

// And writes parts as a list: a, b and c.
func And(parts []string) string { return join(parts, "and") }

// Or writes parts as a choice: a, b or c.
func Or(parts []string) string { return join(parts, "or") }

func join(parts []string, last string) string {
	switch n := len(parts); n {
	case 0:
		return "nothing"
	case 1:
		return parts[0]
	default:
		return strings.Join(parts[:n-1], ", ") + " " + last + " " + parts[n-1]
	}
}
