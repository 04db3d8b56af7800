// Package session writes and reads the session file: a phone's recording of one
// ride in a crash-safe format.
//
// # The file
//
// A session file is JSON Lines (one JSON object a line, UTF-8) in concatenated
// gzip members (RFC 1952). So zcat turns it into text and jq reads that:
//
//	zcat ride.jsonl.gz | jq 'select(.type=="fix") | .speed_mps'
//
// A member, here called a part, holds about one second of the ride and is
// appended and synced as a whole. Each part carries the CRC-32 and the length
// that RFC 1952 asks for, so it is either whole or known to be damaged, and the
// identity of its recording and its number, so that parts of several recordings
// in one file do not become one ride. No line is parsed before its part is
// known to be whole. A phone that crashes loses at most the part it was
// collecting.
//
// # The lines
//
// Every line has a type. Names are those of the plain log, with the unit at
// the end of the name; times are seconds on the recorder's clock.
//
//	part      first line of each part: id of the recording, its number n, kept, from_s and to_s of the samples in it
//	header    format, version, axes, utc_ms at t_s, device; in parts 1 and 2, now and then, and in the last, with the ride
//	ride      the object of the plain log's ride.json, under "ride"; the last one counts
//	motion    columns: t_s, ax_mps2 ay_mps2 az_mps2, gx_radps gy_radps gz_radps (none without gyroscope)
//	pressure  columns: t_s, pressure_pa
//	sound     one stretch: t_s of the first value, rate_hz, level, clipped; only where the rider gave permission
//	fix       one fix: t_s, speed_mps and what else the receiver reported
//	state     t_s, sensor, condition, detail, code, args
//	name      text: what the rider calls the ride; the last one counts
//	remark    t_s, text: what the rider noted
//	end       the recorder closed the file
//
// Columns are arrays of equal length, null where a value is absent. A reader
// ignores fields and types that it does not know; a change that would break a
// reader raises the version.
//
// # Numbers
//
// Numbers are decimals, rounded to the steps in the constants below, which are
// finer than any phone's sensor. A decimal is read as the float64 nearest to
// it, on every machine the same: anyone who reads a file computes from the same
// numbers as any other reader of it. Writing what was read gives the same
// decimals again.
//
// # What a reader gets back
//
// From a file truncated at any byte: every complete part before the cut. From a
// file with damage in the middle: every part but the damaged ones, found again
// by the magic number of the next member, and the times that are missing. Parts
// may be out of order, since they are written again after a failed sync:
// missing parts are determined by their numbers once all are read. From a file
// that contains several recordings: each separately.
//
// Version 1, whose parts have no identity and do not state what is kept, will
// always be readable.
package session

// Version is the version of the format that this package writes, and the
// highest that it reads.
const Version = 2

// FormatName is what the header line's "format" says.
const FormatName = "stillair session"

// AxesUp is what the header line's "axes" says: see package sensors.
const AxesUp = "specific force up"

// Decimals kept of each quantity.
const (
	timeDecimals     = 6 // s
	forceDecimals    = 5 // m/s²
	turnDecimals     = 6 // rad/s
	speedDecimals    = 4 // m/s
	degreeDecimals   = 8 // latitude and longitude: about a millimetre
	metreDecimals    = 3 // altitude, horizontal uncertainty
	bearingDecimals  = 4 // degrees
	pressureDecimals = 2 // Pa
	rateDecimals     = 4 // Hz
)
