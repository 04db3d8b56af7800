package session

import (
	"encoding/json"
	"math"

	"github.com/tidwall/gjson"

	"stillair/export/words"
	"stillair/sensors/finding"
)

// argument is one argument of a state's finding as the file has it.
type argument struct {
	Name     string           `json:"name"`
	Quantity finding.Quantity `json:"quantity"`
	X        float64          `json:"x,omitempty"`
	SE       float64          `json:"se,omitempty"`
	Text     string           `json:"text,omitempty"`
	Code     finding.Code     `json:"code,omitempty"` // of a finding, which has no arguments of its own
}

// appendDetail appends what a state says: the code with its arguments, and the
// same in English. A sentence of an older program has no code.
func appendDetail(dst []byte, f finding.Finding) []byte {
	if f.IsZero() {
		return dst
	}
	dst = appendText(dst, "detail", words.ForMachines().Say(f))
	if f.Code == codeOldSentence {
		return dst
	}
	dst = appendText(dst, "code", string(f.Code))
	var all []argument
	for _, a := range f.Args {
		x := argument{Name: a.Name, Quantity: a.Quantity, Text: a.Text}
		if !math.IsNaN(a.X) && !math.IsInf(a.X, 0) {
			x.X, x.SE = a.X, a.SE
		}
		if a.Finding != nil {
			x.Code = a.Finding.Code
		}
		all = append(all, x)
	}
	if len(all) == 0 {
		return dst
	}
	text, err := json.Marshal(all)
	if err != nil {
		panic("session: arguments did not become JSON: " + err.Error())
	}
	return append(append(dst, `,"args":`...), text...)
}

// mostArgs bounds the arguments of a malformed file's finding.
const mostArgs = 20

// codeOldSentence is what an older program wrote of a state: English words.
const codeOldSentence finding.Code = "session.old_sentence"

// detail reads the finding of a state, or its sentence verbatim if it has no
// code.
func detail(o gjson.Result) finding.Finding {
	code := finding.Code(o.Get("code").String())
	switch said := o.Get("detail").String(); {
	case code != "" && code != codeOldSentence:
	case said == "":
		return finding.Finding{}
	default:
		return finding.New(codeOldSentence, finding.Text("text", said))
	}
	f := finding.New(code)
	for i, a := range o.Get("args").Array() {
		if i == mostArgs {
			break
		}
		arg := finding.Arg{Name: a.Get("name").String(), Quantity: finding.Quantity(a.Get("quantity").String()),
			X: a.Get("x").Float(), SE: a.Get("se").Float(), Text: a.Get("text").String()}
		if arg.Quantity == finding.OfFinding {
			inner := finding.New(finding.Code(a.Get("code").String()))
			arg.Finding = &inner
		}
		f.Args = append(f.Args, arg)
	}
	return f
}
