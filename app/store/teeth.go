package store

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// ParseTeeth reads the teeth of a driving and a driven wheel: 16/40, 16:40 or 16-40.
func ParseTeeth(s string) (Teeth, error) {
	m := regexp.MustCompile(`^\s*(\d{1,3})\s*[/:-]\s*(\d{1,3})\s*$`).FindStringSubmatch(s)
	if m == nil {
		return Teeth{}, fmt.Errorf("%w: teeth %q; they read like 16/40", ErrInvalid, s)
	}
	driving, err := strconv.Atoi(m[1])
	if err != nil {
		return Teeth{}, err
	}
	driven, err := strconv.Atoi(m[2])
	return Teeth{driving, driven}, err
}

// ParseGears reads the teeth of gears, separated by commas, first gear first.
func ParseGears(s string) ([]Teeth, error) {
	var out []Teeth
	for _, part := range strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ';' || r == '\n' }) {
		if strings.TrimSpace(part) == "" {
			continue
		}
		t, err := ParseTeeth(part)
		if err != nil {
			return nil, err
		}
		out = append(out, t)
	}
	return out, nil
}

// String gives teeth as ParseTeeth reads them; nothing where none were entered.
func (t Teeth) String() string {
	if t == (Teeth{}) {
		return ""
	}
	return fmt.Sprintf("%d/%d", t.Driving, t.Driven)
}

// GearsText gives gears as ParseGears reads them.
func (x Box) GearsText() string {
	var out []string
	for _, g := range x.Gears {
		out = append(out, g.String())
	}
	return strings.Join(out, ", ")
}
