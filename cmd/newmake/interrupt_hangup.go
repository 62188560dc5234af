//go:build !js

package main

import (
	"os"
	"syscall"
)

// hangUp tells that the terminal was closed.
var hangUp = []os.Signal{syscall.SIGHUP}
