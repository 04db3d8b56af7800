// Package plan says, before anyone rides, how many runs a question takes, in
// which order, on how long a road, and how likely the answer is to be seen: how
// many coast-downs for a change of drag, how many pulls for a change of power,
// how many launches or roll-ons for a change of time.
//
// # Method
//
// The planned runs are laid out in full (when and where each fix is taken) and
// the Cramér-Rao bound of their result is computed: with the
// wind, gusts, receiver and road that are expected. The chance of seeing a
// change is then the power of Student's t test with that standard error (Cohen,
// Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 2): the
// probability that a non-central t variable leaves the 5 % limits.
//
// # Coast-downs
//
// Package roadload gives the bound of the difference between the setups, all
// runs taken together, gusts and receiver included. Riders add no scatter to it:
// nobody's hand is on the throttle.
//
// # Pulls, launches, roll-ons
//
// Here the comparison uses the scatter of repeats, and repeats differ by
//
//   - what phone and receiver leave: the bound of the mark (fusion.Bound and
//     package marks), with a tenth added because the program does not quite reach it, or
//     of the mean power of a pair of opposite pulls (power.Bound), for a bike of
//     the given mass, drag and power;
//   - gusts: by how much each half second of wind lengthens the run, with the
//     gusts' covariance over it; for pulls they are within the bound;
//   - the rider and the engine: clutch, gear changes, how warm the engine is. No
//     sensor shows that in advance, so it is asked for, or assumed as is common
//     (LaunchesVary, RollOnsVary, PullsVary).
//
// The mean wind of a pair and the slope of the road help one way and hinder the
// other. They cancel in the mean of a setup ridden there and back, but the
// scatter that the test judges by holds them: the plan counts them there only,
// which is why wind is so costly for roll-ons in top gear. In pulls each pair is
// one repeat, so they are in neither. What all repeats share, such as a wrong
// mass, cancels in the difference.
//
// A bike is planned as a steady force within each gear, as much as gives the
// stated power at the gear's end, or as much as makes the run take as long as the
// rider says it does.
//
// # Order
//
// Wind, and the temperature of tyres and oil, drift over an hour. Ridden A then B, the
// drift passes for a difference. Ridden A B B A, and longer as A B B A A B B A,
// any steady drift falls on both alike (the balanced orders of Cox, Planning of
// Experiments, 1958, chapter 14). That is why the number of pairs for each setup is even.
package plan
