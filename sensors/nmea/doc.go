// Package nmea reads fixes from NMEA 0183 sentences, the line format of
// satellite receivers: RMC (time, position, speed, course), VTG (course, speed)
// and GGA (time, position, altitude) of any talker: GP, GN, GL, GA, GB, GQ or
// another. All other sentences are skipped.
//
// A line counts only with a correct checksum: two hexadecimal digits after the
// asterisk, the exclusive or of all bytes between "$" and "*". A sentence
// marked as void (RMC status V, GGA quality 0, or a mode that is not a
// measurement: N not valid, E estimated, M manual, S simulated) gives no fix.
//
// The standard itself is not free; field lists and examples are published, for
// instance in gpsd's "NMEA Revealed" (E. S. Raymond) and in receiver makers'
// protocol manuals.
//
// # One fix from several sentences
//
// Sentences with the same time of day belong to the same fix; VTG has no time
// and belongs to those before it. The fix arrived when its first sentence did.
//
// # When did it arrive?
//
// A sentence contains the time of validity in UTC, not the time of arrival on
// the phone's clock, which accelerometer and gyroscope use. So:
//
//   - A live stream (New) is stamped with the clock that is passed in.
//   - A recorded file gives the arrival in seconds on that clock before each
//     "$", set off by a comma or a space: "12.345,$GPRMC,…".
//   - A file without such stamps can only be combined with motion whose clock is
//     UTC in seconds since 1970. Then the time in the sentence is used as
//     the arrival, and the lag that package fusion estimates includes the
//     difference of the two clocks.
//   - Otherwise the file is rejected.
package nmea
