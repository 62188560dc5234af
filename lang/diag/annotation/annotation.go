// Package annotation writes diagnostics as the lines that a forge's runner turns
// into remarks beside a change: `::error file=…,line=…::text`.
package annotation

import (
	"bufio"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"newmake/lang/diag"
)

// words are the runner's for severities.
var words = map[diag.Severity]string{diag.Error: "error", diag.Warning: "warning", diag.Note: "notice"}

// Write writes a line for each diagnostic. Columns count characters from 1.
func Write(w io.Writer, list diag.List) error {
	out := bufio.NewWriter(w)
	for _, d := range list {
		fmt.Fprintf(out, "::%s %stitle=%s::%s\n", words[d.Severity], where(d.At), property(title(d)), message(d))
	}
	return out.Flush()
}

// where names the place, with a comma after it. A runner takes columns only of what
// lies in one line.
func where(at diag.Span) string {
	if at.IsZero() {
		return ""
	}
	out := "file=" + property(filepath.ToSlash(at.Src.Name)) + ","
	if len(at.Src.Text) == 0 {
		return out
	}
	line, column := at.Src.Position(at.Start)
	endLine, endColumn := at.Src.Position(at.End)
	out += fmt.Sprintf("line=%d,endLine=%d,", line, endLine)
	if line == endLine {
		out += fmt.Sprintf("col=%d,endColumn=%d,", column, endColumn)
	}
	return out
}

func title(d diag.Diagnostic) string {
	if len(d.Batches) == 0 {
		return "newmake " + string(d.Code)
	}
	return "newmake " + string(d.Code) + ": " + strings.Join(d.Batches, "; ")
}

func message(d diag.Diagnostic) string {
	text := d.Summary
	if d.Help != "" {
		text += "\n" + d.Help
	}
	return data.Replace(safe(text))
}

// data and value are how the runner wants what would end a line or a property.
var (
	data  = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A")
	value = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A", ":", "%3A", ",", "%2C")
)

func property(text string) string { return value.Replace(safe(text)) }

// safe shows what a terminal would obey; line ends are written for the runner.
func safe(text string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		lines[i] = diag.Safe(l)
	}
	return strings.Join(lines, "\n")
}
