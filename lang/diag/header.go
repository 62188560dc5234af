package diag

import "fmt"

// Header is the diagnostic in one line: file:line:col: error NM0201: summary.
func (d Diagnostic) Header() string {
	if d.At.IsZero() {
		return fmt.Sprintf("%s %s: %s", d.Severity, d.Code, d.Summary)
	}
	if len(d.At.Src.Text) == 0 { // a file that was not read, or has nothing in it
		return fmt.Sprintf("%s: %s %s: %s", d.At.Src.Name, d.Severity, d.Code, d.Summary)
	}
	line, col := d.At.Position()
	return fmt.Sprintf("%s:%d:%d: %s %s: %s", d.At.Src.Name, line, col, d.Severity, d.Code, d.Summary)
}
