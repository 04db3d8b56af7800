// Package results writes and reads the results of a ride as JSON (RFC 8259):
// the stable interface for scripts and other programs.
//
// # What a reader may rely on
//
// The document has a version. Within a version fields are only ever added: a
// reader ignores those that it does not know. Names end in their unit; _se
// stands for one standard error (standard uncertainty), in the unit that
// follows it, and _ci95 for the two ends of a 95 % interval. Times are seconds
// on the log's clock. A number is always finite: what was not measured, or does
// not apply, is absent. The arrays runs, road_load, comparisons and power are
// always present, if need be empty.
//
// Numbers are rounded to a fraction of their uncertainty far below what
// matters, so that machines whose arithmetic differs in the last bits write
// the same document.
package results

// Version is the version of the document that this package writes, and the
// highest that it reads.
const Version = 2
