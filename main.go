// Bide plans the changeovers of a score slitter whose knife holders are on one beam: which of
// them can stay, which must move and in which order.
package main

import (
	"embed"
	"io/fs"
	"os"

	"bide/ui/program"
)

//go:embed testdata/demo
var files embed.FS

func main() {
	demo, err := fs.Sub(files, "testdata/demo")
	if err != nil {
		panic(err) // the name above is wrong
	}
	os.Exit(program.Run(os.Args[1:], os.Stdout, os.Stderr, demo))
}
