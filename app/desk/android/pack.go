package android

import (
	"archive/zip"
	"encoding/binary"
	"hash/crc32"
	"io"
	"strings"
)

// counter counts the bytes written.
type counter struct {
	to io.Writer
	n  int64
}

func (c *counter) Write(p []byte) (int, error) {
	n, err := c.to.Write(p)
	c.n += int64(n)
	return n, err
}

// alignExtra is the kind of extra field in which Android's tools keep how an
// entry is aligned; it is followed by the alignment and as many zeros as it
// takes.
const alignExtra = 0xd935

// alignment is what an entry's data must begin at a multiple of. The library is
// mapped into memory from within the package, and so is the table of
// resources.
func alignment(name string) int {
	if strings.HasSuffix(name, ".so") {
		return pageSize
	}
	return 4
}

// headerSize is that of a zip's local header before name and extra field.
const headerSize = 30

// pack writes the entries as a zip without a signature. Nothing is compressed:
// the library, nearly all of it, must not be. There are no times in it, so that
// the same entries give the same bytes.
func pack(w io.Writer, entries []entry) error {
	count := &counter{to: w}
	z := zip.NewWriter(count)
	for _, e := range entries {
		if err := z.Flush(); err != nil {
			return err
		}
		h := &zip.FileHeader{Name: e.name, Method: zip.Store, CRC32: crc32.ChecksumIEEE(e.data),
			CompressedSize64: uint64(len(e.data)), UncompressedSize64: uint64(len(e.data)),
			Extra: padding(int(count.n)+headerSize+len(e.name), alignment(e.name))}
		to, err := z.CreateRaw(h)
		if err != nil {
			return err
		}
		if _, err := to.Write(e.data); err != nil {
			return err
		}
	}
	return z.Close()
}

// padding is the extra field after which an entry that is at offset at without
// it is aligned to a multiple of to.
func padding(at, to int) []byte {
	const least = 6 // kind, length, alignment
	pad := (to - (at+least)%to) % to
	b := make([]byte, least+pad)
	binary.LittleEndian.PutUint16(b, alignExtra)
	binary.LittleEndian.PutUint16(b[2:], uint16(2+pad))
	binary.LittleEndian.PutUint16(b[4:], uint16(to))
	return b
}
