// Package figure draws the plots of a report with gonum.org/v1/plot as inline
// SVG.
//
// Colours are those of Okabe and Ito, Color Universal Design (2002, revised
// 2008, jfly.uni-koeln.de/color), which people of every kind of colour vision
// tell apart. Nothing is told by colour alone: shapes, positions or words
// beside it say the same. In the SVG each colour is a CSS variable, so one
// picture serves light and dark pages and paper.
package figure
