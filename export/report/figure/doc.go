// Package figure makes the plots of a report, with the pen of package plot.
package figure
