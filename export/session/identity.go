package session

import (
	"encoding/hex"
	"io"
)

// ID is the identity of one recording: eight bytes of chance, the same in each of
// its parts and in no part of any other recording. The zero ID is that of files
// of version 1, whose parts carry none.
type ID [8]byte

// NewID draws an identity. Among a million recordings the chance that any two
// share one is 1 in 37 million (n²/2 of 2⁶⁴).
func NewID(random io.Reader) (ID, error) {
	var id ID
	for id == (ID{}) {
		if _, err := io.ReadFull(random, id[:]); err != nil {
			return ID{}, err
		}
	}
	return id, nil
}

// String gives the identity as the file has it: 16 hexadecimal digits.
func (id ID) String() string { return hex.EncodeToString(id[:]) }

// parseID reads an identity. It reports false where the text is none.
func parseID(text string) (id ID, ok bool) {
	n, err := hex.Decode(id[:], []byte(text[:min(len(text), 2*len(id))]))
	return id, err == nil && n == len(id) && len(text) == 2*len(id) && id != (ID{})
}
