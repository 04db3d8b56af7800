// Package plain reads and writes the plain log, version 1: a folder, or a zip
// archive of one, with files that any phone, script or spreadsheet can write.
//
//	motion.csv    t_s, ax_mps2, ay_mps2, az_mps2, gx_radps, gy_radps, gz_radps
//	gnss.csv      t_s, speed_mps, lat_deg, lon_deg, utc_ms, alt_m, bearing_deg, speed_sd_mps, h_sd_m
//	pressure.csv  t_s, pressure_pa                                    (may be missing)
//	sound.csv     t_s, rate_hz, level, clipped                        (may be missing)
//	ride.json     what the rider entered about bike, air and setups   (may be missing)
//
// The files are CSV according to RFC 4180 with a header row, with columns in
// any order; columns with other names are skipped. The turn rate and everything
// in gnss.csv but t_s and speed_mps may be missing or empty. Instead of
// gnss.csv there may be one file of NMEA sentences whose name ends in .nmea;
// package nmea explains how its lines get a time on the clock of motion.csv. A
// row of sound.csv is a stretch of sensors.Sound with all its values in the
// cell level, separated by blanks; clipped may be missing.
//
// # What is corrected and what is refused
//
// Whatever a reader leaves out or changes is listed in the log's Notes, with
// the first line it concerns. Samples out of order are sorted, the first of
// duplicates is kept, and rows without a readable time or force are left out.
// If more than half of a file would be left out, the file is rejected instead.
// A file in wrong units is corrected if the data leave no doubt, and rejected
// otherwise: see the functions of package sensors/internal/repair. Errors are
// of type *sensors.InputError.
//
// # Signs
//
// Specific force at rest points up, unless ride.json has "axes": "specific
// force down", and the reader negates it. If ride.json does not state it, a
// bend recorded by both gyroscope and satellite receiver decides: see
// repair.Sign.
//
// # Malformed input
//
// Lines are limited to 64 KiB, columns to 1000, samples to 3 million of
// motion, half a million of fixes and one million of pressure (eight hours at
// 100 Hz, fourteen at 10 Hz), and 40 million values of sound (nine hours); packed files may not unpack to more than 100
// times their size. Nothing is ever written while reading.
package plain
