package diag

import (
	"encoding/hex"
	"fmt"
	"path/filepath"
	"strings"

	"newmake/lang/digest"
)

// Fingerprints gives each of a list a name that stays while the thing does, so that
// whoever keeps results of old checks knows it again: of the code, the file and the
// words of the line, not of where in the file it stands nor of the numbers that were
// computed. Of several alike each has its count.
func (l List) Fingerprints() []string {
	seen := map[string]int{}
	out := make([]string, len(l))
	for i, d := range l {
		file, line := "", ""
		if d.At.Src != nil {
			file = filepath.ToSlash(d.At.Src.Name)
			if len(d.At.Src.Text) > 0 {
				number, _ := d.At.Position()
				line = strings.Join(strings.Fields(d.At.Src.LineSpan(number).Text()), " ")
			}
		}
		alike := fmt.Sprintf("%s\x00%s\x00%s", d.Code, file, line)
		sum := digest.Sum256(fmt.Appendf(nil, "%s\x00%d", alike, seen[alike]))
		seen[alike]++
		out[i] = hex.EncodeToString(sum[:fingerprintBytes])
	}
	return out
}

// fingerprintBytes are enough that two of a hundred thousand are never alike by
// chance.
const fingerprintBytes = 10
