// Package pattern is regular expressions that are made when they are first used. The
// program has dozens and a command needs few: to make all of them took each process a
// fifth of a millisecond.
package pattern

import (
	"regexp"
	"sync"
)

// Of gives the regular expression of a text. One that is wrong is a fault of the
// program: it panics when it is first used.
func Of(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}
