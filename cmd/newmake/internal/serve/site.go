package serve

import "context"

// Site is what is served. Its methods are called from many requests at once.
type Site interface {
	// Shown is the page as it is now: its texts, its version, and what will tell of the
	// next one.
	Shown() Shown
	// File is a file of the page that never changes: its style, its script.
	File(name string) (kind string, content []byte, known bool)
	// Open opens the run that the page is for.
	Open(ctx context.Context) Answer
	// Keep appends readings to the run, as they were sent.
	Keep(ctx context.Context, sent []byte) Answer
	// Cut says what another cut would give.
	Cut(ctx context.Context, to string) Answer
}

// Shown is a page as it is at a time.
type Shown struct {
	Page, Sheet []byte // as HTML: for the screen, and for paper
	Version     string
	Changed     <-chan struct{} // closed when there is another
}

// Answer is what is said to a browser about what it asked: its status as HTTP has it,
// and what is written as JSON.
type Answer struct {
	Status int
	Body   any
}

// Refused is the body of an answer that refuses.
type Refused struct {
	Refused string `json:"refused"`
	Changed bool   `json:"changed,omitempty"` // the file is another than the browser has seen
}
