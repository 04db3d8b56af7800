// Package sensors holds what a phone can sense on a motorcycle, and where it
// comes from: the sample types, the Source that live phones, recorded logs and
// the simulator all implement, and the readers of the open log formats.
//
// # Axes
//
// A phone's axes are right-handed and fixed to its case; which way they point
// does not matter, since package fusion finds the direction of travel from the
// ride itself. Specific force is what an accelerometer feels: the push of the
// mount against the sensor. At rest it has the size of gravity and points up,
// away from the ground; in free fall it is zero. In a file whose signs are the
// other way round it points down; readers turn it over.
//
// # Clocks
//
// Times are seconds on one clock for each log, from any start, never set back: the
// monotonic clock of the phone. The receiver's own UTC is kept beside it, as
// data. A fix is stamped when it arrives; how much earlier it was true is for
// package fusion to find.
//
// # Units
//
// Metres, seconds, kilograms, newtons, pascals and radians, except for latitude,
// longitude and bearing, which are in degrees as every map gives them and
// have Deg in their names. Formats with other units are converted by their
// reader, at the edge.
package sensors
