package main

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// What Go's linker writes as the data of a WebAssembly module is cut wherever eight
// bytes are zeros, up to 100,000 pieces, each with a head of its own: its table of
// functions alone, nearly all zeros, makes most of them. Cut only at
// long runs of zeros the engine is a twentieth smaller where it is packed, for zeros
// pack well and heads do not. (WebAssembly Core Specification 2.0, 5.5.)

// zerosBetween is how many zeros part two pieces of data; fewer are written out.
const zerosBetween = 1024

const (
	dataSection  = 11
	countSection = 12 // how many pieces of data there are
)

// mostMemory is far beyond where the data of the engine end.
const mostMemory = 1 << 28

var errModule = errors.New("the engine is no WebAssembly module as Go writes it")

// rejoined gives a module whose data lies in few pieces. What it does is the same.
func rejoined(module []byte) ([]byte, error) {
	const head = 8
	if len(module) < head || string(module[:4]) != "\x00asm" {
		return nil, errModule
	}
	out := append([]byte{}, module[:head]...)
	for r := (reader{rest: module[head:]}); len(r.rest) > 0; {
		kind := r.byte()
		body := r.take(r.unsigned())
		if r.failed || kind == countSection {
			return nil, errModule
		}
		if kind == dataSection {
			memory, err := memoryOf(body)
			if err != nil {
				return nil, err
			}
			forgetNames(memory)
			body = dataOf(memory)
		}
		out = binary.AppendUvarint(append(out, kind), uint64(len(body)))
		out = append(out, body...)
	}
	return out, nil
}

// memoryOf is the memory as a module's data begins it.
func memoryOf(section []byte) ([]byte, error) {
	const constI32, end = 0x41, 0x0b
	var memory []byte
	r := reader{rest: section}
	for range r.unsigned() {
		plain, code, at, done := r.byte(), r.byte(), r.signed(), r.byte()
		data := r.take(r.unsigned())
		if r.failed || plain != 0 || code != constI32 || done != end || at < 0 || at > mostMemory {
			return nil, errModule
		}
		if more := at + len(data) - len(memory); more > 0 {
			memory = append(memory, make([]byte, more)...)
		}
		copy(memory[at:], data) // they come in any order
	}
	if len(r.rest) > 0 {
		return nil, errModule
	}
	return memory, nil
}

// forgetNames empties the names of functions in Go's table of them (debug/gosym reads the
// same), but for those of the runtime, which looks at its own. They stand in traces alone,
// which the page shows nobody, and take 50 kB. A table of another form is left as it is.
func forgetNames(memory []byte) {
	const head, words = "\xf1\xff\xff\xff\x00\x00\x01\x08", 8 // of Go 1.20 and later; what follows is words of 8 bytes
	at := bytes.Index(memory, []byte(head))
	if at < 0 || at+len(head)+words*8 > len(memory) {
		return
	}
	word := func(i int) uint64 { return binary.LittleEndian.Uint64(memory[at+len(head)+8*i:]) }
	from, to := word(3), word(4)
	if from != uint64(len(head)+words*8) || to < from || to > uint64(len(memory)-at) {
		return
	}
	for names := memory[at+int(from) : at+int(to)]; len(names) > 0; {
		end := bytes.IndexByte(names, 0)
		if end < 0 {
			return
		}
		if !bytes.HasPrefix(names, []byte("runtime.")) {
			clear(names[:end])
		}
		names = names[end+1:]
	}
}

// dataOf is the section of data that begins a memory so.
func dataOf(memory []byte) []byte {
	var pieces []byte
	count := uint64(0)
	for at := 0; at < len(memory); {
		if memory[at] == 0 {
			at++
			continue
		}
		end, zeros := at, 0
		for i := at; i < len(memory) && zeros < zerosBetween; i++ {
			if zeros++; memory[i] != 0 {
				end, zeros = i+1, 0
			}
		}
		count++
		pieces = appendSigned(append(pieces, 0, 0x41), int64(at))
		pieces = binary.AppendUvarint(append(pieces, 0x0b), uint64(end-at))
		pieces = append(pieces, memory[at:end]...)
		at = end
	}
	return append(binary.AppendUvarint(nil, count), pieces...)
}

// reader reads the numbers of a module: LEB128, as encoding/binary has it.
type reader struct {
	rest   []byte
	failed bool
}

func (r *reader) take(n int) []byte {
	if n < 0 || n > len(r.rest) {
		r.rest, r.failed = nil, true
		return nil
	}
	out := r.rest[:n]
	r.rest = r.rest[n:]
	return out
}

func (r *reader) byte() byte {
	if b := r.take(1); b != nil {
		return b[0]
	}
	return 0
}

func (r *reader) unsigned() int {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > 1<<31 {
		r.rest, r.failed = nil, true
		return 0
	}
	r.rest = r.rest[n:]
	return int(v)
}

// signed is a number with its sign in the highest bit of its last byte.
func (r *reader) signed() int {
	v := 0
	for shift := 0; shift < 35; shift += 7 {
		b := r.byte()
		v |= int(b&0x7f) << shift
		if b < 0x80 {
			if b&0x40 != 0 {
				v -= 1 << (shift + 7)
			}
			return v
		}
	}
	r.failed = true
	return 0
}

func appendSigned(out []byte, v int64) []byte {
	for {
		b := byte(v & 0x7f)
		if v >>= 7; v == 0 && b&0x40 == 0 || v == -1 && b&0x40 != 0 {
			return append(out, b)
		}
		out = append(out, b|0x80)
	}
}
