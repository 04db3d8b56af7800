module stillair

go 1.25.0

require (
	fyne.io/fyne/v2 v2.8.1
	github.com/andybalholm/brotli v1.2.8
	github.com/parquet-go/parquet-go v0.32.0
	github.com/spf13/pflag v1.1.0
	github.com/tidwall/gjson v1.20.1
	gonum.org/v1/gonum v0.17.0
	gonum.org/v1/plot v0.17.0
	rsc.io/qr v0.2.0
)

require (
	codeberg.org/go-fonts/liberation v0.5.0 // indirect
	codeberg.org/go-latex/latex v0.2.0 // indirect
	codeberg.org/go-pdf/fpdf v0.11.1 // indirect
	git.sr.ht/~sbinet/gg v0.7.0 // indirect
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b // indirect
	github.com/golang/freetype v0.0.0-20170609003504-e2365dfdc4a0 // indirect
	github.com/google/uuid v1.6.0 // indirect
	github.com/jeandeaual/go-locale v0.0.0-20250612000132-0ef82f21eade // indirect
	github.com/klauspost/compress v1.17.9 // indirect
	github.com/nicksnyder/go-i18n/v2 v2.5.1 // indirect
	github.com/parquet-go/bitpack v1.0.0 // indirect
	github.com/parquet-go/jsonlite v1.0.0 // indirect
	github.com/pierrec/lz4/v4 v4.1.21 // indirect
	github.com/tidwall/match v1.1.1 // indirect
	github.com/tidwall/pretty v1.2.0 // indirect
	github.com/twpayne/go-geom v1.6.1 // indirect
	golang.org/x/image v0.30.0 // indirect
	golang.org/x/sys v0.38.0 // indirect
	golang.org/x/text v0.28.0 // indirect
	golang.org/x/tools v0.36.0 // indirect
	google.golang.org/protobuf v1.34.2 // indirect
)
