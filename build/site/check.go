package site

import (
	"path"
	"strings"

	"evenrow/build/guide"
	"evenrow/build/shell"
)

// check reports what is wrong in the finished pages, and names of guides and
// cautions that lead nowhere.
func (b *builder) check(guides []*guide.Guide, cautions map[string]guide.Caution) {
	outlines := map[string]outline{}
	for _, p := range b.pages {
		outlines[p.name] = read(p.body)
	}
	lines := map[string]map[string]int{} // page -> target -> line of the guide
	for _, g := range guides {
		at := map[string]int{}
		for _, l := range g.Links {
			if at[l.Target] == 0 {
				at[l.Target] = l.Line
			}
		}
		lines[g.Name+".html"] = at
	}
	for _, p := range b.pages {
		o := outlines[p.name]
		for _, fault := range o.faults {
			b.report.Add(p.file, 0, p.name+" "+fault)
		}
		for _, target := range o.loads {
			if !b.exists(target) {
				b.report.Add(p.file, 0, p.name+" loads "+target+", which is missing")
			}
		}
		for _, target := range o.links {
			if wrong := b.follow(p.name, target, outlines); wrong != "" {
				b.report.Add(p.file, lines[p.name][target], wrong)
			}
		}
	}
	for _, n := range b.Tool.Names {
		if _, ok := cautions[n.Caution]; n.Caution != "" && !ok {
			b.report.Add("wasm", 0, n.From+" names the caution "+n.Caution+", which is not in content/cautions")
		}
		if n.Guide == "" {
			continue
		}
		name, anchor, _ := strings.Cut(n.Guide, "#")
		target := name + ".html"
		if anchor != "" {
			target += "#" + anchor
		}
		if wrong := b.follow(indexPage, target, outlines); wrong != "" {
			b.report.Add("wasm", 0, n.From+" "+wrong)
		}
	}
}

// exists reports whether an address within the site is one of its files.
func (b *builder) exists(target string) bool {
	if strings.HasPrefix(target, "data:") {
		return true
	}
	name := strings.TrimPrefix(path.Clean("/"+target), "/")
	if name == "" {
		name = indexPage
	}
	// The service worker lists the finished files, and so comes last.
	_, ok := b.bundle.Files[name]
	return ok || name == "offline.js" || b.Answered && name == shell.Address
}

// follow says what is wrong with a link on a page, or nothing.
func (b *builder) follow(from, target string, outlines map[string]outline) string {
	if strings.HasPrefix(target, "https://") || strings.HasPrefix(target, "mailto:") {
		return ""
	}
	if strings.Contains(target, ":") && !strings.Contains(target, "#") || strings.HasPrefix(target, "//") {
		return "links to " + target + ", which is neither a page of the site nor an https address"
	}
	to, anchor, _ := strings.Cut(target, "#")
	name := strings.TrimPrefix(path.Clean("/"+to), "/")
	switch {
	case to == "":
		name = from
	case name == "":
		name = indexPage
	}
	o, page := outlines[name]
	switch {
	case !page && !b.exists(to):
		return "links to " + target + ", but there is no page " + name
	case anchor == "" || o.ids[anchor]:
		return ""
	case name == indexPage && b.Tool.IsPlan != nil && b.Tool.IsPlan(anchor):
		return ""
	}
	return "links to " + target + ", but " + name + " has no place called " + anchor
}
