package parts

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/ground/unit"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/works/layout"
)

// plans are enough that every item is on a list, and every one that not all plans
// need is missing from one.
func plans() map[string]*plan.Plan {
	with := func(change func(p *plan.Plan)) *plan.Plan {
		p := plan.Default()
		change(p)
		return p
	}
	return map[string]*plan.Plan{
		"a pump": plan.Default(),
		"a tap":  with(func(p *plan.Plan) { p.Supply.Kind = plan.Mains }),
		"a tank a little higher, buckets of strawberries": with(func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Regulator, p.Runs[0].Rise, p.Filter.Present = plan.GravityTank, 0, -1.6, 0
			for i := range p.Rows {
				p.Rows[i].Medium, p.Rows[i].Crop = plan.Bucket, 7
			}
		}),
		"a tank high up, filled by a float valve, micro tubing": with(func(p *plan.Plan) {
			p.Supply.Kind, p.Runs[0].Rise, p.Supply.Fill, p.Emitters[0].Micro = plan.GravityTank, -6, plan.FilledByFloat, 0.4
		}),
		"a pump with a tapered thread": with(func(p *plan.Plan) { p.Ends.Out[plan.AtOutlet] = 25 }),
		"nothing to clamp": with(func(p *plan.Plan) {
			p.Supply.Regulator = 0
			p.Filter.Present = 0
			p.Header.Layout = plan.OneLine
			p.Rows[0].Tube = 3
			p.Rows = p.Rows[:1] // no plan may have rows of pipe; the count does not care
		}),
	}
}

func TestEveryItemIsOnAListAndMissingFromOne(t *testing.T) {
	// Nobody builds without these.
	always := map[Item]bool{ATube: true, AJoint: true, AConnector: true, AnEmitter: true, AStake: true, AHolePlug: true,
		AMedium: true, ASowingPlug: true, ADrainTray: true, ADrainCan: true, AnECMeter: true, APHMeter: true, AnECFluid: true, APHFluid: true,
		APunch: true, ACutter: true, AThreadTape: true, ATapeMeasure: true, AMarker: true, ATestCups: true, AMeasuringJug: true, AKitchenTimer: true}
	on, off := map[Item]string{}, map[Item]string{}
	for name, p := range plans() {
		has := map[Item]bool{}
		for _, n := range Count(layout.New(p), 0, 0) {
			has[n.Item] = true
		}
		for item := range Item(Items) {
			if has[item] {
				on[item] = name
			} else {
				off[item] = name
			}
		}
	}
	for item := range Item(Items) {
		if on[item] == "" {
			t.Errorf("%s is on no list", Kinds[item].Key)
		}
		if (off[item] == "") != always[item] {
			t.Errorf("%s is missing from %q", Kinds[item].Key, off[item])
		}
	}
}

// Reference row C13: 3 in of pipe take 6 in, 3/8 in take 1 in, above the flood rim.
func TestAirGap(t *testing.T) {
	const inch = 0.0254
	for bore, want := range map[float64]float64{3 * inch: 6 * inch, 3.0 / 8 * inch: inch, 0.5 * inch: inch, 0.015: 0.030} {
		if got := AirGap(bore); math.Abs(got-want) > 1e-12 {
			t.Errorf("a pipe of %g mm: %g mm, want %g", 1000*bore, 1000*got, 1000*want)
		}
	}
}

// What a tank is, stands on and is filled by: present and absent.
func TestTank(t *testing.T) {
	for _, tt := range []struct {
		what   string
		change func(*plan.Plan)
		item   Item
		name   string // empty where there is none
		why    string // in it
	}{
		{"by hand", func(p *plan.Plan) {}, AFloatValve, "", ""},
		{"by a float valve", func(p *plan.Plan) { p.Supply.Fill = plan.FilledByFloat }, AFloatValve,
			"Float valve for the tank, fit for drinking water, and a holder that keeps its outlet 30.0 mm above the rim", "here 15.0 mm, and never less than 25.4 mm"},
		{"by one, in inches", func(p *plan.Plan) { p.Supply.Fill, p.Units = plan.FilledByFloat, unit.US }, AFloatValve,
			"Float valve for the tank, fit for drinking water, and a holder that keeps its outlet 1.000 in above the rim", "here 0.500 in, and never less than 1.000 in"},
		{"a tap has no tank to fill", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Fill = plan.Mains, plan.FilledByFloat }, AFloatValve, "", ""},
		{"a tap has no tank", func(p *plan.Plan) { p.Supply.Kind = plan.Mains }, ATankStand, "", ""},
		{"on the ground", func(p *plan.Plan) { p.Supply.Tank = 0.2 }, ATankStand, "Level base for the tank, for 200 kg and the tank", "firm level ground"},
		{"up high", func(p *plan.Plan) { p.Supply.Kind, p.Supply.Tank = plan.GravityTank, 0.06 }, ATankStand, "Level stand that carries 60 kg and the tank", "can kill"},
		// 53 US gallons of 231 cubic inches at 62.3 pounds a cubic foot (20 °C) are 441.4 pounds.
		{"up high, in pounds", func(p *plan.Plan) {
			p.Supply.Kind, p.Supply.Tank, p.Units = plan.GravityTank, 53*3.785411784e-3, unit.US
		}, ATankStand, "Level stand that carries 442 lb and the tank", "442 lb is the water"},
	} {
		p := plan.Default()
		tt.change(p)
		var got Line
		for _, n := range Count(layout.New(p), 0, 0) {
			if n.Item == tt.item {
				got = n
			}
		}
		if got.Name != tt.name || !strings.Contains(got.Why, tt.why) || tt.name != "" && got.Count != 1 {
			t.Errorf("%s: %+v", tt.what, got)
		}
	}
}

// Micro tubing, by hand: of two kinds of emitters one stands at the plants.
func TestMicroTubing(t *testing.T) {
	p := plan.Default()
	plan.SectionNamed("emitters").Resize(p, 2)
	p.Emitters[1].Micro = 0.5
	p.Rows[3].Emitter, p.Rows[3].PerPlant = 1, 2
	lines := Count(layout.New(p), 0, 0)
	for _, want := range []Line{
		{Item: AMicroTubing, Name: "Micro tubing, opaque, fit for drinking water, 4.0 mm bore or a little more", Length: 30,
			Why: "0.5 m at each of 60 emitters; what it takes is not counted, for it is at most 2 % of the emitter's lowest pressure"},
		{Item: AMicroConnector, Name: "Barbed connector from the tubing to micro tubing", Count: 63, Spare: 3},
		{Item: AStake, Size: "plant", Name: "Stake to hold an emitter at its plant", Count: 60},
		{Item: AStake, Name: "Stake to hold the tubing", Count: 90},
	} {
		got := find(lines, want.Name)
		if got.Item != want.Item || got.Size != want.Size || got.Count != want.Count || got.Spare != want.Spare || !near(got.Length, want.Length) || want.Why != "" && got.Why != want.Why {
			t.Errorf("%+v\nwant %+v", got, want)
		}
	}
}

// What feed touches on its way says that it is opaque, or fit for food.
func TestWhatTouchesFeedSaysSo(t *testing.T) {
	for name, p := range plans() {
		for _, n := range Count(layout.New(p), 0, 0) {
			switch n.Item {
			case ATube, AMicroTubing, ATank, AFilter, ADrainTray, ADrainCan:
				if said := n.Name + " " + n.Why; !strings.Contains(said, "opaque") && !strings.Contains(said, "Opaque") {
					t.Errorf("%s: %s does not say that it is opaque", name, n.Name)
				}
			}
			switch n.Item {
			case ATube, AMicroTubing, ATank, ADrainTray, ADrainCan, AFloatValve, AMeasuringJug:
				if said := n.Name + " " + n.Why; !strings.Contains(said, "drinking water") && !strings.Contains(said, "fit for food") {
					t.Errorf("%s: %s does not say what it is fit for", name, n.Name)
				}
			}
		}
	}
}
