// Package accuracy measures the accuracy of Stillair's figures by Monte Carlo
// simulation: it simulates tests with known truth many times, runs the whole
// analysis or a part of it, and compares the errors with the project's limits
// and with the theoretical bound.
//
// # How it is measured
//
// A Study asks one question in several Cases: which bike, wind, road, phone and
// receiver. One seed of a case is one simulated ride or test; its Record keeps
// every figure's error, its standard error, whether the 95 % interval held the
// truth, and the least error that any method could have on average (the
// Cramér-Rao bound, see packages roadload and fusion). Records are JSON Lines,
// so that a measurement can be stopped at any time and resumed.
//
// # What is judged
//
// A measured bias, spread or coverage is itself uncertain: of n rides the bias
// is known to sd/√n, the spread to sd/√(2n), a share to the binomial
// distribution. A limit is Met when the figure lies within it, Missed when it
// lies so far beyond that chance explains it in fewer than one of a thousand
// measurements, and Unclear between the two. Launches of one ride share the
// receiver's lag, so n counts rides, not launches, which is conservative.
//
// # What a figure means
//
//	bias       mean of measured less true
//	spread     standard deviation of measured less true
//	over bound the root mean square of the error over the root mean square of the bound
//	95 % within the size that 95 % of the errors stay under
//	coverage   share of 95 % intervals that hold the truth
//	honesty    root mean square of error over standard error: 1 where the standard errors are true
package accuracy
