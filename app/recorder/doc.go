// Package recorder records a ride: it takes the samples of a source, runs the
// live filter on them for the screen, and keeps every one of them in a session
// file.
//
// # What happens to a sample
//
// The source calls in from its own goroutine. There the sample's time is
// checked, the live filter is updated (about a microsecond), and the sample is
// put on a queue. A second goroutine, the keeper, writes the queue to the
// session file and syncs it at least every FlushEvery, so a slow disk never
// blocks a sensor and a crash loses less than a second. The queue is bounded: a
// source that stays faster than the storage, such as a replay without pauses,
// is blocked.
//
// # How a recording ends
//
// The rider stops it; the source has no more; the bike has stood for CloseAfter
// since it last moved; nothing has moved at all for GiveUpAfter; or the storage
// has no more room. In every case the file is closed and complete. A recording
// that is killed instead is found by store.Sessions.Recover.
//
// The recorder reads no clock but the one it is given, and trusts the time
// stamps of the samples, not when they arrive.
package recorder
