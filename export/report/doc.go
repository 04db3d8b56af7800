// Package report writes a ride's results as one HTML page that needs nothing
// else: no script, no font, no picture from elsewhere. It reads on a phone, on
// a screen in light or dark, and on paper.
//
// A page is made of sections in a fixed order; what other packages compute
// beside the ride itself (a comparison, power curves) is handed in as Section.
package report
