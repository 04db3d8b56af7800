module stillair

go 1.25.0

require (
	github.com/andybalholm/brotli v1.2.8
	github.com/tidwall/gjson v1.20.1
	gonum.org/v1/gonum v0.17.0
)

require (
	github.com/tidwall/match v1.1.1 // indirect
	github.com/tidwall/pretty v1.2.0 // indirect
	golang.org/x/tools v0.30.0 // indirect
)
