// Package shown formats quantities for people: in metric or imperial units or
// both, and with no more digits than their uncertainty supports.
//
// A figure with an uncertainty is shown as x ± h, where h is half of the 95 %
// interval, given with two significant digits where it begins with 1 or 2 and
// with one otherwise, and x is rounded to the same place. This follows JCGM
// 100:2008 (the "GUM"), 7.2.6, by which two significant digits of an
// uncertainty usually suffice.
package shown
