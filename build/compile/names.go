package compile

import (
	"bytes"
	"strings"
)

// withoutNames shortens, in place, the name of each function to that of its
// package. A stack trace then shows "evenrow/wasm/shown/view." where it showed
// "evenrow/wasm/shown/form.Errors". With their offsets, the names are a twenty-fifth
// of the download.
//
// The runtime reads the names of a few functions, and these stay; see needed.
// What it asks of others is only whether they begin with "runtime.". Functions
// that are copied into others are known by offsets that stand elsewhere: each
// finds no name there, or the package's.
func (t functions) withoutNames() {
	names := t.table[t.names:t.units]
	kept := make([]byte, len(names))
	places := map[string]int{"": 0}
	for _, r := range t.records {
		offset := t.offset(r + nameField)
		if offset == 0 {
			continue // the first of all: the runtime takes it for nameless
		}
		name := string(names[offset:][:bytes.IndexByte(names[offset:], 0)])
		if !needed(name, t.table[r+idField]) {
			name = packageOf(name)
		}
		place, ok := places[name]
		if !ok {
			place = offset
			places[name] = place
			copy(kept[place:], name)
		}
		t.setOffset(r+nameField, place)
	}
	copy(names, kept)
}

// needed reports whether the runtime has to know a function by its name. id is
// how the record knows it.
//
//   - panicwrap, which is called when a method of a value is called through a
//     nil pointer, takes the name of the wrapper apart for the text of a panic,
//     and ends the program if it cannot;
//   - the collector asks for two functions of package reflect.
func needed(name string, id byte) bool {
	const wrapper = 23 // internal/abi.FuncIDWrapper
	return id == wrapper && strings.Contains(name, ".(*") ||
		name == "reflect.makeFuncStub" || name == "reflect.methodValueCall"
}

// packageOf returns the path of a function's package with the dot behind it,
// or nothing when the name has no package.
func packageOf(name string) string {
	if i := strings.IndexByte(name, '['); i >= 0 {
		name = name[:i] // type arguments name other packages
	}
	path := strings.LastIndexByte(name, '/') + 1
	return name[:path+strings.IndexByte(name[path:], '.')+1]
}
