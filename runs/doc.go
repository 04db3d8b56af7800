// Package runs finds what a rider did in a ride and measures it.
//
// Analyse is the whole of it: it smooths the motion (package fusion), finds the
// runs (detect), measures their marks (marks), pairs coast-downs that were
// ridden on one road in opposite directions (pairing), fits the road load of
// all setups together (roadload), draws power at the road from pulls (power)
// and judges whether setups differ (compare). Each of these stands in a
// package of its own that can be used and tested alone; this package composes
// them and says in words what a rider should know.
//
// # What is believed and what is not
//
// A run that cannot be trusted stays in the result with its reasons and counts
// for nothing. What the rider did not tell takes a default, and the result
// names every default that was used. Every figure is a measure.Value: an
// estimate with its standard uncertainty; CdA and Crr of one setup come with
// their covariance, because coast-downs trade the one for the other.
//
// # Beyond one ride
//
// Across compares setups of different rides. Plan a test with package plan,
// and work out what a road load is worth with package worth.
package runs
