// Package sheets reads the tables of general-purpose sensor loggers by
// inferring the meaning of their columns: nothing has to be renamed or
// converted. A recording is a folder or a zip archive with a file for each
// sensor, or one wide table.
//
// # What is found, and from what
//
//   - The separator (comma, semicolon, tab, bar), the decimal sign and the
//     header row, from the first lines.
//   - What a column is, from the words of its name, in English or German, and,
//     where it only says "x", from the name of its file or the kind of its row.
//   - Its unit, from the name if it has one. Otherwise times are in the unit
//     that gives a plausible sampling rate; accelerations in the one that gives
//     the magnitude of gravity; turn rates in the one that agrees with changes
//     of the course; speeds in the one that agrees with the positions (package
//     sensors/internal/repair).
//   - The clock: of all columns of time, the pair from the accelerometer's and
//     the receiver's file whose spans overlap. Times may count from any moment.
//     The log's clock begins at its first sample.
//   - Acceleration without gravity is added to the gravity of another file. If
//     there is none, neither up nor forward can be found, and the log has fixes
//     alone.
//   - A gyroscope on a clock of its own is interpolated to the times of the
//     accelerometer.
//   - In a wide table, where the newest fix is repeated in each row, a fix
//     arrives when any of its values changes.
//
// Everything inferred is listed in the log's Notes, and can be overridden: see
// Ask.
package sheets
