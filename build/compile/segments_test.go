package compile

import (
	"bytes"
	"encoding/binary"
	"testing"
)

// memory lays segments out, in the order of the program, as an engine does.
func memory(t *testing.T, program []byte) []byte {
	t.Helper()
	for rest := program[8:]; len(rest) > 0; {
		size, n := binary.Uvarint(rest[1:])
		body := rest[1+n : 1+n+int(size)]
		if rest[0] != dataSection {
			rest = rest[1+n+int(size):]
			continue
		}
		segments, err := readSegments(body)
		if err != nil {
			t.Fatal(err)
		}
		var m []byte
		for _, s := range segments {
			if end := int(s.offset) + len(s.data); end > len(m) {
				m = append(m, make([]byte, end-len(m))...)
			}
			copy(m[s.offset:], s.data)
		}
		return m
	}
	t.Fatal("no data section")
	return nil
}

// program returns a WebAssembly program of a memory and the given segments.
func program(segments ...segment) []byte {
	p := []byte("\x00asm\x01\x00\x00\x00")
	p = append(p, 5, 3, 1, 0, 1) // one memory of one page
	body := writeSegments(segments)
	p = append(p, dataSection)
	p = binary.AppendUvarint(p, uint64(len(body)))
	return append(p, body...)
}

func TestJoinedKeepsMemory(t *testing.T) {
	p := program(
		segment{64, []byte("first")},
		segment{64 + 5 + gap, []byte("within the gap")},
		segment{8191, []byte("far, at an offset whose top bit reads as a sign")},
		segment{16, []byte("before all")},
	)
	joined, err := Joined(p)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(memory(t, joined), memory(t, p)) {
		t.Error("memory differs")
	}
	again, err := Joined(joined)
	if err != nil || !bytes.Equal(again, joined) {
		t.Errorf("joining again changes the program, or fails: %v", err)
	}
}

func TestJoinedRefuses(t *testing.T) {
	passive := program(segment{0, []byte("x")})
	passive[bytes.LastIndex(passive, []byte{0, 0x41})] = 1
	for name, p := range map[string][]byte{
		"nothing":      nil,
		"cut short":    program(segment{0, []byte("x")})[:14],
		"passive":      passive,
		"no offset":    append([]byte("\x00asm\x01\x00\x00\x00"), dataSection, 2, 1, 0),
		"not a module": []byte("MZ\x00\x00\x00\x00\x00\x00\x00"),
	} {
		if _, err := Joined(p); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
