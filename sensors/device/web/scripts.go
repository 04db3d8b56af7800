package web

import "embed"

// Scripts are the files that the page must load before the program starts, in
// any order.
//
//go:embed sensing.js keeping.js helping.js reading.js
var Scripts embed.FS
