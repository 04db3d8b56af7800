package web

import "embed"

// Scripts are the files that the page must load before the program starts, in
// any order; those named work are loaded by the script of that name when they are
// wanted.
//
//go:embed sensing.js keeping.js keeping-disk.js keeping-work.js helping.js helping-work.js reading.js returning.js listening.js listening-work.js analysing.js analysing-work.js
var Scripts embed.FS
