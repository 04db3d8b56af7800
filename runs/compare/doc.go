// Package compare decides whether two or more setups differ: a significance
// test and an equivalence test with multiplicity correction, whose answer a
// rider can act on.
//
// # The three answers
//
// A difference with its uncertainty allows three answers:
//
//   - it differs: the 95 % interval excludes zero;
//   - no difference that matters: the whole interval lies within the smallest
//     difference that matters to the rider, a percentage that may be set. This
//     is the confidence-interval test of equivalence (Westlake, J. Pharm. Sci.
//     61 (1972) 1340, from memory), at 95 % rather than the usual 90 %;
//   - cannot tell yet: anything else. The answer then includes about how many
//     more pairs are needed.
//
// # Small samples
//
// Five pairs are few. Intervals are Student's t with the degrees of freedom of
// the estimate, counted in pairs and not in samples: the fixes of one run all
// share its wind (clustered errors, which Cameron and Miller, J. Human
// Resources 50 (2015) 317, describe).
//
// # Many setups
//
// Ten comparisons of equal setups find one difference at 5 % more often than
// not. With several setups both intervals and p-values are simultaneous by
// Bonferroni's inequality, so that the verdict never contradicts the interval
// shown.
package compare
