// Package text holds every word that the phone app shows, in one place for
// each language. A language is a Book: a value with a field for each text, so
// that the compiler knows a text that does not exist and a test finds one that
// is missing. Where a text takes values it is a fmt format; all languages have
// the same verbs in the same order, which a test checks as well.
//
// What the analysis reports, and what a report names as well, has its texts in
// package export/words; a test fails if one stands here too.
package text

import "strings"

// Book is every text of one language.
type Book struct {
	Tag      string // BCP 47
	Language string // the language's own name
	DateTime string // Go layout of a date with time
	Days     [7]string
	Months   [12]string

	Horsepower string // the language's name for horsepower

	Common     Common
	Ready      Ready
	Senses     Senses
	Hearing    Hearing
	Background Background
	Trial      Trial
	Riding     Riding
	Pocket     Pocket
	Ways       Ways
	Rides      Rides
	Ride       Ride
	Run        Run
	Load       Load
	Bikes      Bikes
	Compare    Compare
	Guide      Guide
	Advice     Advice
	More       More
	Trouble    Trouble
	Effects    Effects
	Plan       Plan
	Power      Power
	Parts      Parts
	Drive      Drive
	Relabel    Relabel
	Deleted    Deleted
	Formats    Formats
	Season     Season
	Passes     Passes

	said map[string]string // the words of the analysis, by their English text
}

// For gives the book for a BCP 47 tag such as "de-CH"; English where there is
// none.
func For(tag string) *Book {
	base, _, _ := strings.Cut(strings.ReplaceAll(strings.ToLower(tag), "_", "-"), "-")
	for _, b := range All() {
		if b.Tag == base {
			return b
		}
	}
	return English()
}

// All gives every book there is, English first.
func All() []*Book { return []*Book{English(), German()} }
