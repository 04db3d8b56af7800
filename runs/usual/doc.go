// Package usual is the one home of what is known about motorcycles, tyres and
// roads in general: what an analysis starts from before it looks at a ride, and
// what it falls back on where the ride says nothing. Each value has its source or
// its derivation beside it. Other packages take their values from here, so that
// two of them never believe different things about the same bike.
//
// Where one quantity has two values, they answer different questions, and the
// comment says which: a prior says what is likely and may be wide, a limit says
// what is still accepted and must not be.
package usual
