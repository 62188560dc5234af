// Package sarif writes diagnostics as SARIF 2.1.0 (OASIS Standard, Static Analysis
// Results Interchange Format), which forges and editors read.
package sarif

import (
	"net/url"
	"path/filepath"
	"slices"
	"strings"

	"newmake/lang/diag"
)

// schema is where the standard's JSON Schema is published.
const schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// fingerprintName is under which name a fingerprint stands; the number is that of
// how it is made.
const fingerprintName = "newmakeLine/v1"

// Log is one document (section 3.13).
type Log struct {
	Schema  string `json:"$schema"`
	Version string `json:"version"`
	Runs    []run  `json:"runs"`
}

type run struct {
	ColumnKind  string       `json:"columnKind"`
	Invocations []invocation `json:"invocations"`
	Results     []result     `json:"results"`
	Tool        tool         `json:"tool"`
}

type invocation struct {
	ExecutionSuccessful bool           `json:"executionSuccessful"`
	Notifications       []notification `json:"toolExecutionNotifications,omitempty"`
}

type notification struct {
	Level     string     `json:"level"`
	Locations []location `json:"locations,omitempty"`
	Message   message    `json:"message"`
}

type tool struct {
	Driver driver `json:"driver"`
}

type driver struct {
	Name    string `json:"name"`
	Rules   []rule `json:"rules"`
	Version string `json:"version"`
}

type rule struct {
	DefaultConfiguration configuration `json:"defaultConfiguration"`
	ID                   string        `json:"id"`
	Name                 string        `json:"name"`
	ShortDescription     message       `json:"shortDescription"`
}

type configuration struct {
	Level string `json:"level"`
}

type message struct {
	Text string `json:"text"`
}

type result struct {
	Fixes               []fix             `json:"fixes,omitempty"`
	Level               string            `json:"level"`
	Locations           []location        `json:"locations"`
	Message             message           `json:"message"`
	PartialFingerprints map[string]string `json:"partialFingerprints"`
	Properties          *properties       `json:"properties,omitempty"`
	RelatedLocations    []location        `json:"relatedLocations,omitempty"`
	RuleID              string            `json:"ruleId"`
	RuleIndex           int               `json:"ruleIndex"`
}

// properties are ours: the batches in which it was found.
type properties struct {
	Batches []string `json:"batches"`
}

type location struct {
	Message          *message `json:"message,omitempty"`
	PhysicalLocation physical `json:"physicalLocation"`
}

type physical struct {
	ArtifactLocation artifact `json:"artifactLocation"`
	Region           *region  `json:"region,omitempty"`
}

type artifact struct {
	URI string `json:"uri"`
}

// region is half-open, in lines and columns from 1.
type region struct {
	EndColumn   int `json:"endColumn"`
	EndLine     int `json:"endLine"`
	StartColumn int `json:"startColumn"`
	StartLine   int `json:"startLine"`
}

type fix struct {
	ArtifactChanges []change `json:"artifactChanges"`
	Description     message  `json:"description"`
}

type change struct {
	ArtifactLocation artifact      `json:"artifactLocation"`
	Replacements     []replacement `json:"replacements"`
}

type replacement struct {
	DeletedRegion   region  `json:"deletedRegion"`
	InsertedContent message `json:"insertedContent"`
}

// levels are SARIF's words for severities.
var levels = map[diag.Severity]string{diag.Error: "error", diag.Warning: "warning", diag.Note: "note"}

// Of makes the document. version is the program's; a fix that is a guess is left
// out, for what reads this may make it unasked. What could not be read is no result
// but a notification that the tool could not do all it was asked for.
func Of(list diag.List, version string) Log {
	r := run{ColumnKind: "unicodeCodePoints", Results: []result{}, Tool: tool{driver{Name: "newmake", Version: version, Rules: []rule{}}}}
	in := invocation{ExecutionSuccessful: true}
	prints := list.Fingerprints()
	for i, d := range list {
		if d.Code == diag.CodeUnreadable {
			in.ExecutionSuccessful = false
			in.Notifications = append(in.Notifications, notification{Level: levels[d.Severity], Message: text(d), Locations: locations(d)})
			continue
		}
		r.Results = append(r.Results, result{
			RuleID: string(d.Code), RuleIndex: r.rule(d.Code), Level: levels[d.Severity], Message: text(d),
			Locations: locations(d), RelatedLocations: related(d), Fixes: fixes(d),
			PartialFingerprints: map[string]string{fingerprintName: prints[i]}, Properties: batches(d),
		})
	}
	r.Invocations = []invocation{in}
	return Log{Schema: schema, Version: "2.1.0", Runs: []run{r}}
}

// rule gives the place of a code among the rules of the run.
func (r *run) rule(code diag.Code) int {
	rules := &r.Tool.Driver.Rules
	if i := slices.IndexFunc(*rules, func(k rule) bool { return k.ID == string(code) }); i >= 0 {
		return i
	}
	info, _ := diag.Lookup(code)
	*rules = append(*rules, rule{
		ID: string(code), Name: info.Name, ShortDescription: message{info.Title},
		DefaultConfiguration: configuration{levels[info.Severity]},
	})
	return len(*rules) - 1
}

// text is all that is said in words: what is wrong, what to do, and why.
func text(d diag.Diagnostic) message {
	parts := []string{d.Summary}
	for _, more := range []struct{ name, text string }{{"help", d.Help}, {"why", d.Reason}} {
		if more.text != "" {
			parts = append(parts, more.name+": "+more.text)
		}
	}
	return message{strings.Join(parts, "\n")}
}

func batches(d diag.Diagnostic) *properties {
	if len(d.Batches) == 0 {
		return nil
	}
	return &properties{d.Batches}
}

func locations(d diag.Diagnostic) []location {
	if d.At.IsZero() {
		return []location{}
	}
	return []location{{PhysicalLocation: place(d.At)}}
}

func related(d diag.Diagnostic) []location {
	var out []location
	for _, rel := range d.Related {
		if !rel.At.IsZero() {
			out = append(out, location{Message: &message{rel.Text}, PhysicalLocation: place(rel.At)})
		}
	}
	return out
}

func fixes(d diag.Diagnostic) []fix {
	if d.Fix == nil || d.Fix.Guess {
		return nil
	}
	return []fix{{
		Description: message{d.Fix.Label},
		ArtifactChanges: []change{{
			ArtifactLocation: artifact{uri(d.Fix.At.Src.Name)},
			Replacements:     []replacement{{DeletedRegion: regionOf(d.Fix.At), InsertedContent: message{d.Fix.Text}}},
		}},
	}}
}

// place is where a span lies; of a text that was not read there is the file alone.
func place(at diag.Span) physical {
	p := physical{ArtifactLocation: artifact{uri(at.Src.Name)}}
	if len(at.Src.Text) > 0 {
		r := regionOf(at)
		p.Region = &r
	}
	return p
}

func regionOf(at diag.Span) region {
	line, column := at.Src.Position(at.Start)
	endLine, endColumn := at.Src.Position(at.End)
	return region{StartLine: line, StartColumn: column, EndLine: endLine, EndColumn: endColumn}
}

// uri is a file's name as SARIF wants it (section 3.4): relative to where the
// program was called, unless the name is absolute.
func uri(name string) string {
	slashed := filepath.ToSlash(name)
	switch {
	case !filepath.IsAbs(name):
		return (&url.URL{Path: slashed}).EscapedPath()
	case !strings.HasPrefix(slashed, "/"): // C:/…
		slashed = "/" + slashed
	}
	return (&url.URL{Scheme: "file", Path: slashed}).String()
}
