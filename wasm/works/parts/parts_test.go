package parts

import (
	"strconv"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/chain"
	"evenrow/wasm/works/layout"
)

// The whole list for the plan that the page opens with, counted by hand from
// its figures: 8 m of lead with two bends and a valve, a header of 3 x 1.1 m,
// four rows of 0.167 + 29 x 0.333 + 0.2 m with 30 plants, 3 to a slab.
func TestMillraceCountedByHand(t *testing.T) {
	want := []Line{
		{Group: Tubing, Name: "25 mm PE pipe, SDR 11 (20.4 mm bore)", Length: 8 + 3.3 + 0.2,
			Why: "supply line 8 m, header 3.3 m, 1 short piece at the header's end 0.2 m; opaque, so that nothing grows in it, and fit for drinking water"},
		{Group: Tubing, Name: "16 mm drip tubing (13.6 mm bore)", Length: 4 * 10.024, Why: "4 rows 40.1 m; opaque, so that nothing grows in it, and fit for drinking water"},
		{Group: Fittings, Name: "Adapter, R 3/4 taper thread, male, to compression end for PE pipe of 25 mm", Count: 1, Why: "between the regulator and the supply line"},
		{Group: Fittings, Name: "Compression elbow, 25 mm", Count: 2, Why: "2 bends in the supply line"},
		{Group: Fittings, Name: "Compression ball valve, 25 mm", Count: 1, Why: "1 in the supply line"},
		{Group: Fittings, Name: "Compression tee, 25 mm, with G 3/4 parallel thread, female, on its branch", Count: 4, Why: "one at each of 4 rows"},
		{Group: Fittings, Name: "Adapter, R 3/4 taper thread, male, to barb for drip tubing of 16 mm", Count: 4, Why: "into the thread of the tee"},
		{Group: Fittings, Name: "Compression end cap that opens, 25 mm", Count: 1, Why: "at the closed end of the header, to flush it"},
		{Group: Fittings, Name: "Barbed end cap that opens, 16 mm", Count: 4, Why: "one at the end of each of 4 rows, to flush it"},
		{Group: Fittings, Name: "Stainless hose clamp, 12-20 mm, for tubing of 16.0 mm outside", Count: 4 + 4 + 2 + 1, Spare: 1,
			Why: "one on each barb (adapter 4, end cap 4, gauge tee 2), and one to spare; a barb that locks with a ring or a nut of its own needs none"},
		{Group: EmittersGroup, Name: "Emitter, 2.0 L/h, pressure-compensating", Count: 126, Spare: 6,
			Why: "120 plants with 1 each, and 1 to spare for every 20, at least 2, all of one batch"},
		{Group: EmittersGroup, Name: "Stake to hold the tubing", Count: 120, Why: "one at each emitter"},
		{Group: EmittersGroup, Name: "Plug for a wrong hole", Count: 5, Spare: 5, Why: "1 for every 50 holes, at least 5"},
		{Group: WaterPath, Name: "Opaque tank with a lid, fit for drinking water, 400 L", Count: 1},
		{Group: WaterPath, Name: "Level base for the tank, for 400 kg and the tank", Count: 1},
		{Group: WaterPath, Name: "Pump with the curve of this plan", Count: 1, Why: "from the plan"},
		{Group: Electrics, Name: "Outlet with ground-fault protection (GFCI, or RCD of 30 mA or less)", Count: 1},
		{Group: Electrics, Name: "Weatherproof cover for plug and timer", Count: 1},
		{Group: Electrics, Name: "Hook for the pump's cord", Count: 1},
		{Group: Electrics, Name: "Timer for the pump", Count: 1},
		{Group: WaterPath, Name: "Filter, 130 µm", Count: 1, Why: "from the plan, after the pump; opaque, or kept in the dark, so that nothing grows in it"},
		{Group: WaterPath, Name: "Pressure regulator, 2.00 bar", Count: 1, Why: "from the plan, after the filter"},
		{Group: Fittings, Name: "Reducer, G 1 parallel thread, female, to R 3/4 taper thread, male", Count: 1, Why: "between the pump and the tee of the first gauge"},
		{Group: Fittings, Name: "Nipple, R 3/4 taper thread, male, at both ends", Count: 1, Why: "between the tee of the second gauge and the regulator"},
		// The water in the tank, where the regulator's pressure counts from, is the lowest place.
		{Group: WaterPath, Name: "Pressure gauge, 0 to 4 bar", Count: 2,
			Why: "one before the filter, one after it, both before the regulator; with every emitter shut it reads at most 3.33 bar"},
		{Group: WaterPath, Name: "Pressure gauge, 0 to 2.5 bar", Count: 1,
			Why: "one at the end of the last row; with every emitter shut it reads at most 2.00 bar"},
		{Group: WaterPath, Name: "Tee, G 3/4 parallel thread, female, at both ends, with a thread of 1/4 in for a gauge", Count: 2},
		{Group: WaterPath, Name: "Barbed tee with a thread of 1/4 in for a gauge, 16 mm", Count: 1},
		{Group: Growing, Name: "Coco slab, 16 L", Count: 40, Why: "10 slabs in each of 4 rows, 3 plants to a slab; to be soaked before planting, with about 440 L of water in all"},
		{Group: Growing, Name: "Drain tray for a coco slab, at least 1 m by 0.2 m", Count: 40,
			Why: "one under each of 40 slabs, opaque and fit for food: drain is feed, and is collected where local rules allow it; gutters along the rows do as well, 40 m of them"},
		{Group: Growing, Name: "Plug to sow in", Count: 132, Spare: 12},
		{Group: Growing, Name: "Block to raise a plant in, about 10 cm (4 in)", Count: 120,
			Why: "one for each plant of sweet pepper, tomato and cucumber"},
		{Group: Growing, Name: "Can for the drain of one tray, opaque and fit for food", Count: 3},
		{Group: Growing, Name: "EC meter", Count: 1},
		{Group: Growing, Name: "Calibration fluid for the EC meter, 1.41 mS/cm", Count: 1},
		{Group: Growing, Name: "pH meter", Count: 1},
		{Group: Growing, Name: "Calibration fluid for the pH meter, pH 4 and pH 7", Count: 2},
		{Group: Tools, Name: "Punch for emitters with a standard barb", Count: 1},
		{Group: Tools, Name: "Flat washer, G 1", Count: 1, Spare: 1},
		{Group: Tools, Name: "Tubing cutter", Count: 1},
		{Group: Tools, Name: "Roll of thread tape", Count: 1},
		{Group: Tools, Name: "Tape measure", Count: 1},
		{Group: Tools, Name: "Marker that writes on wet plastic", Count: 1},
		{Group: Tools, Name: "Nut driver or screwdriver for hose clamps", Count: 1},
		{Group: Tools, Name: "Cup for the cup test", Count: 20},
		{Group: Tools, Name: "Measuring jug, fit for food", Count: 1},
		{Group: Tools, Name: "Kitchen timer", Count: 1},
	}
	compare(t, Count(layout.New(plan.Default()), 0, 0), want)
}

// The whole list of a tap that feeds one row of 20 plants, by hand: 5 m of lead with a
// valve, a row of 0.25 + 19 x 0.25 + 0.2 m, 4 plants to a slab.
func TestTapCountedByHand(t *testing.T) {
	p := plan.Default()
	p.Units = unit.US
	p.Supply.Kind, p.Supply.Regulator, p.Filter.Present, p.Header.Layout = plan.Mains, 0, 0, plan.OneLine
	p.Runs[0] = plan.Run{Length: 5, Tube: 10, Valves: 1}
	plan.SectionNamed("rows").Resize(p, 1)
	r := &p.Rows[0]
	r.Plants, r.PerPiece, r.Spacing, r.First, r.Tube = 20, 4, 0.25, 0.25, 10
	compare(t, Count(layout.New(p), 0, 0), []Line{
		{Group: Tubing, Name: "1/2 in drip tubing, 0.600 x 0.700 in", Length: 5 + 5.2},
		{Group: Fittings, Name: "Adapter, 3/4 in hose thread, female, with its washer, to barb for drip tubing of 1/2 in (0.600)", Count: 1},
		{Group: Fittings, Name: "Barbed joiner, 1/2 in (0.600)", Count: 1},
		{Group: Fittings, Name: "Barbed ball valve, 1/2 in (0.600)", Count: 1},
		{Group: Fittings, Name: "Barbed end cap that opens, 1/2 in (0.600)", Count: 1},
		{Group: Fittings, Name: "Stainless hose clamp, SAE 8, 7/16-1 in, for tubing of 0.700 in outside", Count: 1 + 2 + 2 + 1 + 2 + 1, Spare: 1},
		{Group: EmittersGroup, Name: "Emitter, 0.53 gal/h, pressure-compensating", Count: 22, Spare: 2},
		{Group: EmittersGroup, Name: "Stake to hold the tubing", Count: 20},
		{Group: EmittersGroup, Name: "Plug for a wrong hole", Count: 5, Spare: 5},
		{Group: WaterPath, Name: "Backflow device", Count: 1},
		{Group: WaterPath, Name: "Timer valve", Count: 1},
		{Group: WaterPath, Name: "Pressure gauge, 0 to 60 psi", Count: 2},
		{Group: WaterPath, Name: "Tee, 3/4 in hose thread, female, with its washer, to 3/4 in hose thread, male, with a thread of 1/4 in for a gauge", Count: 1},
		{Group: WaterPath, Name: "Barbed tee with a thread of 1/4 in for a gauge, 1/2 in (0.600)", Count: 1},
		{Group: Growing, Name: "Coco slab, 4.2 gal", Count: 5},
		{Group: Growing, Name: "Drain tray for a coco slab, at least 3.3 ft by 0.7 ft", Count: 5},
		{Group: Growing, Name: "Plug to sow in", Count: 22, Spare: 2},
		{Group: Growing, Name: "Block to raise a plant in, about 10 cm (4 in)", Count: 20},
		{Group: Growing, Name: "Can for the drain of one tray, opaque and fit for food", Count: 1},
		{Group: Growing, Name: "EC meter", Count: 1},
		{Group: Growing, Name: "Calibration fluid for the EC meter, 1.41 mS/cm", Count: 1},
		{Group: Growing, Name: "pH meter", Count: 1},
		{Group: Growing, Name: "Calibration fluid for the pH meter, pH 4 and pH 7", Count: 2},
		{Group: Tools, Name: "Punch for emitters with a standard barb", Count: 1},
		{Group: Tools, Name: "Tubing cutter", Count: 1},
		{Group: Tools, Name: "Roll of thread tape", Count: 1},
		{Group: Tools, Name: "Flat washer, 3/4 in, for hose threads", Count: 4, Spare: 4},
		{Group: Tools, Name: "Tape measure", Count: 1},
		{Group: Tools, Name: "Marker that writes on wet plastic", Count: 1},
		{Group: Tools, Name: "Nut driver or screwdriver for hose clamps", Count: 1},
		{Group: Tools, Name: "Cup for the cup test", Count: 20},
		{Group: Tools, Name: "Measuring jug, fit for food", Count: 1},
		{Group: Tools, Name: "Kitchen timer", Count: 1},
	})
}

// compare holds a list against one by hand, in any order.
func compare(t *testing.T, got, want []Line) {
	t.Helper()
	if len(got) != len(want) {
		t.Errorf("%d lines, want %d: %+v", len(got), len(want), got)
	}
	for _, w := range want {
		g := find(got, w.Name)
		if g.Group != w.Group || g.Count != w.Count || g.Spare != w.Spare || !near(g.Length, w.Length) {
			t.Errorf("line is %+v\nwant %+v", g, w)
		}
		if w.Why != "" && g.Why != w.Why {
			t.Errorf("%s: why %q\nwant %q", g.Name, g.Why, w.Why)
		}
	}
}

// find returns the line of a name, or a line of nothing.
func find(lines []Line, name string) Line {
	for _, l := range lines {
		if l.Name == name {
			return l
		}
	}
	return Line{}
}

func TestCountsThatChange(t *testing.T) {
	tests := []struct {
		what   string
		change func(*plan.Plan)
		name   string
		count  int
		why    string
	}{
		{"fed in the middle, a tee of its own", func(p *plan.Plan) { p.Header.Feed = plan.FeedMiddle },
			"Compression tee, 25 mm", 1, "where the supply line meets the header"},
		{"fed in the middle, two ends of the header", func(p *plan.Plan) { p.Header.Feed = plan.FeedMiddle },
			"Compression end cap that opens, 25 mm", 2, "one at each end of the header, to flush it"},
		{"a lead of another size", func(p *plan.Plan) { p.Runs[0].Tube = 4 },
			"Compression joiner, 32 mm to 25 mm", 1, "from the supply line to the header"},
		{"a lead of another size in the middle", func(p *plan.Plan) { p.Runs[0].Tube, p.Header.Feed = 4, plan.FeedMiddle },
			"Compression tee, 25 mm to 32 mm", 1, "where the supply line meets the header"},
		{"tees of two kinds under one name", func(p *plan.Plan) { p.Runs[0].Tees, p.Header.Feed = 3, plan.FeedMiddle },
			"Compression tee, 25 mm", 4, "3 in the supply line, passed straight through; the third end is for what branches off there; where the supply line meets the header"},
		{"three runs", func(p *plan.Plan) { plan.SectionNamed("runs").Resize(p, 3) },
			"Compression joiner, 25 mm", 2, "2 between runs of the supply line"},
		{"check valves", func(p *plan.Plan) { p.Runs[0].Checks = 2 }, "Compression check valve, 25 mm", 2, "2 in the supply line"},
		{"two zones", func(p *plan.Plan) { p.Rows[3].Zone = 2 }, "Barbed zone valve, 16 mm", 4,
			"one at the start of each of 4 rows, since one header feeds all zones; those of one zone open together"},
		{"two zones, clamps", func(p *plan.Plan) { p.Rows[3].Zone = 2 }, "Stainless hose clamp, 12-20 mm, for tubing of 16.0 mm outside", 4 + 4 + 8 + 2 + 1,
			"one on each barb (adapter 4, zone valve 8, end cap 4, gauge tee 2), and one to spare; a barb that locks with a ring or a nut of its own needs none"},
		{"one line: elbows", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "Barbed elbow, 16 mm", 6,
			"6 where the line turns from row to row"},
		{"one line: one end", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "Barbed end cap that opens, 16 mm", 1,
			"at the end of the line, to flush it"},
		{"one line: from the supply line", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "Adapter, R 1/2 taper thread, male, to compression end for PE pipe of 25 mm", 1,
			"from the supply line to row 1"},
		{"one line: to the row", func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "Adapter, G 1/2 parallel thread, female, to barb for drip tubing of 16 mm", 1,
			"from the supply line to row 1"},
		{"soft tubing all the way", func(p *plan.Plan) { p.Runs[0].Tube, p.Header.Tube = 2, 2 }, "Barbed tee, 20 mm to 16 mm", 4,
			"one at each of 4 rows"},
		{"inch tubing on a metric header", func(p *plan.Plan) { p.Header.Tube, p.Rows[1].Tube = 2, 10 }, "Barbed tee, 20 mm, with G 3/4 parallel thread, female, on its branch", 1,
			"one at the row"},
		{"turns between two families", func(p *plan.Plan) { p.Header.Layout, p.Rows[1].Tube = plan.OneLine, 10 }, "Barbed elbow, 16 mm, with G 1/2 parallel thread, female, at its other end", 1,
			"1 where the line turns from row to row"},
		{"pipe made to its bore", func(p *plan.Plan) { p.Runs[0].Tube, p.Header.Tube = 15, 15 }, "Insert tee, 1 in PE (1.049), with 1 in pipe thread (NPT), female, on its branch", 4,
			"one at each of 4 rows"},
		// Of 1.049 in and two fifteenths of that, which is 30.2 mm.
		{"two clamps on its barbs", func(p *plan.Plan) { p.Runs[0].Tube, p.Header.Tube = 15, 15 }, "Stainless hose clamp, 25-40 mm, for tubing of 30.2 mm outside", 2*(1+4+2+8+1) + 1,
			"two on each barb, their screws on opposite sides (adapter 1, elbow 4, ball valve 2, tee 8, end cap 1), and one to spare"},
		{"no clamp on compression fittings", func(p *plan.Plan) {}, "Stainless hose clamp, 20-32 mm, for tubing of 25.0 mm outside", 0, ""},
		{"no filter", func(p *plan.Plan) { p.Filter.Present = 0 }, "Adapter, R 3/4 taper thread, male, to compression end for PE pipe of 25 mm", 1,
			"between the tee of the first gauge and the supply line"},
		{"no filter, no regulator", func(p *plan.Plan) { p.Filter.Present, p.Supply.Regulator = 0, 0 }, "Adapter, R 1 taper thread, male, to compression end for PE pipe of 25 mm", 1,
			"between the tee of the first gauge and the supply line"},
		{"a regulator", func(p *plan.Plan) { p.Supply.Regulator = 1e5 }, "Nipple, R 3/4 taper thread, male, at both ends", 1,
			"between the tee of the second gauge and the regulator"},
		{"a regulator below a tank", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 1e5 }, "Coupling, G 3/4 parallel thread, female, at both ends", 1,
			"between the timer valve and the filter"},
		{"adapters of a regulator below a tank", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 1e5 }, "Adapter, R 3/4 taper thread, male, to compression end for PE pipe of 25 mm", 2,
			"between the supply line and the regulator; between the regulator and the supply line"},
		{"and of barbs, with their clamps", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 1e5
			plan.SectionNamed("runs").Resize(p, 2)
			p.Runs[1].Tube, p.Runs[1].Elbows, p.Runs[1].Valves = 2, 0, 0
		}, "Stainless hose clamp, 16-27 mm, for tubing of 20.0 mm outside", 1 + 2 + 1 + 1,
			"one on each barb (adapter 4), and one to spare; a barb that locks with a ring or a nut of its own needs none"},
		{"a tap's threads", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.Mains, 1e5 }, "Nipple, R 3/4 taper thread, male, at both ends", 1,
			"between the tee of the second gauge and the regulator"},
		{"a tap's regulator", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.Mains, 1e5 }, "Pressure regulator, 1.00 bar", 1,
			"from the plan, after the filter"},
		{"a tank's regulator", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Regulator = plan.GravityTank, 1e5 }, "Pressure regulator, 1.00 bar", 1,
			"from the plan, at the header: near the tank there is no pressure yet to take away"},
		{"a lead from a tank with a regulator", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Filter.Present = plan.GravityTank, 1e5, 0
		}, "Adapter, G 3/4 parallel thread, female, to compression end for PE pipe of 25 mm", 1, "between the timer valve and the supply line"},
		{"a regulator's pressure", func(p *plan.Plan) { p.Supply.Regulator = 1.5e5 }, "Pressure regulator, 1.50 bar", 1,
			"from the plan, after the filter"},
		{"a regulator without a filter", func(p *plan.Plan) { p.Filter.Present = 0 }, "Pressure regulator, 2.00 bar", 1,
			"from the plan, after the pump"},
		{"a tap's filter", func(p *plan.Plan) { p.Supply.Kind = plan.Mains }, "Filter, 130 µm", 1, "from the plan, after the backflow device; opaque, or kept in the dark, so that nothing grows in it"},
		{"a tank's filter", func(p *plan.Plan) { p.Supply.Kind = plan.GravityTank }, "Filter, 130 µm", 1, "from the plan, after the timer valve; opaque, or kept in the dark, so that nothing grows in it"},
		{"two emitters a plant", func(p *plan.Plan) { p.Rows[0].PerPlant = 2 }, "Emitter, 2.0 L/h, pressure-compensating", 150 + 8,
			"150 at 120 plants, and 1 to spare for every 20, at least 2, all of one batch"},
		{"more emitters in later rows", func(p *plan.Plan) { p.Rows[2].PerPlant, p.Rows[3].PerPlant = 2, 3 }, "Emitter, 2.0 L/h, pressure-compensating", 210 + 11,
			"210 at 120 plants, and 1 to spare for every 20, at least 2, all of one batch"},
		{"29 plants take ten slabs too", func(p *plan.Plan) { p.Rows[0].Plants, p.Rows[1].Plants = 29, 27 }, "Coco slab, 16 L", 39,
			"whole slabs in 4 rows, 3 plants to a slab; to be soaked before planting, with about 429 L of water in all"},
		{"a row of buckets", func(p *plan.Plan) { p.Rows[0].Medium, p.Rows[0].PerPiece = plan.Bucket, 1 }, "Bucket, 15 L", 30,
			"30 buckets in the row, 1 plant to a bucket"},
		{"what fills buckets", func(p *plan.Plan) { p.Rows[0].Medium, p.Rows[0].PerPiece = plan.Bucket, 1 },
			"Coco or other loose medium, 450 L in all", 1, "fills 30 buckets of 15 L; about 240 L of water wets it, and expands it if it comes pressed"},
		{"what fills buckets and a pot", func(p *plan.Plan) {
			p.Rows[0].Medium, p.Rows[0].PerPiece = plan.Bucket, 1
			p.Rows[1].Medium, p.Rows[1].PerPiece, p.Rows[1].Plants = plan.Pot, 1, 1
		}, "Coco or other loose medium, 460 L in all", 1, "fills 30 buckets of 15 L and 1 pot of 10 L; about 245 L of water wets it, and expands it if it comes pressed"},
		{"strawberries need no block", func(p *plan.Plan) { p.Rows[3].Crop = 7 },
			"Block to raise a plant in, about 10 cm (4 in)", 90, "one for each plant of sweet pepper and tomato"},
		{"a large barb", func(p *plan.Plan) { p.Emitters[0].Barb = plan.BarbLarge }, "Punch for emitters with a large barb", 1, ""},
		{"a measured bore", func(p *plan.Plan) { p.Rows[0].Tube, p.Rows[0].Bore = 0, 0.0131 },
			"Hose clamp for tubing of 13.1 mm bore, its outside measured on the barb", 3,
			"one on each barb (adapter 1, end cap 1), and one to spare; a barb that locks with a ring or a nut of its own needs none"},
		{"US units", func(p *plan.Plan) { p.Units = unit.US }, "Opaque tank with a lid, fit for drinking water, 105.7 gal", 1, ""},
	}
	for _, tt := range tests {
		t.Run(tt.what, func(t *testing.T) {
			p := plan.Default()
			tt.change(p)
			lines := Count(layout.New(p), 0, 0)
			l := find(lines, tt.name)
			if l.Count != tt.count || tt.why != "" && l.Why != tt.why {
				t.Errorf("%q: %d, why %q\nwant %d, why %q", tt.name, l.Count, l.Why, tt.count, tt.why)
			}
			if t.Failed() {
				for _, l := range lines {
					t.Log(l.Name, l.Count)
				}
			}
		})
	}
}

// Only a pump needs electricity, only a tap can let feed into drinking water.
func TestSafetyParts(t *testing.T) {
	const (
		outlet   = "Outlet with ground-fault protection (GFCI, or RCD of 30 mA or less)"
		cover    = "Weatherproof cover for plug and timer"
		backflow = "Backflow device"
	)
	for kind, want := range map[int][3]int{
		plan.PumpPoints:  {1, 1, 0},
		plan.PumpTwo:     {1, 1, 0},
		plan.PumpPower:   {1, 1, 0},
		plan.PumpWanted:  {1, 1, 0},
		plan.GravityTank: {0, 0, 0},
		plan.Mains:       {0, 0, 1},
	} {
		p := plan.Default()
		p.Supply.Kind = kind
		lines := Count(layout.New(p), 0, 0)
		for i, name := range []string{outlet, cover, backflow} {
			if l := find(lines, name); l.Count != want[i] || l.Count > 0 && l.Group != Electrics && l.Group != WaterPath {
				t.Errorf("supply %d: %d of %q, want %d", kind, l.Count, name, want[i])
			} else if why := l.Why; name == outlet && l.Count > 0 && (!strings.Contains(why, "reduces the risk") || !strings.Contains(why, "does not remove it") || strings.Contains(why, "can kill")) {
				t.Errorf("supply %d: the outlet promises too much: %q", kind, why)
			}
		}
	}
}

// The gauges that content/guides/filter.md and assembly.md ask for, with ranges
// that gauges are sold in: EN 837-1 lists 0.6, 1, 1.6, 2.5, 4, 6 and 10 bar, and
// EN 837-2 has a steady pressure stay within three quarters of the scale, both
// from memory.
func TestGauges(t *testing.T) {
	tank := func(p *plan.Plan) { p.Supply.Kind = plan.GravityTank }
	tap := func(p *plan.Plan) { p.Supply.Kind, p.Supply.Static = plan.Mains, 4e5 }
	for _, tt := range []struct {
		what    string
		working float64 // Pa
		change  func(*plan.Plan)
		name    string
		count   int
		why     string // how it begins
	}{
		{"a pump and a filter", 2.9e5, func(p *plan.Plan) {}, "Pressure gauge, 0 to 4 bar", 3, "one before the filter, one after it, one at the end of the last row; with every emitter shut it reads at most 3.33 bar"},
		{"beyond three quarters while watering", 3.1e5, func(p *plan.Plan) {}, "Pressure gauge, 0 to 6 bar", 3, "one before"},
		{"no filter", 2.9e5, func(p *plan.Plan) { p.Filter.Present = 0 }, "Pressure gauge, 0 to 4 bar", 2, "one at the supply, one at the end of the last row"},
		{"one line", 2.9e5, func(p *plan.Plan) { p.Header.Layout = plan.OneLine }, "Pressure gauge, 0 to 4 bar", 3, "one before the filter, one after it, one at the end of the line"},
		{"US units", 2.9e5, func(p *plan.Plan) { p.Units = unit.US }, "Pressure gauge, 0 to 60 psi", 3, "one before"},
		{"a tap", 2.5e5, tap, "Pressure gauge, 0 to 4 bar", 3, "one before"},
		// 10.2155 m of water at 20 °C are 1 bar.
		{"a tap above the rows", 2.5e5, func(p *plan.Plan) { tap(p); p.Runs[0].Rise = -10.2155 }, "Pressure gauge, 0 to 6 bar", 3, "one before"},
		{"a regulator", 0.9e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator = 1.5e5 }, "Pressure gauge, 0 to 1.6 bar", 1, "one at the end of the last row; with every emitter shut it reads at most 1.50 bar"},
		{"before a regulator", 0.9e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator = 1.5e5 }, "Pressure gauge, 0 to 6 bar", 2, "one before the filter, one after it, both before the regulator; with every emitter shut it reads at most 4.00 bar"},
		{"a regulator without a filter", 0.9e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator, p.Filter.Present = 1.5e5, 0 }, "Pressure gauge, 0 to 1.6 bar", 2, "one after the regulator, one at the end"},
		{"a regulator that hardly takes any", 2.9e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator = 3.9e5 }, "Pressure gauge, 0 to 6 bar", 2, "one before"},
		{"a hose behind a regulator", 0.1e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator = 0.2e5 }, "Pressure gauge, 0 to 6 bar", 2, "one before"},
		{"and the hose", 0.1e5, func(p *plan.Plan) { tap(p); p.Supply.Regulator = 0.2e5 }, "Clear hose, 2.5 m long", 1, "to hold vertical at the end"},
		{"a high tank", 0.8e5, func(p *plan.Plan) { tank(p); p.Runs[0].Rise = -10 }, "Pressure gauge, 0 to 1.6 bar", 2, "one at the header"},
		{"a tank at the reach of an arm", 0.2e5, func(p *plan.Plan) { tank(p); p.Runs[0].Rise = -2.5 }, "Clear hose, 3 m long", 1, "to hold vertical at the end of the last row"},
		{"a tank just above it", 0.2e5, func(p *plan.Plan) { tank(p); p.Runs[0].Rise = -2.51 }, "Pressure gauge, 0 to 0.6 bar", 2, "one at the header"},
		{"a tank below the rows", 0, func(p *plan.Plan) { tank(p); p.Runs[0].Rise = 0.3 }, "Pressure gauge", 0, ""},
		{"more than any", 30e5, func(p *plan.Plan) { p.Supply.Points[0].Head = 500 }, "Pressure gauge, 0 to 49 bar", 3, "one before"},
		{"power alone", 0, func(p *plan.Plan) { p.Supply.Kind = plan.PumpPower }, "Pressure gauge", 3, "one before the filter, one after it, one at the end of the last row; its scale must reach the pump's shut-off pressure"},
	} {
		p := plan.Default()
		p.Supply.Regulator = 0 // 34 m of water at 20 °C are 998.207 x 9.80665 x 34 Pa
		tt.change(p)
		lines := Count(layout.New(p), tt.working, 3.2e5)
		if l := find(lines, tt.name); l.Count != tt.count || !strings.HasPrefix(l.Why, tt.why) {
			t.Errorf("%s: %d of %s, %q", tt.what, l.Count, tt.name, l.Why)
			for _, l := range lines {
				t.Log(l.Name, l.Count)
			}
		}
	}
}

// A pump that is yet to be bought is on the list by what it has to give; a gauge's
// scale reaches what it may give at the most, and behind a regulator the one ahead of
// it whatever the pump gives.
func TestAPumpToBuy(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.PumpTwo, 0
	p.Supply.ShutOff, p.Supply.MaxFlow = 15, 10/6e4
	buy := &Pump{Least: 12.1, Flow: 4 / 6e4, Most: 25.2}
	lines := CountWith(layout.New(p), 1e5, 0, buy)
	if l := find(lines, "Pump that gives at least 12.1 m at 4.00 L/min"); l.Count != 1 || !strings.HasPrefix(l.Why, "and at most 25.2 m with everything shut") {
		t.Errorf("%d, %q", l.Count, l.Why)
	}
	if l := find(lines, "Pump with the curve of this plan"); l.Count != 0 {
		t.Error("the one that it is worked out with is bought too")
	}
	// 25.2 m are 2.47 bar, more than a gauge of 2.5 bar shows with everything shut, plus what the tubing lies below the water.
	if l := find(lines, "Pressure gauge, 0 to 2.5 bar"); l.Count != 3 || !strings.Contains(l.Why, "it reads at most 2.47 bar") {
		for _, l := range lines {
			t.Log(l.Name, l.Count, l.Why)
		}
		t.Errorf("%d gauges, %q", l.Count, l.Why)
	}
	p.Units, p.Supply.Regulator, buy.Most = unit.US, 1.5e5, 0
	lines = CountWith(layout.New(p), 1e5, 0, buy)
	if l := find(lines, "Pump that gives at least 39.7 ft at 1.06 gal/min"); l.Count != 1 || !strings.HasPrefix(l.Why, "before the regulator") {
		t.Errorf("%d, %q", l.Count, l.Why)
	}
	if l := find(lines, "Pressure gauge"); l.Count != 2 || !strings.Contains(l.Why, "the pump's shut-off pressure") {
		t.Errorf("%d gauges ahead of the regulator, %q", l.Count, l.Why)
	}
}

func BenchmarkCount(b *testing.B) {
	for _, rows := range []int{4, 40} {
		b.Run(strconv.Itoa(rows)+" rows of 100", func(b *testing.B) {
			p := plan.Default()
			p.Rows[0].Plants = 100
			plan.SectionNamed("rows").Resize(p, 1)
			plan.SectionNamed("rows").Resize(p, rows)
			l := layout.New(p)
			b.ReportAllocs()
			for b.Loop() {
				Count(l, 0, 0)
			}
		})
	}
}

// Reference row C17: a vacuum breaker of a hose tap has no shut-off behind it and is under
// pressure for no more than 12 h; and the timer valve does stand before it, so that it is not.
func TestVacuumBreaker(t *testing.T) {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator = plan.Mains, 0
	l := layout.New(p)
	why := find(Count(l, 0, 0), "Backflow device").Why
	for _, want := range []string{"no valve behind it that shuts", "for more than 12 hours"} {
		if !strings.Contains(why, want) {
			t.Errorf("%q is not in %q", want, why)
		}
	}
	timer, breaker := -1, -1
	for i, place := range l.Chains.Supply.Places {
		switch place.Device {
		case chain.TimerValve:
			timer = i
		case chain.Backflow:
			breaker = i
		}
	}
	if !(0 <= timer && timer < breaker) {
		t.Errorf("the timer valve is at %d, the breaker at %d", timer, breaker)
	}
}
