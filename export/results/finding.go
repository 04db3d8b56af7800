package results

import (
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// Finding is what was found, for programs: a code that keeps its meaning, its
// arguments in SI by name (the standard uncertainty of x as x_se), and the same
// in English words.
type Finding struct {
	Role string         `json:"role"` // reason, caution, warning, note or verdict
	Code string         `json:"code"`
	Args map[string]any `json:"args,omitempty"` // numbers, texts, and findings as objects of code and args
	Text string         `json:"text"`
}

func findingOf(say *words.Book, role string, f finding.Finding) Finding {
	return Finding{Role: role, Code: string(f.Code), Args: arguments(f), Text: say.Say(f)}
}

func findingsOf(say *words.Book, role string, all []finding.Finding) []Finding {
	var out []Finding
	for _, f := range all {
		out = append(out, findingOf(say, role, f))
	}
	return out
}

// arguments are a finding's arguments by name; a number that is not finite is
// left out.
func arguments(f finding.Finding) map[string]any {
	out := map[string]any{}
	for _, a := range f.Args {
		switch a.Quantity {
		case finding.OfText:
			out[a.Name] = a.Text
		case finding.OfFinding:
			inner := map[string]any{"code": string(a.Finding.Code)}
			if args := arguments(*a.Finding); len(args) > 0 {
				inner["args"] = args
			}
			out[a.Name] = inner
		default:
			if x := number(a.X, digits); x != nil {
				out[a.Name] = *x
			}
			if se := number(a.SE, seDigits); se != nil && *se > 0 {
				out[a.Name+"_se"] = *se
			}
		}
	}
	return out
}

// rideFindings are the warnings and notes about a ride as a whole.
func rideFindings(say *words.Book, r *runs.Result) []Finding {
	out := findingsOf(say, "warning", r.Warnings)
	if r.Track != nil {
		out = append(out, findingsOf(say, "note", r.Track.Notes)...)
	}
	for _, n := range r.Notes {
		out = append(out, findingOf(say, "note", n.What))
	}
	return out
}
