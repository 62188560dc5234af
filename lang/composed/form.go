//go:build !js

package composed

import "golang.org/x/text/unicode/norm"

func form(text string) string { return norm.NFC.String(text) }
