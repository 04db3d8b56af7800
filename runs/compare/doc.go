// Package compare says whether two or more setups differ, in words that a
// rider can act on.
//
// # The three answers
//
// A difference with its uncertainty allows three honest answers, and no
// others:
//
//   - it differs: the 95 % interval leaves out zero;
//   - no difference that matters: the whole interval lies within what matters
//     to the rider, a size in percent that may be set. This is the test of
//     equivalence by an interval (Westlake, J. Pharm. Sci. 61 (1972) 1340, from
//     memory), at 95 % rather than the usual 90 %;
//   - cannot tell yet: anything else. The answer then says about how many more
//     pairs would tell.
//
// # Small samples
//
// Five pairs are few. Intervals are Student's t with the degrees of freedom of
// the estimate behind them, counted in pairs and not in samples: the fixes of
// one run all share its wind (the clustering that Cameron and Miller, J. Human
// Resources 50 (2015) 317, describe).
//
// # Many setups
//
// Ten comparisons of equal setups find one difference at 5 % more often than
// not. With several setups intervals and p are simultaneous by Bonferroni's
// inequality, both by the same, so that what is said never contradicts what is
// shown.
package compare
