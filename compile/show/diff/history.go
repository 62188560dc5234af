package diff

import (
	"bytes"
	"fmt"
	"io"

	"newmake/compile/ask/compare"
	"newmake/lang/diag"
)

// Revision is one step of a history.
type Revision struct{ Commit, Short, Date, Subject string }

// Steps writes a history revision by revision, as each is compared.
type Steps struct {
	Differs bool // a revision changes something

	w      io.Writer
	format string // text, md or json
	begun  bool
}

// History begins a history in a format: text, md or json.
func History(w io.Writer, format string) *Steps { return &Steps{w: w, format: format} }

// step is one revision as JSON.
type step struct {
	Commit  string `json:"commit"`
	Date    string `json:"date"`
	Subject string `json:"subject"`
	*compare.Document
}

// Step writes one revision.
func (s *Steps) Step(r Revision, doc *compare.Document) error {
	s.Differs = s.Differs || doc.Differs()
	var out bytes.Buffer
	if s.format != "json" {
		writeStep(&out, r.Date+" "+r.Short+" "+r.Subject, doc, s.format == "md")
	} else {
		if s.begun {
			out.WriteString(",\n")
		} else {
			out.WriteString(s.head())
		}
		s.begun = true
		out.WriteString("    ")
		if err := diag.EncodeJSON(&out, "    ", step{r.Commit, r.Date, r.Subject, doc}); err != nil {
			return err
		}
		out.Truncate(out.Len() - 1)
	}
	_, err := s.w.Write(out.Bytes())
	return err
}

func (s *Steps) head() string {
	return fmt.Sprintf("{\n  \"format\": %q,\n  \"version\": %q,\n  \"revisions\": [\n", compare.Format+".history", compare.Version)
}

// End writes what closes the history.
func (s *Steps) End() error {
	if s.format != "json" {
		return nil
	}
	end := "\n  ]\n}\n"
	if !s.begun {
		end = s.head() + end
	}
	_, err := io.WriteString(s.w, end)
	return err
}
