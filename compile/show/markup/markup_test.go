package markup

import (
	"bytes"
	"html/template"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	_ "newmake/lang/testflag"
)

// TestEscapes: every character, and some that are none, come out as html/template has
// them, in an element, an attribute and an address.
func TestEscapes(t *testing.T) {
	every := ""
	for c := range rune(0x180) {
		every += string(c)
	}
	for _, text := range []string{"", every, "a\xffb", "\u2028 \U0001F943 \ufeff"} {
		for _, c := range []struct {
			template string
			write    func(*Page, string)
		}{
			{`<p>{{.}}</p>`, (*Page).Text}, {`<p title="{{.}}"></p>`, (*Page).Text}, {`<a href="#{{.}}"></a>`, (*Page).Fragment},
		} {
			var want bytes.Buffer
			require.NoError(t, template.Must(template.New("").Parse(c.template)).Execute(&want, text))
			var got Page
			c.write(&got, text)
			assert.Contains(t, want.String(), got.String(), c.template)
			assert.Equal(t, len(want.String()), len(c.template)-len("{{.}}")+got.Len(), c.template)
		}
	}
}

// TestName: a name is a name, or nothing that could do harm.
func TestName(t *testing.T) {
	for name, want := range map[string]string{"strip-2": "strip-2", "": "", "a b": "ZgotmplZ", "a}": "ZgotmplZ", "</style>": "ZgotmplZ", "é": "ZgotmplZ"} {
		var p Page
		p.Name(name)
		assert.Equal(t, want, p.String())
	}
}
