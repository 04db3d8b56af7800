package web

import "embed"

// Scripts are the files that the page must load before the program starts, in any
// order; those ending in -work are loaded when needed by the script of the same
// name.
//
//go:embed sensing.js keeping.js keeping-disk.js keeping-work.js helping.js helping-work.js reading.js returning.js listening.js listening-work.js analysing.js analysing-work.js
var Scripts embed.FS
