package serve

import (
	"io"
	"net/http"

	"newmake/compile/show/markup"
)

// entrance is what a browser sees that was not let in yet. It says nothing of what is
// behind it.
func entrance(said string) string {
	var page markup.Page
	page.Raw(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>newmake: the code, please</title>
<link rel="stylesheet" href="page.css">
</head>
<body>
<main class="entrance">
<h1>The code, please</h1>
`)
	if said != "" {
		page.Raw(`<p class="bad" role="alert">`)
		page.Text(said)
		page.Raw(`</p>`)
	}
	page.Raw(`
<form method="post" action="enter">
<p><label for="code">It stands in the terminal in which newmake was started.</label></p>
<p><input id="code" name="code" type="text" autocomplete="off" autocapitalize="characters" spellcheck="false" maxlength="16" required autofocus>
<button type="submit">Let me in</button></p>
</form>
<p>What you see and type after this goes over the house's network unencrypted: who listens there can read it.</p>
</main>
</body>
</html>
`)
	return page.String()
}

// atGate answers on an address of the network: who was let in, and who asks to be.
func (h *handler) atGate(w http.ResponseWriter, r *http.Request) {
	switch path := r.URL.Path; {
	case path == "/enter" && r.Method == http.MethodPost:
		h.enter(w, r)
	case h.gate.knows(r) && len(path) > 0 && path[0] == '/':
		h.inside(w, r, path[1:])
	case path == "/page.css" && r.Method != http.MethodPost: // there is nothing of the house in it
		h.file(w, r, "page.css")
	case path == "/" && r.Method != http.MethodPost:
		ask(w, http.StatusUnauthorized, "")
	default:
		http.Error(w, "let in first", http.StatusUnauthorized)
	}
}

// enter takes a code.
func (h *handler) enter(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, mostCode)
	if err := r.ParseForm(); err != nil {
		tooLong(w, err)
		return
	}
	secret, how := h.gate.enter(r.PostForm.Get("code"))
	switch how {
	case right:
		http.SetCookie(w, cookie(secret))
		http.Redirect(w, r, "/", http.StatusSeeOther)
	case wrong:
		ask(w, http.StatusForbidden, "That is not the code. It has eight letters and digits.")
	default:
		ask(w, http.StatusForbidden, "No code lets anybody in any more. Start newmake again: it says a new one.")
	}
}

func ask(w http.ResponseWriter, status int, said string) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	io.WriteString(w, entrance(said))
}
