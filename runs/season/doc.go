// Package season puts many rides of a bike together: what each part costs, by
// all comparisons at once, and how figures repeat and drift from ride to ride.
//
// # The drag budget
//
// A setup is what its name lists between plus signs: "tall screen + panniers"
// has two parts. The drag area of a setup is that of the base setup and the sum
// of what its other parts add, so every ride says something about several parts,
// and parts that were never ridden side by side can be compared through others. The model is linear, and all rides are fitted at once by generalised
// least squares (Aitken): within a ride the differences between its setups with
// their joint covariance, which follows from the standard errors of all pairwise
// differences (cov(b−a, c−a) = (var(b−a) + var(c−a) − var(c−b))/2), and beside
// them the mean of the ride, with what the days differ in. What the rides leave
// undetermined, such as one of two screens that always take each other's place,
// is stated as a difference.
//
// Where the rides disagree by more than their standard errors explain, all
// uncertainties are widened by the root of χ² over its degrees of freedom
// (Birge, Phys. Rev. 40 (1932) 207).
package season
