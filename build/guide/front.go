package guide

import (
	"slices"
	"strings"

	"evenrow/build/problem"
)

// A front is the block of "key: value" lines at the head of a file, between
// two lines of three dashes. A key with nothing behind it is followed by a
// list, one "- item" a line.
type front struct {
	file  string
	value map[string]string
	list  map[string][]string
	line  map[string]int
	body  []byte // what follows the block
	first int    // the line of the file on which body begins, from 1
}

// optional is the one key that may be missing.
const optional = "hazards"

// readFront splits a file. Every key must be one of keys, and each of them
// but the optional one must be there once with something behind it.
func readFront(file string, content []byte, keys, lists []string, report *problem.List) front {
	f := front{file: file, value: map[string]string{}, list: map[string][]string{}, line: map[string]int{}, body: content, first: 1}
	lines := strings.SplitAfter(string(content), "\n")
	if strings.TrimRight(lines[0], "\r\n") != "---" {
		report.Add(file, 1, "must begin with a line of three dashes, then title and the other keys")
		return f
	}
	key, end := "", 0
	for i, line := range lines[1:] {
		number := i + 2
		line = strings.TrimSpace(line)
		if line == "---" {
			end = number
			break
		}
		if line == "" {
			continue
		}
		if item, ok := strings.CutPrefix(line, "- "); ok {
			if !slices.Contains(lists, key) {
				report.Add(file, number, "a list item must stand under "+strings.Join(lists, " or "))
				continue
			}
			f.list[key] = append(f.list[key], strings.TrimSpace(item))
			continue
		}
		name, value, ok := strings.Cut(line, ":")
		key, value = strings.TrimSpace(name), strings.TrimSpace(value)
		switch {
		case !ok:
			report.Add(file, number, `must be "key: value", a list item or three dashes`)
		case !slices.Contains(keys, key) && !slices.Contains(lists, key):
			report.Add(file, number, "there is no key "+key+"; the keys are "+strings.Join(slices.Concat(keys, lists), ", "))
		case f.line[key] != 0:
			report.Add(file, number, key+" stands here twice")
		case slices.Contains(lists, key) && value != "":
			report.Add(file, number, key+` must be a list, one "- item" a line`)
		}
		if f.line[key] == 0 {
			f.line[key] = number
			f.value[key] = value
		}
	}
	if end == 0 {
		report.Add(file, 1, "the block of keys must end with a line of three dashes")
		return f
	}
	for _, k := range keys {
		if f.value[k] == "" && k != optional {
			report.Add(file, max(1, f.line[k]), k+" is missing")
		}
	}
	for _, k := range lists {
		if len(f.list[k]) == 0 {
			report.Add(file, max(1, f.line[k]), k+" must have at least one item")
		}
	}
	f.body = []byte(strings.Join(lines[end:], ""))
	f.first = end + 1
	return f
}
