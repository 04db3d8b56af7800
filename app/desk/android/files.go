package android

import "embed"

// files are the sources of a package other than the program: headers, the
// framework, the manifest, smali source, and the toolkit's own classes.
//
//go:embed files
var files embed.FS

func read(name string) ([]byte, error) { return files.ReadFile("files/" + name) }
