package view

import (
	"os"
	"strings"
	"testing"

	"stillair/app/text"
	"stillair/runs/plan"
)

// TestOneNumberOfPairs checks that the guide, the screen of comparisons and the
// README recommend the number and order of pairs that the plan gives for the usual
// question, a change of 5 % in a light wind.
func TestOneNumberOfPairs(t *testing.T) {
	p, err := plan.Make(english().Question(UsualAsked()))
	if err != nil {
		t.Fatal(err)
	}
	if p.Pairs != 6 || len(p.Blocks) != 3 || p.Blocks[0].Pairs != 3 || p.Blocks[1].Pairs != 6 || !p.Enough {
		t.Fatalf("the usual plan is %+v", p)
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	en, de := text.English(), text.German()
	for _, x := range []struct{ where, says, number string }{
		{"guide", en.Guide.After, "Six with each setup"}, {"Anleitung", de.Guide.After, "Sechs mit jedem Aufbau"},
		{"compare", en.Compare.How3, "three with the one, six with the other, three with the first"},
		{"Vergleich", de.Compare.How3, "drei mit dem einen, sechs mit dem anderen, drei mit dem ersten"},
		{"README", string(readme), "six pairs for each setup, ridden as three with A, six with B and three with A"},
	} {
		if !strings.Contains(x.says, x.number) {
			t.Errorf("%s does not say %q", x.where, x.number)
		}
	}
}
