// Package fusion turns the samples of a phone into the motion of the bike.
package fusion
