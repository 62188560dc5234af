package composed

import (
	"syscall/js"
	"unicode/utf8"
)

// form leaves what is no UTF-8 as it is: a browser's strings cannot hold it.
func form(text string) string {
	if !utf8.ValidString(text) {
		return text
	}
	normalize := js.Global().Get("String").Get("prototype").Get("normalize")
	return normalize.Call("call", text, "NFC").String()
}
