// Package digest is SHA-256, for hashes that stand in answers: of a page's style, of a
// message. It is that of the Go distribution, but in the page for a browser, which a whole
// module of cryptography makes larger by 50 kB and has take 32 MiB of memory. Nothing
// secret is hashed here.
package digest

// Sum256 is the SHA-256 of a text.
func Sum256(text []byte) [32]byte { return sum256(text) }
