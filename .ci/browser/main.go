// Command browser says whether a browser for making PDFs is there, and if not,
// what to install.
package main

import (
	"fmt"
	"os"

	"tallyfold/render/print"
)

func main() {
	program, err := print.Find("")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println(program)
}
