package spoil

import "testing"

func TestText(t *testing.T) {
	const text = "a,b,c\nd,e,f\n"
	for _, c := range []struct {
		name string
		ops  []byte
		want string
	}{
		{"nothing", nil, text},
		{"a line less", []byte{0, 0, 0}, "d,e,f\n"},
		{"a line twice", []byte{0, 0, 16}, "a,b,c\na,b,c\nd,e,f\n"},
		{"lines swapped", []byte{0, 100, 32}, "d,e,f\na,b,c\n"},
		{"cut", []byte{100, 128, 48}, "a,b,c\nd,e"},
		{"a field emptied", []byte{0, 100, 64}, "a,,c\nd,e,f\n"},
		{"a field more", []byte{0, 0, 64 + 21}, "a,a,b,c\nd,e,f\n"},
	} {
		if got := Text(text, ",", c.ops); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
