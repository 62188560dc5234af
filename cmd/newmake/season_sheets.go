package main

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"newmake/compile/ask/bands"
	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/plan"
	"newmake/compile/show/formats"
	show "newmake/compile/show/weeks"
	"newmake/lang/digest"
	"newmake/lang/pattern"
	"newmake/lang/wholefile"
	"newmake/lang/words"
)

// sheetFile is one file of a folder of sheets.
type sheetFile struct {
	name string
	text []byte
}

// writeSheets writes what a season is worked from: a run sheet a run to come, and a page a
// day. All of it is made before anything is written.
func (f seasonFlags) writeSheets(a *app, src *front.Source, q weeks.Question) error {
	if wholefile.Device(f.sheets) {
		return usage("a folder cannot be called %s: on Windows that is the name of a device", f.sheets)
	}
	if info, err := os.Stat(f.sheets); err == nil && !info.IsDir() {
		return usage("cannot make the folder %s: there is a file of that name", f.sheets)
	}
	s, made, said, err := weeks.Sheets(src, q)
	if err != nil {
		return a.cannot(err, "text")
	}
	if s == nil {
		return a.noAnswer(said, "text")
	}
	a.show(said)
	var all []sheetFile
	sources := map[string]*plan.Source{}
	for i := range made {
		x := &made[i]
		name := x.Recipe.Name
		if sources[name] == nil {
			source, note := revision.Begin(src, name)()
			a.notes(note)
			sources[name] = source
		}
		x.Plan.Source = sources[name]
		bands.Put(x.Plan, x.Recipe)
		if front.Broken(x.Diags) {
			a.say("run %s of %s is not to be worked from as it is planned, and has no sheet: newmake check says why", x.Run, name)
			continue
		}
		if x.Done || !q.On.IsZero() && x.Plan.Schedule.End[:len("2026-04-07")] < q.On.String() {
			continue // what was begun has its sheet
		}
		text, err := formats.Plan(x.Plan, "html", formats.Options{})
		if err != nil {
			return err
		}
		all = append(all, sheetFile{"run-" + front.FileName(x.Run) + "-" + front.FileName(name) + ".html", text})
	}
	made = slices.DeleteFunc(made, func(x season.Sheet) bool { return front.Broken(x.Diags) })
	runs, days := len(all), 0
	for _, date := range show.DaysOf(s, made) {
		if !q.On.IsZero() && date < q.On.String() {
			continue
		}
		var out bytes.Buffer
		if err := show.DayText(&out, s, made, date); err != nil {
			return err
		}
		all, days = append(all, sheetFile{date + ".txt", out.Bytes()}), days+1
	}
	if len(all) == 0 {
		return usage("the season has no work to come, so there are no sheets to write")
	}
	if err := a.putSheets(f.sheets, all); err != nil {
		return err
	}
	a.say("wrote the sheets of %s and %s to %s", words.Count(runs, "run"), words.Count(days, "day"), f.sheets)
	return leftOut(s)
}

// sheetName is what a file of such a folder is called.
var sheetName = pattern.Of(`^(\d{4}-\d{2}-\d{2}\.txt|run-[^/]*\.html)$`)

// putSheets writes a folder of sheets, each of them whole. Nothing is written over a file
// that is no such sheet. One that was changed since it was written is kept, since what
// was noted on it by hand stands nowhere else. Sheets of an earlier plan that this one has
// not are named, and left to be taken away by those who put them there.
func (a *app) putSheets(folder string, all []sheetFile) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return usage("cannot make the folder %s: %v", folder, wholefile.Reason(err))
	}
	there, err := os.ReadDir(folder)
	if err != nil {
		return usage("cannot read the folder %s: %v", folder, wholefile.Reason(err))
	}
	changed := map[string]bool{}
	for i := range all {
		x := &all[i]
		x.text = markSheet(x.name, x.text)
		at := filepath.Join(folder, x.name)
		was, err := readSheet(at)
		switch {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			return usage("cannot read %s, which would be written over: %v; nothing was written", at, wholefile.Reason(err))
		case !sheetMark().Match(was):
			return usage("%s is no sheet of a season: nothing was written; name another folder", at)
		default:
			changed[x.name] = !asWritten(was)
		}
	}
	for _, x := range all {
		at := filepath.Join(folder, x.name)
		if changed[x.name] {
			a.tell("%s was changed since it was written, and is kept as it is: it may be of an earlier plan; take it away to have it written anew", at)
			continue
		}
		err := uninterrupted(func() error {
			_, err := a.disk.Write(at, x.text)
			return err
		})
		if err != nil {
			return usage("cannot write %s: %v", at, wholefile.Reason(err))
		}
	}
	for _, e := range there {
		if !sheetName().MatchString(e.Name()) || slices.ContainsFunc(all, func(x sheetFile) bool { return x.name == e.Name() }) {
			continue
		}
		at := filepath.Join(folder, e.Name())
		if was, err := readSheet(at); err == nil && sheetMark().Match(was) {
			a.say("%s is of an earlier plan, and this one has no such sheet: take it away", at)
		}
	}
	return nil
}

// mostSheet is far more than a sheet has: a page of a run is a twentieth of it.
const mostSheet = 16 << 20

// readSheet reads a file that may be a sheet. A pipe or a device is not opened: it may
// never end.
func readSheet(at string) ([]byte, error) {
	info, err := os.Stat(at)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, wholefile.ErrNotPlain
	case info.Size() > mostSheet:
		return nil, nil // no sheet
	}
	return os.ReadFile(at)
}

// sheetMark is the last line of a sheet: what it is, and a digest of all that stands
// before it.
var sheetMark = pattern.Of(`(?m)^(?:<!-- )?newmake: sheet of a season, ([0-9a-f]{16})\.(?: -->)?\r?$`)

// markSheet puts the mark below a sheet.
func markSheet(name string, text []byte) []byte {
	mark := fmt.Sprintf("newmake: sheet of a season, %s.", sheetDigest(text))
	if filepath.Ext(name) == ".html" {
		return append(text, "<!-- "+mark+" -->\n"...)
	}
	return append(text, "\n"+mark+"\n"...)
}

// asWritten reports whether a sheet with the mark is still what was written.
func asWritten(text []byte) bool {
	at := sheetMark().FindSubmatchIndex(text)
	return sheetDigest(text[:at[0]]) == string(text[at[2]:at[3]]) && len(bytes.TrimSpace(text[at[1]:])) == 0
}

// sheetDigest is of the words of a sheet, however its lines end: a copy through git or
// the post is not a change.
func sheetDigest(text []byte) string {
	lines := bytes.ReplaceAll(bytes.TrimRight(text, "\r\n"), []byte("\r\n"), []byte("\n"))
	sum := digest.Sum256(lines)
	return hex.EncodeToString(sum[:8])
}
