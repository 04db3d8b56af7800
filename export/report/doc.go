// Package report writes a ride's results as one self-contained HTML page: no
// scripts, and no fonts or pictures from elsewhere. It reads on a phone, on a
// screen in light or dark, and on paper.
//
// A page has sections in a fixed order; results of other packages beyond the
// ride itself (a comparison, power curves) are passed in as Section.
package report
