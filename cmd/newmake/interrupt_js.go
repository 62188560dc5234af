package main

import "os"

// hangUp is unknown in a browser.
var hangUp []os.Signal
