//go:build js

// Command wasm is the engine of the page, for the worker of a browser: it gives the
// worker one function, newmake(question), from JSON to JSON.
package main

import (
	"syscall/js"

	"newmake/editors/page/engine"
)

func main() {
	var e engine.Engine
	js.Global().Set("newmake", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return string(e.Ask([]byte(args[0].String())))
	}))
	js.Global().Call("ready")
	select {}
}
