// Package plan says, before anyone rides, how many coast-downs a question
// takes, in which order, on how long a road, and how likely the answer is to
// be seen.
//
// # Method
//
// The planned coast-downs are laid out in full (when and where each fix is
// taken) and the Cramér-Rao bound of the difference between the setups is
// computed for them by package roadload: with the wind, gusts, receiver and
// road that are expected. The chance of seeing a change is then the power of
// Student's t test with that standard error (Cohen, Statistical Power Analysis
// for the Behavioral Sciences, 1988, chapter 2): the probability that a
// non-central t variable leaves the 5 % limits.
//
// # Order
//
// Wind, and the temperature of tyres and oil, drift over an hour. Ridden A then B, the
// drift passes for a difference. Ridden A B B A, and longer as A B B A A B B A,
// any steady drift falls on both alike (the balanced orders of Cox, Planning of
// Experiments, 1958, chapter 14). That is why the number of pairs a setup is even.
package plan
