package words

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"stillair/sensors/finding"
)

var update = flag.Bool("update", false, "write the list of codes on the format page again")

// TestFormatPage holds the list of codes on the format page to the catalogue.
func TestFormatPage(t *testing.T) {
	const path, begin, end = "../FORMATS.md", "-update -->\n", "<!-- end of codes -->"
	page, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(page), begin)
	list, after, ended := strings.Cut(rest, end)
	if !ok || !ended {
		t.Fatal("the page has no place for the codes")
	}
	if want := codeTable(); list != want {
		if !*update {
			t.Fatal("the codes on the page are not those of the catalogue; -update writes them")
		}
		if err := os.WriteFile(path, []byte(before+begin+want+end+after), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func codeTable() string {
	all := Catalogue()
	slices.SortFunc(all, func(a, b Entry) int { return strings.Compare(string(a.Code), string(b.Code)) })
	var out strings.Builder
	out.WriteString("| code | arguments | as in |\n| --- | --- | --- |\n")
	for _, e := range all {
		if area, _, _ := strings.Cut(string(e.Code), "."); slices.Contains([]string{"report", "figure", "default", "help", "kind"}, area) {
			continue // texts of the report, which no file has as a code
		}
		var args []string
		for _, a := range e.Args {
			args = append(args, fmt.Sprintf("`%s` (%s)", a.Name, a.Quantity))
		}
		text := strings.ReplaceAll(strings.TrimSpace(ForMachines().Say(finding.New(e.Code, e.Args...))), "|", "\\|")
		fmt.Fprintf(&out, "| `%s` | %s | %s |\n", e.Code, strings.Join(args, ", "), strings.ReplaceAll(text, "\n", " "))
	}
	return out.String()
}
