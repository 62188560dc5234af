package assist

import "newmake/lang/tree"

// Link leads from a name to where it is declared in another file.
type Link struct{ At, To Place }

// Links are the names of the file that other files of the house declare.
func (s *Snapshot) Links() []Link {
	known := map[name]Place{}
	var out []Link
	eachName(s.File.Decls, func(path []*tree.Node, c *tree.Capture) {
		n, declares, ok := nameOf(path, c)
		if !ok || declares || c.At().Src != s.File.Source {
			return
		}
		to, seen := known[n]
		if !seen {
			eachName(s.declaring(n), func(path []*tree.Node, c *tree.Capture) {
				if other, declares, ok := nameOf(path, c); ok && declares && other == n && to.IsZero() {
					to = c.At()
				}
			})
			known[n] = to
		}
		if !to.IsZero() && to.Src != s.File.Source {
			out = append(out, Link{c.At(), to})
		}
	})
	return out
}
