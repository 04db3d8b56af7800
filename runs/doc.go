// Package runs finds what a rider did in a ride and measures it.
package runs
