package buy

import "evenrow/wasm/ground/words"

// named begins the row of a line of the list: its number, which lights up its places on
// the plan view and is led to from there, and its name with a box to tick.
func (sc part) named(i int) {
	p := &sc.S.Parts[i]
	sc.HTML(`<span class="line">`)
	sc.Number(i, "line-"+words.N(i+1))
	sc.HTML(`<label class="tick"><input type="checkbox"`).Attr("data-tick", p.Key()).HTML(`> `).Text(p.Name).HTML(`</label></span>`)
}
