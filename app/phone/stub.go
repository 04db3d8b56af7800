//go:build !(js || android || ios || desktop)

package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "stillair phone: built without a way to draw. Build it for the browser (GOOS=js GOARCH=wasm), "+
		"for Android (desk android), or for a desktop (go build -tags desktop,x11 ./app/phone).")
	os.Exit(2)
}
