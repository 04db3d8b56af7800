// Package marks measures the times, distances and speeds of one run: what a
// launch, a roll-on or a stop took, each with its standard uncertainty.
package marks
