// Package sensors defines the samples of a phone's sensors on a motorcycle and
// where they come from: the sample types, the Source interface of live phones,
// recorded logs and the simulator, and the Log that the readers of open formats
// return.
//
// # Axes
//
// A phone's axes are right-handed and fixed to its case; which way they point
// does not matter, since package fusion finds the direction of travel from the
// ride itself. Specific force is what an accelerometer measures: the force of
// the mount on the sensor, per mass. At rest it has the magnitude of gravity
// and points up, away from the ground; in free fall it is zero. In files with
// the opposite sign it points down; readers negate it.
//
// # Clocks
//
// Times are seconds on one monotonic clock for each log, the phone's, from an
// arbitrary start. The receiver's own UTC is kept as data. A fix is stamped
// when it arrives; package fusion estimates how much earlier it was valid.
//
// # Units
//
// Metres, seconds, kilograms, newtons, pascals and radians, except for
// latitude, longitude and bearing, which are in degrees as on maps, and have
// Deg in their names. Readers convert formats with other units.
package sensors
