// Package season combines many rides of a bike: the effect of each part, from
// all comparisons at once, and how figures repeat and drift from ride to ride.
//
// # The drag budget
//
// A setup is what its name lists between plus signs: "tall screen + panniers"
// has two parts. The drag area of a setup is that of the base setup plus the
// sum of the effects of its other parts, so every ride gives information about
// several parts, and parts that were never ridden on the same ride can be
// compared through others. The model is linear, and all rides are fitted at
// once by generalised least squares (Aitken): within a ride the differences
// between its setups with their joint covariance, which follows from the
// standard errors of all pairwise differences (cov(b−a, c−a) = (var(b−a) +
// var(c−a) − var(c−b))/2), and in addition the mean of the ride, with the
// variation between days. Effects that are not estimable, such as that of one
// of two screens of which always one is fitted, are stated as a difference.
//
// Where the rides disagree by more than their standard errors explain, all
// uncertainties are widened by the root of χ² over its degrees of freedom
// (Birge, Phys. Rev. 40 (1932) 207).
package season
