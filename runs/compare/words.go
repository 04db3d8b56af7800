package compare

import (
	"fmt"
	"math"
)

// Sentence says the verdict about quantity ("drag", "rolling resistance",
// "power") for the setup named b. It gives the words of the command line and
// the report; screens build their own from the fields.
func (v Verdict) Sentence(b, quantity string) string {
	switch v.Finding {
	case Differs:
		word, sign := "more", 1.0
		if v.Percent < 0 {
			word, sign = "less", -1
		}
		lo, hi := sign*v.CIPercent[0], sign*v.CIPercent[1]
		return fmt.Sprintf("%s has %.1f %% %s %s (95 %%: %.1f to %.1f %%)",
			b, math.Abs(v.Percent), word, quantity, math.Min(lo, hi), math.Max(lo, hi))
	case NoneShown:
		return fmt.Sprintf("no difference in %s shown; a difference above %.0f %% is unlikely", quantity, math.Ceil(v.Unlikely))
	}
	if v.Beyond {
		return fmt.Sprintf("cannot tell about %s yet: more than %d more pairs; a calmer day would help more", quantity, v.MorePairs)
	}
	return fmt.Sprintf("cannot tell about %s yet: about %d more %s", quantity, v.MorePairs, plural(v.MorePairs))
}

func plural(n int) string {
	if n == 1 {
		return "pair"
	}
	return "pairs"
}
