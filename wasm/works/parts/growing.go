package parts

import (
	"slices"
	"strconv"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/ground/words"
	"evenrow/wasm/trade/catalogue"
)

// growing adds the medium by kind and what the plants are raised in.
func (c *count) growing() {
	c.media()
	crops, blockCrops := c.crops(false), c.crops(true)
	plants := len(c.Plants)
	spare := spares(plants, catalogue.SowingSpare, leastSpare)
	c.add(Line{
		Item:  ASowingPlug,
		Name:  words.Say("Plug to sow in"),
		Count: plants + spare,
		Spare: spare,
		Why:   words.Say("one for each plant of {crops}, and 1 more for every {n}, since not every seed comes up", words.And(crops), words.N(catalogue.SowingSpare)),
	})
	blocks := 0
	for i := range c.Plants {
		if c.Plan.Trait(c.Plan.Rows[c.Plants[i].Row].Crop, catalogue.InBlock) > 0 {
			blocks++
		}
	}
	c.add(Line{
		Item:  ARaisingBlock,
		Name:  words.Say("Block to raise a plant in, about 10 cm (4 in)"),
		Count: blocks,
		Why:   words.Say("one for each plant of {crops}", words.And(blockCrops)),
	})
}

// crops returns the names of the crops planted, or of those raised in blocks,
// each once.
func (c *count) crops(inBlocks bool) []string {
	var names []string
	for i := range c.Plan.Rows {
		crop := c.Plan.Rows[i].Crop
		name := c.Plan.CropName(crop)
		if (!inBlocks || c.Plan.Trait(crop, catalogue.InBlock) > 0) && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// media adds slabs, bags, buckets and pots, whole ones in each row, and the
// filling of those that come empty.
func (c *count) media() {
	fill, filled, wets := 0.0, []string(nil), 0.0
	for kind := range catalogue.Media {
		m := &catalogue.Media[kind]
		total, rows := 0, 0
		each, perPiece := 0, 0 // in each row, where all are alike; else 0
		for i := range c.Plan.Rows {
			r := &c.Plan.Rows[i]
			if r.Medium != kind {
				continue
			}
			n := (r.Plants + r.PerPiece - 1) / r.PerPiece
			if rows == 0 {
				each, perPiece = n, r.PerPiece
			}
			if n != each {
				each = 0
			}
			if r.PerPiece != perPiece {
				perPiece = 0
			}
			total += n
			rows++
		}
		if total == 0 {
			continue
		}
		var why string
		switch pieces := words.Say(m.Piece.Count, words.N(each)); {
		case each > 0 && rows == 1:
			why = words.Say("{pieces} in the row", pieces)
		case each > 0:
			why = words.Say("{pieces} in each of {n} {n|row|rows}", pieces, words.N(rows))
		default:
			why = words.Say("{pieces} in {n} {n|row|rows}", words.Say(m.Piece.Whole), words.N(rows))
		}
		if perPiece > 0 {
			why = words.List(why, words.Say(m.Piece.Each, words.N(perPiece)))
		}
		water := float64(total) * m.Water
		pieces := words.Say(m.Piece.Count, words.N(total))
		switch {
		case m.Empty:
			fill += float64(total) * m.Volume
			wets += water
			filled = append(filled, words.Say("{pieces} of {volume}", pieces, unit.Text(unit.Volume, c.sys, m.Volume)))
		default:
			why = words.Notes(why, words.Say("to be soaked before planting, with about {water} of water in all", unit.Text(unit.Volume, c.sys, water)))
		}
		c.add(Line{
			Item: AMedium, Size: strconv.Itoa(kind),
			Name:  words.Say("{medium}, {volume}", words.Say(m.Begin), unit.Text(unit.Volume, c.sys, m.Volume)),
			Count: total,
			Why:   why,
		})
		length := unit.Text(unit.Length, c.sys, m.Length)
		under := words.Say("one under each of {pieces}, opaque and fit for food: drain is feed, and is collected where local rules allow it", pieces)
		if m.Along {
			under = words.Notes(under, words.Say("gutters along the rows do as well, {length} of them", unit.Text(unit.Length, c.sys, float64(total)*m.Length)))
		}
		c.add(Line{
			Item: ADrainTray, Size: strconv.Itoa(kind),
			Name:  words.Say("Drain tray for a {medium}, at least {length} by {width}", words.Say(m.Name), length, unit.Text(unit.Length, c.sys, m.Width)),
			Count: total,
			Why:   under,
		})
	}
	if fill > 0 {
		c.one(AFilling, "", words.Say("Coco or other loose medium, {volume} in all", unit.Text(unit.Volume, c.sys, fill)), words.Notes(
			words.Say("fills {pieces}", words.And(filled)), words.Say("about {water} of water wets it, and expands it if it comes pressed", unit.Text(unit.Volume, c.sys, wets))))
	}
}
