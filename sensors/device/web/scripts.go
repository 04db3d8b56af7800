package web

import "embed"

// Scripts are the files that the page must load before the program starts, in
// any order; listening-work.js and keeping-work.js are loaded by listening.js and
// keeping-disk.js when they are wanted.
//
//go:embed sensing.js keeping.js keeping-disk.js keeping-work.js helping.js reading.js listening.js listening-work.js
var Scripts embed.FS
