// Package kit holds the widgets that Stillair's screens are made of: text,
// columns and rows, cards, buttons, a tab bar, symbols and a plot.
//
// # Layout
//
// On a phone the width is given and the height follows: a paragraph is as high
// as its words need. Fyne's own layouts ask for a minimum size before the width
// is known, so paragraphs inside rows and cards come out wrong at first. The
// widgets here implement HeightFor(width) instead, and a Page calls it once it
// knows its own width.
//
// # Look
//
// A Kit holds the palette and the text size; widgets are made from it and keep
// what they were made with. A screen is rebuilt when the look changes. The
// colours are those of M. Okabe and K. Ito, "Color Universal Design" (J*FLY
// Data Depository, 2002, revised 2008), which people with any of the common
// forms of colour blindness can tell apart. No meaning is carried by colour
// alone: there is always a word, a symbol or a line style as well.
package kit
