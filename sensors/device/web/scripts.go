package web

import "embed"

// Scripts are the files that the page must load before the program starts, in
// any order; listening-work.js is loaded by listening.js when it is wanted.
//
//go:embed sensing.js keeping.js helping.js reading.js listening.js listening-work.js
var Scripts embed.FS
