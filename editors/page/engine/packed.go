package engine

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/json"
	"errors"
	"io"
	"maps"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"newmake/lang/house"
)

// A house is packed for the fragment of an address as base64url of the DEFLATE (RFC
// 1951) of its texts as JSON. The fragment never leaves the browser.

var errTooLarge = errors.New("too large")

func packed(q Question) Answer {
	text, err := json.Marshal(q.Files)
	if err != nil {
		return Answer{Problem: err.Error()}
	}
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	if err == nil {
		_, err = w.Write(text)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		return Answer{Problem: err.Error()}
	}
	return Answer{Data: base64.RawURLEncoding.EncodeToString(b.Bytes())}
}

// noHouse is what is said of an address that carries something else.
const noHouse = "the address does not carry a house: it may have been cut short when it was copied. Nothing was changed."

func unpacked(q Question) Answer {
	raw, err := base64.RawURLEncoding.DecodeString(q.Data)
	if err != nil {
		return Answer{Problem: noHouse}
	}
	text, err := readUpTo(flate.NewReader(bytes.NewReader(raw)), maxBytes*2)
	var files map[string]string
	if err != nil || json.Unmarshal(text, &files) != nil || len(files) == 0 {
		return Answer{Problem: noHouse}
	}
	return houseOf(files)
}

// houseOf is an answer that holds a house, if the texts can be one.
func houseOf(files map[string]string) Answer {
	for name, text := range files {
		if !utf8.ValidString(name) || !utf8.ValidString(text) {
			return Answer{Problem: "a text of it is not UTF-8. Nothing was changed."}
		}
	}
	if problem := refused(files); problem != "" {
		return Answer{Problem: problem + ". Nothing was changed."}
	}
	return Answer{Files: files}
}

// readUpTo reads all there is, and refuses what is too much.
func readUpTo(r io.Reader, most int64) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(text)) > most {
		err = errTooLarge
	}
	return text, err
}

// zipped is a house as a zip file, in base64. No clock goes into it: the same house
// gives the same bytes.
func zipped(q Question) Answer {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(q.Files)) {
		w, err := z.Create(name)
		if err == nil {
			_, err = io.WriteString(w, q.Files[name])
		}
		if err != nil {
			return Answer{Problem: err.Error()}
		}
	}
	if err := z.Close(); err != nil {
		return Answer{Problem: err.Error()}
	}
	return Answer{Data: base64.StdEncoding.EncodeToString(b.Bytes())}
}

// unzipped reads the texts of a house out of a zip file: those below the folder in
// which its house.batch lies, or all there are.
func unzipped(q Question) Answer {
	const noZip = "that is no zip file that can be read. Nothing was changed."
	raw, err := base64.StdEncoding.DecodeString(q.Data)
	if err != nil {
		return Answer{Problem: noZip}
	}
	z, err := zip.NewReader(bytes.NewReader(raw), int64(len(raw)))
	if err != nil {
		return Answer{Problem: noZip}
	}
	top := ""
	for _, f := range z.File {
		if path.Base(f.Name) == house.FileName && (top == "" || len(f.Name) < len(top)) {
			top = f.Name
		}
	}
	top = strings.TrimSuffix(top, house.FileName)
	files, left := map[string]string{}, int64(maxBytes)
	for _, f := range z.File {
		name, in := strings.CutPrefix(f.Name, top)
		if !in || misnamed(name) != "" {
			continue
		}
		r, err := f.Open()
		if err != nil {
			return Answer{Problem: noZip}
		}
		text, err := readUpTo(r, left)
		r.Close()
		if errors.Is(err, errTooLarge) {
			return Answer{Problem: "the texts in it are larger than 4 MiB, which is more than the page holds. Nothing was changed."}
		}
		if err != nil {
			return Answer{Problem: noZip}
		}
		left -= int64(len(text))
		files[name] = string(text)
	}
	if len(files) == 0 {
		return Answer{Problem: "there is no file in it whose name ends in .batch. Nothing was changed."}
	}
	return houseOf(files)
}
