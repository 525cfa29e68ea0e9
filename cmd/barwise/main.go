// Barwise turns what a top-bar beekeeper says at the hive into records.
package main

import (
	"os"

	"barwise/cmd/barwise/command"
)

func main() {
	os.Exit(command.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
