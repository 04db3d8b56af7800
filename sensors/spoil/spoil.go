// Package spoil changes well-formed text line by line and field by field, for
// fuzz tests of readers: the result keeps enough of its structure to pass the
// first checks.
package spoil

import "strings"

// odd are unusual fields.
var odd = [...]string{"", "0", "-1", "1e308", "-1e-308", "NaN", "Inf", "null", "true", "\"", "{}", "[1,2]", "99999999999999999999", "1781438400000", "ä\u202e", "\x00", "0x10", "3.5.7"}

// Text changes text as ops say: three bytes choose a line, a field of it (fields
// are separated by sep) and the change.
func Text(text, sep string, ops []byte) string {
	lines := strings.SplitAfter(text, "\n")
	for ; len(ops) >= 3 && len(lines) > 0; ops = ops[3:] {
		at := int(ops[0]) * len(lines) / 256
		switch action := ops[2]; {
		case action < 16: // the line is removed
			lines = append(lines[:at:at], lines[at+1:]...)
		case action < 32: // twice
			lines = append(lines[:at+1:at+1], lines[at:]...)
		case action < 48: // replaces another
			other := int(ops[1]) * len(lines) / 256
			lines[at], lines[other] = lines[other], lines[at]
		case action < 64: // cut off
			lines[at] = lines[at][:len(lines[at])*int(ops[1])/256]
		default:
			lines[at] = field(lines[at], sep, ops[1], action-64)
		}
	}
	return strings.Join(lines, "")
}

// field changes one field of a line.
func field(line, sep string, which, action byte) string {
	body := strings.TrimRight(line, "\r\n")
	fields := strings.Split(body, sep)
	at := int(which) * len(fields) / 256
	switch n := int(action) % (len(odd) + 4); {
	case n < len(odd):
		fields[at] = odd[n]
	case n == len(odd): // one more digit
		fields[at] += "9"
	case n == len(odd)+1: // the other way round
		fields[at] = "-" + fields[at]
	case n == len(odd)+2: // one field fewer
		fields = append(fields[:at:at], fields[at+1:]...)
	default: // one more field
		fields = append(fields[:at+1:at+1], fields[at:]...)
	}
	return strings.Join(fields, sep) + line[len(body):]
}
