//go:build js

// Command worker is the plan pages as WebAssembly, for a host at the edge of a
// network that runs small programs beside its static files. worker.mjs starts
// it and sends it every request for a plan.
package main

import (
	"encoding/json"
	"syscall/js"

	"evenrow/build/edge"
	"evenrow/build/shell"
)

func main() {
	given := js.Global().Get("evenrow")
	var s shell.Shell
	if err := json.Unmarshal([]byte(given.Get("shell").String()), &s); err != nil {
		panic(err) // the builder has written it
	}
	h := edge.New(nil, &s, edge.Options{Version: given.Get("version").String(), Queue: turns})
	given.Set("ask", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return begin(h, args[0], request(args[1]))
	}))
	given.Set("step", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return proceed(args[0], args[1].Bool())
	}))
	select {} // until the host ends it
}
