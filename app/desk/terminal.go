package main

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// escaped writes text for a terminal. Names, remarks and errors come from other
// people's files: what a terminal would obey, and what would turn the order of
// the words around, is shown as an escape instead.
type escaped struct{ to io.Writer }

// Write implements io.Writer. A rune must not be split over two writes.
func (e escaped) Write(p []byte) (int, error) {
	if _, err := io.WriteString(e.to, escape(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}

// raw is the writer under escaped, for what the program itself has a terminal do.
func raw(w io.Writer) io.Writer {
	if e, ok := w.(escaped); ok {
		return e.to
	}
	return w
}

// argument is a path as a shell takes it: quoted where it holds anything but
// letters, digits and the usual signs of paths (POSIX, quoting).
func argument(path string) string {
	plain := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune(`/\._-:+@%,`, r)
	}
	if strings.TrimFunc(path, plain) == "" {
		return path
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}

// escape shows control characters (but line ends and tabs), characters of
// bidirectional control (Unicode Standard Annex 9), line separators and bytes
// that are not UTF-8 as Go writes them in a string.
func escape(text string) string {
	var b strings.Builder
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case r == '\n', r == '\t':
			b.WriteRune(r)
		case r < 0x80 && unicode.IsControl(r):
			fmt.Fprintf(&b, `\x%02x`, r)
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), r == '\u2028', r == '\u2029', r == '\ufeff':
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteString(text[i : i+n])
		}
		i += n
	}
	return b.String()
}
