package diag

import "fmt"

// Refusal is an error in words for a person: what was asked for cannot be done,
// whatever the text of a recipe says. Its words are harmless to a terminal.
type Refusal struct{ words string }

func (r *Refusal) Error() string { return r.words }

// Refuse makes a Refusal of a message, as Harmless does.
func Refuse(format string, args ...any) error {
	return &Refusal{Harmless(format, args...)}
}

// Harmless is a message in which what comes from files, names and arguments is
// text alone: a line break in a file's name is none in the message.
func Harmless(format string, args ...any) string {
	safe := make([]any, len(args))
	for i, arg := range args {
		switch arg := arg.(type) {
		case string:
			safe[i] = Safe(arg)
		case error:
			safe[i] = Safe(arg.Error())
		default:
			safe[i] = arg
		}
	}
	return fmt.Sprintf(format, safe...)
}
