// Package usual holds the priors for motorcycles, tyres and roads, which an
// analysis starts from and falls back on where the ride gives no information.
// Each value has its source or its derivation beside it. All packages take
// their values from here, so that no two use different values for the same
// bike.
//
// Where one quantity has two values, the comment says which is which: a prior
// describes what is likely and may be wide, a limit what is still accepted and
// must not be.
package usual
