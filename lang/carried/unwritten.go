//go:build js

package carried

// written is empty in a browser: each byte of the page is fetched, and the library's
// text, which it carries anyway, is read once for many plans.
var written []entry
