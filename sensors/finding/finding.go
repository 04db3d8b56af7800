// Package finding defines the messages of the analysis in place of sentences: a
// Finding is a stable code with typed arguments in SI, and the run, setup or
// time it is about. Package export/words renders it in each language and system
// of units; a program reads the code and the arguments.
//
// A code is two or more lower-case words joined by dots, the first naming the
// area: "coast.brake", "plain.column_missing". Codes are part of the results
// format: one that has been published keeps its meaning.
package finding

import (
	"strconv"
	"strings"
)

// Code names what was found.
type Code string

// Finding is one message. The zero value is no message.
type Finding struct {
	Code  Code
	Args  []Arg
	Run   int     // ID of the run that it is about; 0: none
	From  float64 // s on the log's clock; From and To are equal if it is about no span
	To    float64
	Setup string // the setup that it is about; "": none
}

// New makes a finding of a code and its arguments.
func New(code Code, args ...Arg) Finding { return Finding{Code: code, Args: args} }

// OfRun sets the run that the finding is about.
func (f Finding) OfRun(id int) Finding {
	f.Run = id
	return f
}

// Within sets the span of the log that the finding is about, in s on its clock.
func (f Finding) Within(from, to float64) Finding {
	f.From, f.To = from, to
	return f
}

// OfSetup sets the setup that the finding is about.
func (f Finding) OfSetup(name string) Finding {
	f.Setup = name
	return f
}

// Is reports whether the finding, or one in its arguments, has the code.
func (f Finding) Is(code Code) bool {
	if f.Code == code {
		return true
	}
	for _, a := range f.Args {
		if a.Finding != nil && a.Finding.Is(code) {
			return true
		}
	}
	return false
}

// Path is the code, and after a slash that of the finding in its arguments, if
// there is one: "coast.part/coast.braked". It is used where there is no room
// for arguments.
func (f Finding) Path() string {
	path := string(f.Code)
	for _, a := range f.Args {
		if a.Finding != nil {
			path += "/" + a.Finding.Path()
		}
	}
	return path
}

// Paths are the paths of the findings, nil if there are none.
func Paths(all []Finding) []string {
	var out []string
	for _, f := range all {
		out = append(out, f.Path())
	}
	return out
}

// IsZero reports whether the finding is the zero value.
func (f Finding) IsZero() bool { return f.Code == "" }

// Arg returns the argument with a name.
func (f Finding) Arg(name string) (Arg, bool) {
	for _, a := range f.Args {
		if a.Name == name {
			return a, true
		}
	}
	return Arg{}, false
}

// String is the code with its arguments, for logs and tests; texts for people
// come from package export/words.
func (f Finding) String() string {
	var b strings.Builder
	b.WriteString(string(f.Code))
	for _, a := range f.Args {
		b.WriteByte(' ')
		b.WriteString(a.String())
	}
	return b.String()
}

// Any reports whether one of the findings has the code.
func Any(all []Finding, code Code) bool {
	for _, f := range all {
		if f.Is(code) {
			return true
		}
	}
	return false
}

// Error is a finding as an error.
type Error struct {
	Finding
	Err error // the cause, or nil
}

// Fail makes an error of a code and its arguments.
func Fail(code Code, args ...Arg) *Error { return &Error{Finding: New(code, args...)} }

// Because adds the cause.
func (e *Error) Because(cause error) *Error {
	return &Error{Finding: e.Finding, Err: cause}
}

// Error is the code with its arguments.
func (e *Error) Error() string {
	if e.Err != nil {
		return e.Finding.String() + ": " + e.Err.Error()
	}
	return e.Finding.String()
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// Is lets errors.Is find an error by its code.
func (e *Error) Is(target error) bool {
	t, ok := target.(*Error)
	return ok && t.Code == e.Code
}

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
