package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"math"
	"net/http"
	"strconv"
	"time"
	"unicode/utf8"

	"newmake/cmd/newmake/internal/serve"
	"newmake/compile/ask/recording"
	"newmake/compile/ask/size"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/wholefile"
	"newmake/lang/words"
)

// sent is a visit as a browser sends it, or what is corrected of one. Seen is the mark of
// the record that it shows.
type sent struct {
	Seen   string        `json:"seen"`
	Slip   bool          `json:"slip"` // it stands in the record, and was mistyped
	Values []sentReading `json:"values"`
	Clock  string        `json:"clock"`
	Day    string        `json:"day"`
	By     string        `json:"by"`
	Remark string        `json:"remark"`
}

type sentReading struct {
	Blank  string `json:"blank"`
	Read   string `json:"read"`
	Sample string `json:"sample"`
}

// What a visit may hold: more readings than any has, and more words than a line of a
// record.
const (
	mostValues = 24
	mostWord   = 120
	mostRemark = 400
)

// taken is what is said of readings that were kept.
type taken struct {
	Seen   string   `json:"seen"`   // the mark of the record as it is now
	Doubts []string `json:"doubts"` // what is hard to believe of them
}

func refuse(status int, why string) serve.Answer {
	return serve.Answer{Status: status, Body: serve.Refused{Refused: why}}
}

// visitOf reads what was sent.
func visitOf(text []byte) (v sent, why string) {
	in := json.NewDecoder(bytes.NewReader(text))
	in.DisallowUnknownFields()
	if err := in.Decode(&v); err != nil {
		return v, "it is no visit of a run"
	}
	if _, err := in.Token(); !errors.Is(err, io.EOF) || !utf8.Valid(text) {
		return v, "it is no visit of a run"
	}
	long := len(v.Clock)+len(v.Day)+len(v.By) > mostWord || len(v.Remark) > mostRemark || len(v.Values) > mostValues
	for _, r := range v.Values {
		long = long || len(r.Blank) > mostWord || len(r.Read)+len(r.Sample) > mostWord
	}
	if long {
		return v, "it is longer than a visit can be"
	}
	return v, ""
}

// Keep appends readings to the run of the page's day, by the way that record takes. They
// are refused where the record is another than the browser has seen.
func (o *opened) Keep(_ context.Context, text []byte) serve.Answer {
	v, why := visitOf(text)
	if why != "" {
		return refuse(http.StatusBadRequest, why)
	}
	o.writing.Lock()
	defer o.writing.Unlock()
	src, made, u, err := o.fresh()
	if err != nil {
		return refuse(http.StatusConflict, "Not kept: "+inWords(err)+".")
	}
	number := src.Opened(made.Batch)
	if number == "" {
		return refuse(http.StatusConflict, "Not kept: no run of that day is opened.")
	}
	was, err := o.read(src, number, u)
	if err != nil {
		return refuse(http.StatusConflict, "Not kept, run "+number+" has an error: "+inWords(err)+".")
	}
	changed := serve.Answer{Status: http.StatusConflict, Body: serve.Refused{
		Refused: "Not kept: the record was changed meanwhile. It is shown here as it is now; look, and press Keep again.", Changed: true}}
	if v.Seen != mark(was.Text) {
		o.anew()
		return changed
	}
	e := recording.Entered{Clock: v.Clock, Day: v.Day, By: v.By, Remark: v.Remark}
	for _, r := range v.Values {
		e.Values = append(e.Values, recording.Value{Blank: r.Blank, Read: r.Read, Sample: r.Sample})
	}
	then, err := was.Enter(e)
	if v.Slip {
		then, err = was.Correct(e, record.DateOf(time.Now().In(was.Run.Zone)))
	}
	if err != nil {
		return refuse(http.StatusUnprocessableEntity, "Not kept: "+inWords(err)+".")
	}
	err = uninterrupted(func() error { _, err := o.app.disk.Replace(was.Name, was.Text, then.Text); return err })
	switch {
	case errors.Is(err, wholefile.ErrChanged):
		o.anew()
		return changed
	case err != nil:
		return refuse(http.StatusInternalServerError, "Not kept: "+inHouse(src, was.Name)+" cannot be written: "+wholefile.Reason(err)+".")
	}
	o.anew()
	return serve.Answer{Status: http.StatusOK, Body: taken{mark(then.Text), doubts(was, then)}}
}

// doubts are what is hard to believe and was not so before.
func doubts(was, now *recording.Page) []string {
	out, seen := []string{}, map[string]bool{}
	for _, d := range was.Diags {
		seen[d.Summary] = true
	}
	for _, d := range now.Diags {
		if d.Severity == diag.Warning && !seen[d.Summary] {
			out = append(out, "But look: "+diag.Safe(d.Summary)+".")
		}
	}
	return out
}

// Open opens the run of the page's day, as record does.
func (o *opened) Open(context.Context) serve.Answer {
	o.writing.Lock()
	defer o.writing.Unlock()
	src, made, _, err := o.fresh()
	if err == nil {
		_, err = recordFlags{on: made.Recipe.Start.Date()}.open(o.app, src, made.Name)
	}
	if err != nil {
		why := inWords(err)
		if why == "" {
			why = "the terminal says why"
		}
		return refuse(http.StatusConflict, "Not opened: "+diag.Safe(why)+".")
	}
	o.anew()
	return serve.Answer{Status: http.StatusOK, Body: taken{Doubts: []string{}}}
}

// cutGives is what a cut gives, in words.
type cutGives struct {
	At      string      `json:"at"`
	Gives   [][2]string `json:"gives"`
	Refused string      `json:"refused,omitempty"`
}

// Cut says what the hearts would be if they ended elsewhere.
func (o *opened) Cut(_ context.Context, to string) serve.Answer {
	o.mu.Lock()
	slide, u, none := o.view.Slide, o.view.Units, o.view.NoSlide
	o.mu.Unlock()
	v, err := strconv.ParseFloat(to, 64)
	switch {
	case slide == nil:
		return refuse(http.StatusConflict, "The cut can't be moved: "+none+".")
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return refuse(http.StatusBadRequest, "That is no place for a cut.")
	}
	p, err := slide.At(v)
	if err != nil {
		if !slide.Holds(v) {
			return refuse(http.StatusBadRequest, diag.Safe(err.Error())+".")
		}
		return serve.Answer{Status: http.StatusOK, Body: cutGives{At: slide.Words(v), Gives: [][2]string{}, Refused: "Not to be made so: " + diag.Safe(err.Error()) + "."}}
	}
	h := size.HeartsOf(p)
	pure := [2]string{"proof gallons", measure.Number(h.ProofGallons, 1)}
	if u == measure.SI {
		pure = [2]string{"pure alcohol", measure.Number(h.PureL, 1) + " L"}
	}
	gives := [][2]string{{"hearts", u.Volume(h)}, {"at", u.Strength(h.Strength())}, pure}
	if p.Cask.SizeL > 0 {
		gives = append(gives, [2]string{"fills", words.Count(p.Cask.Casks, "cask")})
	}
	return serve.Answer{Status: http.StatusOK, Body: cutGives{At: slide.Words(v), Gives: gives}}
}
