// Package view turns a worked-out plan into the HTML and SVG of the page: the
// same fragments for the pre-rendered example, the browser and print.
//
// A fragment is the content of the element that carries its ID. Every picture
// is drawn for two widths, so that no text in it falls below 11 px, and has a
// table that says the same. Nothing here computes water: a number that is not
// known, or not finite, is printed as a dash.
package view

import (
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/grow"
	"evenrow/wasm/shown/mend"
	"evenrow/wasm/shown/scene"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/shown/watering"
	"evenrow/wasm/shown/why"
)

// A section is one place on the page: its id, and what draws it.
type section struct {
	id   string
	draw func(*scene.Scene)
}

// withAnswer are the sections that come with the answer, in the order of the page.
var withAnswer = [...]section{
	{"answer", answer.Answer},
	{"always", answer.Always},
	{"pressure", why.Pressure},
	{"budget", why.Budget},
	{"rows", answer.Rows},
	{"along", why.Along},
	{"pump", why.Pump},
	{"evenness", why.Evenness},
	{"speeds", why.Speeds},
	{"surge", why.Surge},
	{"findings", answer.Findings},
	{"parts", buy.Parts},
	{"cautions", (*scene.Scene).Cautions},
}

// withExploration are those that come with an exploration.
var withExploration = [sheet.Explorations][]section{
	sheet.Season: {
		{"season", grow.Season},
		{"crops", grow.Crops},
		{"weather", grow.Weather},
		{"tasks", grow.Tasks},
		{"shots", watering.Shots},
		{"timer", watering.Timer},
		{"tank", watering.Tank},
		{"outage", watering.Outage},
	},
	sheet.Looping:   {{"zones", why.Zones}, {"ring", why.Ring}},
	sheet.Starting:  {{"starting", why.Starting}, {"stopping", why.Stopping}},
	sheet.Flushing:  {{"flush", mend.Flush}},
	sheet.Searching: {{"designs", answer.Designs}},
	sheet.Faulting:  {{"faults", mend.Faults}},
	sheet.Chancing:  {{"chance", why.Chance}},
	sheet.Carrying:  {{"headroom", answer.Headroom}},
}

// Told returns everything that is said about a worked-out plan, in the order
// of the page. The form, the errors and the link belong to package form; what
// can wait to [Explored].
func Told(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	return drawn(scene.New(s, link), withAnswer[:])
}

// Explored returns the fragments of what [sheet.Sheet.Explore] added in one
// exploration, or that it was left out.
func Explored(s *sheet.Sheet, which sheet.Exploration, link scene.Linker) []block.Fragment {
	if !s.Left[which] {
		return drawn(scene.New(s, link), withExploration[which])
	}
	var all []block.Fragment
	for i := range withExploration[which] {
		w := &block.Writer{}
		w.Tag("p", leftOut)
		all = append(all, block.Fragment{ID: withExploration[which][i].id, HTML: w.String()})
	}
	return all
}

// Everything returns the fragments of a sheet of which all was explored.
func Everything(s *sheet.Sheet, link scene.Linker) []block.Fragment {
	all := Told(s, link)
	for which := range sheet.Exploration(sheet.Explorations) {
		all = append(all, Explored(s, which, link)...)
	}
	return all
}

// What is said in the place of a result that takes too much work.
const leftOut = "This was left out: for this plan it takes too long to work out. Fewer plants or rows, or none that differ, show it."

// drawn draws sections, each into the memory of the one before.
func drawn(sc *scene.Scene, list []section) []block.Fragment {
	all := make([]block.Fragment, 0, len(list))
	for i := range list {
		sc.Clear()
		list[i].draw(sc)
		all = append(all, block.Fragment{ID: list[i].id, HTML: sc.String()})
	}
	return all
}
