// Package compare says whether two or more setups differ, in words that a
// rider can act on.
//
// # The three answers
//
// A difference with its uncertainty allows three honest answers, and no
// others:
//
//   - it differs: the 95 % interval leaves out zero;
//   - no difference shown, and one larger than so much is unlikely: the interval
//     holds zero and is narrow enough to be of use;
//   - cannot tell yet: it holds zero and is wide. The answer then says about
//     how many more pairs would make it narrow.
//
// "Narrow enough" needs a size that matters, in percent, which the rider may
// set.
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
// not. With several setups p is adjusted by Holm's step-down rule (Scand. J.
// Statistics 6 (1979) 65) and the intervals are Bonferroni's.
package compare
