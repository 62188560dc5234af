package lsp

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"

	"github.com/sourcegraph/jsonrpc2"
)

// mostBody is how large a message may be, in bytes. A text that is refused is far smaller.
const mostBody = 64 << 20

// stream is the two directions of a conversation. A message that cannot be read is
// answered as JSON-RPC has it (section 5.1), and the conversation goes on: its length was
// said, so the next begins where it ends.
type stream struct {
	in     *bufio.Reader
	out    jsonrpc2.ObjectStream
	outOne sync.Mutex
}

func newStream(in io.Reader, out io.Writer) *stream {
	return &stream{in: bufio.NewReader(in), out: jsonrpc2.NewBufferedStream(pipe{strings.NewReader(""), out}, jsonrpc2.VSCodeObjectCodec{})}
}

func (s *stream) WriteObject(obj any) error {
	s.outOne.Lock()
	defer s.outOne.Unlock()
	return s.out.WriteObject(obj)
}

func (s *stream) Close() error { return s.out.Close() }

// ReadObject reads the next message that can be read. It ends where the input does, or
// where a message does not say how long it is.
func (s *stream) ReadObject(v any) error {
	for {
		n, err := s.length()
		if err != nil {
			return err
		}
		if n > mostBody {
			if _, err := io.CopyN(io.Discard, s.in, n); err != nil {
				return err
			}
			if err := s.refuse(jsonrpc2.CodeInvalidRequest, fmt.Sprintf("a message of %d bytes is larger than newmake reads, which is %d", n, mostBody)); err != nil {
				return err
			}
			continue
		}
		body := make([]byte, n)
		if _, err := io.ReadFull(s.in, body); err != nil {
			return err
		}
		why := json.Unmarshal(body, v)
		if why == nil {
			return nil
		}
		code := int64(jsonrpc2.CodeParseError)
		if json.Valid(body) {
			code = jsonrpc2.CodeInvalidRequest
		}
		if err := s.refuse(code, "a message that newmake cannot read: "+why.Error()); err != nil {
			return err
		}
	}
}

// refuse answers a message of which not even the number is known.
func (s *stream) refuse(code int64, message string) error {
	type fault struct {
		Code    int64  `json:"code"`
		Message string `json:"message"`
	}
	return s.WriteObject(struct {
		Version string `json:"jsonrpc"`
		ID      *int   `json:"id"` // null
		Error   fault  `json:"error"`
	}{"2.0", nil, fault{code, message}})
}

// length reads the head of a message, and gives the length of its body.
func (s *stream) length() (n int64, err error) {
	n = -1
	for head := 0; ; {
		line, err := s.in.ReadSlice('\n')
		if err != nil {
			return 0, err
		}
		if head += len(line); head > 8<<10 {
			return 0, errors.New("the head of a message is too long")
		}
		text := strings.TrimRight(string(line), "\r\n")
		if text == "" {
			break
		}
		name, value, _ := strings.Cut(text, ":")
		if strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			if n, err = strconv.ParseInt(strings.TrimSpace(value), 10, 64); err != nil || n < 0 {
				return 0, fmt.Errorf("the length %q of a message", strings.TrimSpace(value))
			}
		}
	}
	if n < 0 {
		return 0, errors.New("a message that does not say how long it is")
	}
	return n, nil
}
