// Package runs detects the runs in a recorded ride and measures them.
//
// Analyse takes a recorded log through six steps, each in a package of its
// own that can be used alone:
//
//   - fusion smooths the motion: speed, acceleration and distance with a
//     covariance;
//   - runs/detect finds launches, roll-ons, pulls, coast-downs and stops by
//     their physics, and gives the reason where a candidate does not count;
//   - runs/marks measures times, distances and speeds, with standard errors
//     that follow from the covariance;
//   - runs/pairing pairs coast-downs in opposite directions on one road;
//   - runs/roadload fits the drag area and the rolling resistance of every
//     setup to all its pairs at once;
//   - runs/pass finds roads ridden in both directions at a steady speed, and the
//     mean of both.
//
// Power at the road, comparisons of setups and their effects on the road build
// on these.
//
// # What is never lost
//
// A run that cannot be used stays in the result with its reasons. A run that
// counts but with a reservation has a caution. Defaults used for values that
// were not entered are listed in Result.Defaults, by the name of their field in
// ride.json.
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
// Each coast-down has the air of its own place and time: the barometer's
// pressure, or else that of its altitude, and a temperature that falls by 6.5 K
// a kilometre and, where it was entered for the start and the end of the ride,
// is interpolated linearly between them.
package runs
