package edit

import "bytes"

// AtEnd puts a declaration at the end of a file's text, after an empty line, with
// the file's own line endings.
func AtEnd(file, declaration []byte) []byte {
	gap := []byte("\n")
	if crlf := bytes.Count(file, []byte("\r\n")); 2*crlf > bytes.Count(file, gap) {
		declaration = bytes.ReplaceAll(declaration, gap, []byte("\r\n"))
		gap = []byte("\r\n")
	}
	out := bytes.Clone(file)
	if len(out) > 0 && !bytes.HasSuffix(out, []byte("\n")) {
		out = append(out, gap...)
	}
	return append(append(out, gap...), declaration...)
}
