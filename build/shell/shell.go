// Package shell holds a plan page without its plan: what the site's builder
// makes once, and whoever answers with plan pages fills in for each.
//
// A static host has no plan pages. A site built for one knows nothing of them.
package shell

import "strings"

// Address is that of the plan page within the site. What else a plan is served
// as has the same address with an ending, such as "plan.csv".
const Address = "plan"

// A Shell is the frames of everything that is made for a plan. In them stands
// [Mark] wherever something is to be filled in.
type Shell struct {
	Plan     string            // the page of a plan
	Refusal  string            // the page that says why there is none
	Cautions map[string]string // what stands in the box of each caution, by name
}

// The places of both pages: text, in an element or between quotes. The plan's
// page also has places for markup, by the id of the element whose content it
// is: those of every fragment.
const (
	Title   = "title"
	Summary = "summary"
	Origin  = "origin" // "https://example.org", without a slash at its end
	Link    = "link"   // the plan as the end of an address
)

// Body is the place of the refusal's page that holds markup.
const Body = "body"

const open, shut = "[[", "]]"

// Mark is what stands in a shell in the place of a name.
func Mark(name string) string { return open + name + shut }

// Fill puts values into the places of a page, by name. What has no value is
// left empty. Nothing in a value is taken for a place.
func Fill(page string, values map[string]string) string {
	long := len(page)
	for _, value := range values {
		long += len(value)
	}
	var b strings.Builder
	b.Grow(long)
	for {
		before, rest, found := strings.Cut(page, open)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, after, _ := strings.Cut(rest, shut)
		b.WriteString(values[name])
		page = after
	}
}

// box is what the attribute of a caution's box ends with. A search is quick in
// WebAssembly when what it looks for begins with a rare byte.
const box = `-caution="`

// Cautions puts the texts of cautions into the empty boxes that a fragment
// leaves for them, because the texts are no part of the browser's program.
func Cautions(fragment string, text func(name string) string) string {
	var b strings.Builder
	b.Grow(len(fragment) + len(fragment)/4)
	for {
		before, rest, found := strings.Cut(fragment, box)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, after, _ := strings.Cut(rest, `"`)
		attributes, after, _ := strings.Cut(after, ">")
		b.WriteString(box + name + `"` + attributes + ">" + text(name))
		fragment = after
	}
}
