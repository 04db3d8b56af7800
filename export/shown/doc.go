// Package shown turns quantities into words and figures for people: in metric
// or imperial units or both, and with no more digits than they deserve.
//
// A figure with an uncertainty is shown as x ± h, where h is half of the 95 %
// interval, given with two significant digits where it begins with 1 or 2 and
// with one otherwise, and x is rounded to the same place. This is the custom
// of JCGM 100:2008 (the "GUM"), 7.2.6: an uncertainty of more than two digits
// is not worth its ink.
package shown
