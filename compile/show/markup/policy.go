package markup

import (
	"encoding/base64"

	"newmake/lang/digest"
)

// Look is the style of a page, and the policy that lets it in and nothing else.
type Look struct {
	Style  HTML
	Policy string
}

// LookOf is a style sheet as a page has it.
func LookOf(css string) Look { return Look{HTML("<style>" + css + "</style>"), Policy(css)} }

// Policy lets one style sheet into a page and nothing else (Content Security Policy Level 3):
// no script, no image and no form goes anywhere.
func Policy(style string) string {
	sum := digest.Sum256([]byte(style))
	return "default-src 'none'; base-uri 'none'; form-action 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
