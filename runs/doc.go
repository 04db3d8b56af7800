// Package runs finds what a rider did in a ride and measures it.
//
// Analyse takes a recorded log through six steps, each in a package of its
// own that can be used alone:
//
//   - fusion smooths the motion: speed, acceleration and distance with a
//     covariance;
//   - runs/detect finds launches, roll-ons, pulls, coast-downs and stops by
//     their physics, and says why a candidate does not count;
//   - runs/marks measures times, distances and speeds, with standard errors
//     that follow from the covariance;
//   - runs/pairing brings opposite coast-downs on one road together;
//   - runs/roadload fits the drag area and the rolling resistance of every
//     setup to all its pairs at once;
//   - runs/pass finds roads ridden in both directions at a steady speed, and the
//     mean of both.
//
// Road power, comparisons of setups and what they mean on the road build on
// these.
//
// # What is never lost
//
// A run that cannot be used stays in the result with its reasons, in words a
// rider understands. A run that counts but deserves a remark carries it as a
// caution. What was assumed because it was not entered is named in
// Result.Defaults, by the field of ride.json that would give it.
//
// # What is assumed where nothing was entered
//
// Without a mass no force can be computed, and every force is proportional to
// it. Rather than refuse, Analyse assumes an average 280 kg with a standard
// deviation of 60 kg, which makes drag area and rolling resistance uncertain by
// a fifth, and warns. Setups of the same ride still compare well, since they
// share the error. The wheels' inertia is taken as 4 % of the mass (UN
// motorcycle test cycle, GTR 2). The air is that of the standard atmosphere at
// the altitude of the fixes, or at the pressure that the phone's barometer
// measured, with an uncertainty that covers a warm and a cold day.
//
// Each coast-down has the air of its own place and time: the barometer's pressure,
// else that of its altitude, and a temperature that falls by 6.5 K a kilometre and,
// where it was entered for the start and the end of the ride, changes evenly
// between them.
package runs
