// Package engine answers the questions of the page for a browser: JSON in, JSON out, and
// the same question always has the same answer. It uses the packages that the command
// line and the language server use; the page's script computes nothing.
//
// Places are counted in UTF-16 units from the beginning of a text, as a browser
// counts. Nothing is read from a disk or a network: the texts of the house come with
// each question. The house of the question before is kept, and used again while no
// text of it has changed.
package engine

import (
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"

	"newmake/compile/front"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/memoryfs"
	"newmake/lang/version"
)

// Question is what the page asks.
type Question struct {
	Ask   string            `json:"ask"`             // check, plan, complete, hover, definition, slide, format, compare, explain, version, pack, unpack, zip, unzip
	Files map[string]string `json:"files,omitempty"` // the texts of the house, by their names
	File  string            `json:"file,omitempty"`  // the one that is looked at
	At    int               `json:"at,omitempty"`    // a place in it
	Batch string            `json:"batch,omitempty"` // which batch of it; "" is the first
	Sure  bool              `json:"sure,omitempty"`  // plan: with how sure each number is, which takes longer
	Old   map[string]string `json:"old,omitempty"`   // compare: the texts as they were
	Word  string            `json:"word,omitempty"`  // explain: a code, a word of the language, a term
	Data  string            `json:"data,omitempty"`  // unpack, unzip: what was packed
}

// Answer is the reply to a question. What was not asked for is empty.
type Answer struct {
	Problem string `json:"problem,omitempty"` // why there is no answer, for a person

	Said   map[string][]Said `json:"said,omitempty"`   // check, plan: the diagnostics of each text
	Tokens []Token           `json:"tokens,omitempty"` // check: the text by its colours

	Batches []string `json:"batches,omitempty"` // plan: of the file
	Batch   string   `json:"batch,omitempty"`   // plan: the one that is shown
	Hints   []Hint   `json:"hints,omitempty"`   // plan: beside the lines of the file
	Page    string   `json:"page,omitempty"`    // plan, compare, explain: an answer as a page of HTML
	Notes   []string `json:"notes,omitempty"`   // plan: what a person should know besides

	Proposals []Proposal `json:"proposals,omitempty"` // complete
	Words     string     `json:"words,omitempty"`     // hover, explain, version: in Markdown
	File      string     `json:"file,omitempty"`      // definition
	From      int        `json:"from"`
	To        int        `json:"to"`

	Slider *Slider `json:"slider,omitempty"` // slide

	Text  string            `json:"text,omitempty"`  // format
	Files map[string]string `json:"files,omitempty"` // unpack, unzip
	Data  string            `json:"data,omitempty"`  // pack, zip
}

// Engine answers questions, one after the other.
type Engine struct {
	files map[string]string // of the house that is kept
	house *front.Check
	err   error
}

// limits of what a house may be, so that a page that was given too much says so.
const (
	maxFiles = 200
	maxBytes = 4 << 20
	maxName  = 120
)

// Ask answers a question. It never fails: what is wrong is said in the answer.
func (e *Engine) Ask(question []byte) (answer []byte) {
	var a Answer
	defer func() {
		if r := recover(); r != nil { // a fault of the program: the page goes on
			*e = Engine{}
			a = Answer{Problem: fmt.Sprintf("a fault in newmake, not in your text: %v. Your text is kept; please report it with the line that you changed last.", r)}
		}
		answer = encoded(a)
	}()
	var q Question
	if err := json.Unmarshal(question, &q); err != nil {
		a.Problem = "the question cannot be read: " + err.Error()
		return nil
	}
	if problem := refused(q.Files); problem != "" {
		a.Problem = problem
		return nil
	}
	answered, ok := answers[q.Ask]
	if !ok {
		a.Problem = fmt.Sprintf("%q is no question", q.Ask)
		return nil
	}
	a = answered(e, q)
	return nil
}

func encoded(a Answer) []byte {
	out, err := json.Marshal(a)
	if err != nil {
		out, _ = json.Marshal(Answer{Problem: "the answer cannot be written: " + err.Error()})
	}
	return out
}

var answers = map[string]func(*Engine, Question) Answer{
	"check":      (*Engine).check,
	"plan":       (*Engine).plan,
	"complete":   (*Engine).complete,
	"hover":      (*Engine).hover,
	"definition": (*Engine).definition,
	"slide":      (*Engine).slide,
	"format":     func(_ *Engine, q Question) Answer { return format(q) },
	"compare":    func(_ *Engine, q Question) Answer { return compared(q) },
	"version":    func(*Engine, Question) Answer { return Answer{Words: "newmake " + version.Of()} },
	"explain":    func(e *Engine, q Question) Answer { return e.explained(q) },
	"pack":       func(_ *Engine, q Question) Answer { return packed(q) },
	"unpack":     func(_ *Engine, q Question) Answer { return unpacked(q) },
	"zip":        func(_ *Engine, q Question) Answer { return zipped(q) },
	"unzip":      func(_ *Engine, q Question) Answer { return unzipped(q) },
}

// refused says why some texts cannot be a house; "" if they can.
func refused(files map[string]string) string {
	if len(files) > maxFiles {
		return fmt.Sprintf("a house of %d files is more than the page holds, which is %d: use newmake on your computer", len(files), maxFiles)
	}
	bytes := 0
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if why := misnamed(name); why != "" {
			return fmt.Sprintf("%q cannot be the name of a file here: %s", name, why)
		}
		bytes += len(files[name])
	}
	if bytes > maxBytes {
		return "the texts of this house are larger than 4 MiB, which is more than the page holds: use newmake on your computer"
	}
	return ""
}

// misnamed says what is wrong with the name of a file; "" if nothing is.
func misnamed(name string) string {
	switch {
	case path.Ext(name) != front.Ending || strings.HasPrefix(path.Base(name), "."):
		return "it has to end in " + front.Ending + ", as in rye.batch"
	case len(name) > maxName:
		return "it is too long"
	case path.Clean(name) != name || path.IsAbs(name) || strings.HasPrefix(name, "..") || strings.ContainsAny(name, `\:*?"<>|`) || diag.Safe(name) != name:
		return "letters, digits, spaces and - are taken, and / between folders"
	}
	return ""
}

// load reads the house of a question.
func (e *Engine) load(files map[string]string) (*front.Check, *check.House, error) {
	if e.files == nil || !maps.Equal(files, e.files) {
		e.files = files
		e.house, e.err = front.NewCheck([]front.Place{place(files)})
	}
	if e.err != nil {
		return nil, nil, e.err
	}
	if houses := e.house.Houses(); len(houses) > 0 {
		return e.house, houses[0], nil
	}
	return e.house, nil, nil
}

// place is where a house of texts is looked for.
func place(files map[string]string) front.Place {
	house := memoryfs.Files{}
	for name, text := range files {
		house[name] = memoryfs.File{Data: []byte(text)}
	}
	return front.Place{Path: ".", Label: "this house", FS: house}
}
