module evenrow

go 1.26.0

require (
	github.com/andybalholm/brotli v1.3.0
	github.com/fxamacker/cbor/v2 v2.10.0
	github.com/tdewolff/minify/v2 v2.24.25
	github.com/tdewolff/parse/v2 v2.8.20
	github.com/yuin/goldmark v1.8.7
	gonum.org/v1/gonum v0.17.0
)

require github.com/x448/float16 v0.8.4 // indirect
