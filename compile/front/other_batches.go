package front

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/house"
)

// otherBatches looks at the rest of the file that a batch stands in. unread is what
// cannot be read there: the batch itself may have lost a part to it, so nothing is
// computed. note says that other batches there have errors of meaning, which leave
// this one as it is; it is "" if they have none. said is of the batch.
func (s *Source) otherBatches(name string, said diag.List) (unread diag.List, note string) {
	at := slices.IndexFunc(s.House.Files, func(f *house.File) bool {
		return slices.Contains(s.House.BatchesIn(f.Source.Name), name)
	})
	if at < 0 {
		return nil, ""
	}
	file := s.House.Files[at]
	errors, within := 0, map[int]bool{}
	for _, d := range s.House.CheckIn(file.Source.Name) {
		switch {
		case d.Severity != diag.Error || d.At.Src != file.Source || slices.ContainsFunc(said, func(o diag.Diagnostic) bool {
			return o.Code == d.Code && o.At == d.At
		}):
		case ofReading(d.Code):
			unread.Add(d)
		default:
			errors++
			within[slices.IndexFunc(file.Syntax().Stmts, func(s *lang.Stmt) bool {
				end := s.At.End
				if s.Block != nil {
					end = s.Block.At.End
				}
				return s.At.Start <= d.At.Start && d.At.Start < end
			})] = true
		}
	}
	if errors == 0 {
		return unread, ""
	}
	who := "another batch here has"
	if n := len(within); n > 1 {
		who = fmt.Sprintf("%d other batches here have", n)
	}
	count := "1 error"
	if errors > 1 {
		count = fmt.Sprintf("%d errors", errors)
	}
	return unread, diag.Harmless("%s %s: newmake check %s", who, count, file.Source.Name)
}

// ofReading reports whether a code is of the text itself, and not of what it means.
func ofReading(c diag.Code) bool { return strings.HasPrefix(string(c), "NM01") }
