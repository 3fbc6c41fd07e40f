package compile

import (
	"maps"
	"slices"
	"strings"
)

// A Part is a part of the program that a reader downloads: the functions of a
// package, or data.
type Part struct {
	Group   string // a floor under wasm/, or what else the part belongs to
	Name    string
	Content []byte
}

// Parts takes the planner's program apart, after the names in the table of
// functions of the program as Go compiles it. The parts of a group follow each
// other.
func Parts(root string) ([]Part, error) {
	plain, err := wasm(root, "./wasm/cmd/planner", small...)
	if err != nil {
		return nil, err
	}
	return partsOf(plain)
}

func partsOf(plain []byte) ([]Part, error) {
	smaller, err := Smaller(plain, false)
	if err != nil {
		return nil, err
	}
	names, err := namesOf(plain)
	if err != nil {
		return nil, err
	}
	sections, err := readSections(smaller[8:])
	if err != nil {
		return nil, err
	}
	parts := map[string]*Part{}
	add := func(group, name string, content []byte) {
		key := group + " " + name
		if parts[key] == nil {
			parts[key] = &Part{Group: group, Name: name}
		}
		parts[key].Content = append(parts[key].Content, content...)
	}
	for _, s := range sections {
		switch s.id {
		case codeSection:
			r := reader{rest: s.body}
			for k := range r.number() {
				name := "" // what unpacks, and has no name, is the last
				if k < uint64(len(names)) {
					name = names[k]
				}
				group, name := groupOf(name)
				add(group, name, r.take(r.number()))
			}
		case dataSection:
			add("data", "strings, types, tables", s.body)
		default:
			add("data", "heads", s.body)
		}
	}
	var list []Part
	for _, key := range slices.Sorted(maps.Keys(parts)) {
		list = append(list, *parts[key])
	}
	return list, nil
}

// namesOf are the names of a program's functions as Go compiles it, by their
// places.
func namesOf(plain []byte) ([]string, error) {
	sections, err := readSections(plain[8:])
	if err != nil {
		return nil, err
	}
	for _, s := range sections {
		if s.id != dataSection {
			continue
		}
		segments, err := readSegments(s.body)
		if err != nil {
			return nil, err
		}
		t, err := readFunctions(largest(join(segments)).data)
		if err != nil {
			return nil, err
		}
		return t.functionNames(), nil
	}
	return nil, errCode
}

// groupOf returns the floor of a function and its package on it, or the
// package of the library of Go and what it belongs to.
func groupOf(function string) (group, name string) {
	pkg := strings.TrimSuffix(packageOf(function), ".")
	if strings.HasPrefix(pkg, "type:") {
		return "made by the compiler", "comparisons" // of structs
	}
	if ours, ok := strings.CutPrefix(pkg, "evenrow/wasm/"); ok {
		floor, name, _ := strings.Cut(ours, "/")
		return floor, name
	}
	switch first, _, _ := strings.Cut(pkg, "/"); {
	case pkg == "main":
		return "cmd", "planner"
	case pkg == "":
		return "runtime", "without a package"
	case first == "runtime" || first == "internal":
		return "runtime", pkg
	}
	return "library", pkg
}
