package house

import (
	"encoding/binary"
	"slices"

	"newmake/lang/digest"
	"newmake/lang/schema"
)

// ButRuns is a digest of the texts of the house, without the files that hold runs and
// nothing else. While it stays, so does every batch: none takes anything from a run.
func (h *House) ButRuns() [32]byte {
	var all []byte
	for _, f := range h.Files {
		if len(f.Decls) > 0 && !slices.ContainsFunc(f.Decls, func(d *Decl) bool { return d.Field != schema.Run }) && len(f.lost) == 0 {
			continue
		}
		for _, part := range [][]byte{[]byte(f.Path), f.Source.Text} {
			all = append(binary.AppendUvarint(all, uint64(len(part))), part...)
		}
	}
	return digest.Sum256(all)
}
