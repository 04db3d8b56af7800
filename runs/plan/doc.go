// Package plan designs a test before the ride: how many runs a question needs,
// in which order, on how long a road, and with what power the test detects a
// change: how many coast-downs for a change of drag, how many pulls for a
// change of power, how many launches or roll-ons for a change of time.
//
// # Method
//
// The planned runs are laid out in full (when and where each fix is taken) and
// the Cramér-Rao bound of their result is computed with the expected wind,
// gusts, receiver and road. The chance of detecting a change is then the power
// of Student's t test with that standard error (Cohen, Statistical Power
// Analysis for the Behavioral Sciences, 1988, chapter 2): the probability that
// a non-central t variable leaves the 5 % limits.
//
// # Coast-downs
//
// Package roadload gives the bound of the difference between the setups from
// all runs together, gusts and receiver included. Riders add no scatter to it,
// as the throttle is not used.
//
// # Pulls, launches, roll-ons
//
// Here the comparison uses the scatter of repeats, and repeats differ by
//
//   - the errors of phone and receiver: the bound of the mark (fusion.Bound and
//     package marks), plus a tenth because the program does not quite reach it,
//     or of the mean power of a pair of opposite pulls (power.Bound), for a
//     bike of the given mass, drag and power;
//   - gusts: the sensitivity of the run's time to each half second of wind,
//     with the gusts' covariance; for pulls they are included in the bound;
//   - the rider and the engine: clutch, gear changes, engine temperature. This
//     is entered by the rider, or a common value is assumed (LaunchesVary,
//     RollOnsVary, PullsVary).
//
// The mean wind of a pair and the slope of the road help one way and hinder the
// other. They cancel in the mean of a setup ridden in both directions, but
// remain in the scatter from which the test estimates its error: the plan
// counts them only there, which is why wind is so costly for roll-ons in top
// gear. For pulls each pair is one repeat, so they affect neither. Common
// errors of all repeats, such as a wrong mass, cancel in the difference.
//
// The bike is modelled as a constant force within each gear, so large that it
// gives the entered power at the gear's end, or the entered time of the run.
//
// # Order
//
// Wind, and the temperature of tyres and oil, drift over an hour. Ridden A then
// B, the drift looks like a difference. Ridden A B B A, or A B B A A B B A, any
// linear drift affects both equally (the balanced orders of Cox, Planning of
// Experiments, 1958, chapter 14). That is why the number of pairs for each
// setup is even.
package plan
