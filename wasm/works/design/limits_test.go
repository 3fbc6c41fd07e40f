package design

import (
	"math"
	"slices"
	"testing"

	"evenrow/wasm/grower/plan"
	"evenrow/wasm/trade/pump"
	"evenrow/wasm/trade/water"
	"evenrow/wasm/works/network"
)

// A bench is a search whose zones, lead, header and rows are made by hand: two
// zones that need 10 m and 11 m at the feed, a lead that loses 2 m and 3 m, and
// 4 m and 5 m with a dirty filter.
type bench struct {
	s     *search
	zones []zone
	lead  lead
	head  header
	field field
}

func newBench() *bench {
	p := plan.Default()
	p.Supply.Kind, p.Supply.Regulator, p.Supply.ShutOff, p.Supply.MaxFlow = plan.PumpTwo, 0, 20, 2e-3
	p.Limits.Reserve, p.Limits.Evenness, p.Limits.Speed = 1, 0.9, 1.5
	s := newSearch(p, split, nil)
	s.mine, s.rests = level(13), [2]float64{13, 13}
	s.tree, s.fouling, s.flush = true, 0, false
	return &bench{
		s: s,
		zones: []zone{
			{flow: 1e-4, needs: 9, air: 3, top: 14, speed: 1, even: 0.95},
			{flow: 2e-4, needs: 8, air: 4, top: 15, speed: 0.5, even: 0.92},
		},
		lead:  lead{loss: []float64{2, 3}, fouled: []float64{4, 5}, lifts: []float64{1, 2}, dirty: -1, still: 30},
		head:  header{still: 31},
		field: field{still: 32},
	}
}

// A cut is a level whose curve ends.
type cut struct {
	level
	last float64
}

func (c cut) LastFlow() float64 { return c.last }

// lasting is a link that loses a head at any flow.
func lasting(head float64) *network.Drag {
	return network.NewDrag(network.Link{Law: lasts(head)}, water.At(20))
}

type lasts float64

func (l lasts) Loss(float64) (loss, slope float64) { return float64(l), 0 }

// Each limit is broken just beyond its border, by any zone, and by nothing else.
func TestLimitsAtTheirBorders(t *testing.T) {
	const eps = near / 100
	var c pump.Curve
	var rests [2]float64
	for _, v := range []struct {
		name   string
		change func(b *bench)
		want   Limit
	}{
		{"as it is", func(b *bench) {}, 0},
		{"just enough for emitters, by what a root may be off", func(b *bench) { b.zones[0].needs = 10 + 2*near - eps }, 0},
		{"too little for emitters", func(b *bench) { b.zones[0].needs = 10 + 2*near + eps }, Reach},
		{"too little for those of another zone", func(b *bench) { b.zones[1].needs = 9 + 2*near + eps }, Reach},
		{"just enough for a header without air", func(b *bench) { b.zones[0].air = 11 + 2*near - eps }, 0},
		{"a header that draws air", func(b *bench) { b.zones[0].air = 11 + 2*near + eps }, Reach},
		{"just enough for runs without air", func(b *bench) { b.lead.lifts[1] = 10 + 2*near - eps }, 0},
		{"runs that draw air", func(b *bench) { b.lead.lifts[1] = 10 + 2*near + eps }, Reach},
		{"a flow where the curve ends", func(b *bench) { c = cut{13, 2e-4} }, 0},
		{"a flow beyond the curve", func(b *bench) { c = cut{13, 1.99e-4} }, Reach},
		{"at the top of the range", func(b *bench) { b.zones[0].top = 11 }, 0},
		{"above the range", func(b *bench) { b.zones[0].top = 11 - eps }, Above},
		{"above the range in another zone", func(b *bench) { b.zones[1].top = 10 - eps }, Above},
		{"as fast as may be in the header", func(b *bench) { b.zones[1].speed = 1.5 }, 0},
		{"too fast in the header", func(b *bench) { b.zones[1].speed = 1.5 + eps }, Fast},
		{"as even as was asked for", func(b *bench) { b.zones[0].even = 0.9 }, 0},
		{"not as even", func(b *bench) { b.zones[0].even = 0.9 - eps }, Uneven},
		{"not too fast in a run", func(b *bench) { b.lead.bores = []float64{0.014, 0.02} }, 0},
		{"too fast in a run", func(b *bench) { b.lead.bores = []float64{0.02, 0.013} }, Fast}, // 2e-4 m³/s through 0.0133 m are 1.5 m/s
		{"what the lead carries", func(b *bench) { rests[0] = 30 }, 0},
		{"more than the lead carries", func(b *bench) { rests[0] = 30 + eps }, Rating},
		{"what the header carries", func(b *bench) { rests[1] = 31 }, 0},
		{"more than the header carries", func(b *bench) { rests[1] = 31 + eps }, Rating},
		{"more than the rows carry", func(b *bench) { b.head.still, rests[1] = 33, 32+eps }, Rating},
		{"more than rows carry, before a regulator", func(b *bench) { b.lead.still, rests[0] = 40, 35 }, 0},
		{"a filter that is due", func(b *bench) { b.s.fouling, b.zones[0].needs, b.zones[1].needs = 1, 9+2*near-eps, 8 }, 0},
		{"one too dirty", func(b *bench) { b.s.fouling, b.zones[0].needs, b.zones[1].needs = 1, 9+2*near+eps, 8 }, Reach},
		{"one too dirty for another zone", func(b *bench) { b.s.fouling, b.zones[1].needs = 1, 8+2*near+eps }, Reach},
		{"one too dirty, with every other limit", func(b *bench) {
			b.s.fouling, b.zones[0].needs, b.zones[0].top, b.zones[0].speed, b.zones[0].even, rests[0] = 1, 9+3*near, 5, 9, 0.1, 99
		}, Reach | Above | Fast | Uneven | Rating},
		{"ends that flush", func(b *bench) { b.flushes(gush{13, 1e-4}) }, 0},
		{"ends that do not", func(b *bench) { b.flushes(gush{13 + eps, 1e-4}) }, Dirty},
		{"some that do not", func(b *bench) { b.flushes(gush{12, 1e-4}, gush{14, 2e-4}, gush{11, 3e-4}) }, Dirty},
		{"ends that flush with a clean filter", func(b *bench) {
			b.flushes(gush{12 - eps, 1e-4})
			b.lead.links, b.lead.tubes, b.lead.dirty = []*network.Drag{lasting(1)}, []bool{false}, 0
			b.lead.filter = lasting(3)
		}, 0},
		{"ends that nobody flushes", func(b *bench) { b.flushes(gush{14, 1e-4}); b.s.flush = false }, 0},
	} {
		b := newBench()
		c, rests = level(13), [2]float64{13, 13}
		v.change(b)
		if got := b.s.breaks(b.zones, &b.lead, c, rests, &b.head, &b.field); got != v.want {
			t.Errorf("%s: %06b is broken, want %06b", v.name, got, v.want)
		}
	}
}

// flushes has a row for each gush, all beside the feed.
func (b *bench) flushes(list ...gush) {
	b.s.flush = true
	b.head.leadsTo = slices.Repeat([]int{-1}, len(list))
	for _, g := range list {
		b.field.rows = append(b.field.rows, row{flush: g})
	}
}

// Of rows that take the same flow to be flushed only the one that takes most
// head is kept, wherever it stands.
func TestGushesKeepTheMost(t *testing.T) {
	b := newBench()
	b.flushes(gush{5, 1e-4}, gush{3, 2e-4}, gush{7, 1e-4}, gush{6, 1e-4}, gush{2, 2e-4})
	want := []gush{{7, 1e-4}, {3, 2e-4}}
	if got := b.s.gushes(&b.head, &b.field); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	// Each field has its own, in whatever order they are asked for.
	other := field{place: 2, rows: []row{{flush: gush{1, 3e-4}}}}
	if got := b.s.gushes(&b.head, &other); !slices.Equal(got, []gush{{1, 3e-4}}) {
		t.Errorf("another field takes %v", got)
	}
	b.field.rows = nil // it is not worked out again
	if got := b.s.gushes(&b.head, &b.field); !slices.Equal(got, want) {
		t.Errorf("asked again: %v, want %v", got, want)
	}
	between := field{place: 1, rows: []row{{flush: gush{2, 4e-4}}}}
	if got := b.s.gushes(&b.head, &between); !slices.Equal(got, []gush{{2, 4e-4}}) {
		t.Errorf("a field between takes %v", got)
	}
}

// A candidate takes the most head and the most flow of all zones, clean and with
// a filter that is due; it serves if it breaks nothing with that, and the plan's
// own supply carries it if it breaks nothing with this.
func TestJudgeByHand(t *testing.T) {
	carried := func(b *bench) { b.s.mine, b.s.rests = level(14), [2]float64{14, 14} }
	for _, v := range []struct {
		name       string
		change     func(b *bench)
		head, flow float64
		serves     bool
		own        bool
		fails      Limit
	}{
		{"too much for its supply", func(b *bench) { b.s.mine = level(11.9) }, 12, 2e-4, true, false, 0},
		{"its supply is enough for one zone", func(b *bench) { b.lead.loss[1], b.zones[0].top, b.s.mine = 5, 20, level(13) }, 14, 2e-4, true, false, 0},
		{"its supply is enough", carried, 12, 2e-4, true, true, 0},
		{"the flow of a zone that needs less head", func(b *bench) { b.zones[0].flow = 3e-4 }, 12, 3e-4, true, true, 0},
		{"a filter that is due", func(b *bench) { b.s.fouling = 1; carried(b) }, 13, 2e-4, true, true, 0},
		{"a filter that is due, and too much for its supply", func(b *bench) { b.s.fouling, b.s.mine = 1, level(12.5) }, 13, 2e-4, true, false, 0},
		{"a filter that takes less than the reserve", func(b *bench) { b.s.fouling, b.lead.fouled = 1, []float64{2.5, 3.5}; carried(b) }, 12, 2e-4, true, true, 0},
		{"an uneven zone", func(b *bench) { b.zones[0].even = 0.5; carried(b) }, 12, 2e-4, false, false, Uneven},
		{"a zone above its range with the plan's supply alone", func(b *bench) { b.zones[1].top = 10; carried(b) }, 12, 2e-4, true, false, 0},
		{"more than the form takes", func(b *bench) { b.lead.loss[0] = 1000 }, 1010, 2e-4, false, false, Reach},
		{"a supply that nobody knows", func(b *bench) { b.s.mine = nil }, 12, 2e-4, true, false, 0},
	} {
		b := newBench()
		v.change(b)
		c := found{cost: 7}
		b.s.judge(&c, b.zones, &b.lead, &b.head, &b.field)
		power := 9.80665 * b.s.water.Density * v.head * v.flow
		// The power is a product of what is given here exactly.
		if math.Abs(c.head-v.head) > 1e-9 || c.flow != v.flow || math.Abs(c.power-power) > 1e-9*power || c.effort != c.power {
			t.Errorf("%s: %g m at %g m³/s are %g W, want %g, %g and %g", v.name, c.head, c.flow, c.power, v.head, v.flow, power)
		}
		if serves := len(b.s.front) == 1; serves != v.serves {
			t.Errorf("%s: it serves: %t", v.name, serves)
		}
		if own := b.s.own != nil; own != v.own || own && !b.s.own.own {
			t.Errorf("%s: its own supply serves: %t", v.name, own)
		}
		if v.serves && (b.s.fails != ^Limit(0) || b.s.front[0].own) || !v.serves && b.s.fails != v.fails {
			t.Errorf("%s: %06b fails, want %06b", v.name, b.s.fails, v.fails)
		}
		if b.s.r.Solved != 1 || b.s.r.Pruned != 0 {
			t.Errorf("%s: %+v", v.name, b.s.r)
		}
	}
}

// What costs more and takes more than what is known is not looked at; but what
// takes more is if the plan's own supply may carry it, and costs less than what
// it is known to carry.
func TestJudgePassesOverWhatIsBeaten(t *testing.T) {
	same := newBench().s.effort(12, 2e-4)
	for _, v := range []struct {
		name           string
		cost           float64
		front, own     *found
		mine           float64
		pruned, better bool
	}{
		{"nothing known", 7, nil, nil, 14, false, true},
		{"beaten, and not carried", 7, &found{cost: 6, effort: 0.01}, nil, 10, true, false},
		{"beaten, and may be carried", 7, &found{cost: 6, effort: 0.01}, nil, 14, false, true},
		{"beaten, and what is carried costs less", 7, &found{cost: 6, effort: 0.01}, &found{cost: 6.5}, 14, true, false},
		{"beaten, and what is carried costs more", 7, &found{cost: 6, effort: 0.01}, &found{cost: 7.5}, 14, false, true},
		{"beaten, and what is carried costs as much and takes less", 7, &found{cost: 6, effort: 0.01}, &found{cost: 7, effort: 1}, 14, true, false},
		{"beaten, and what is carried costs as much and takes more", 7, &found{cost: 6, effort: 0.01}, &found{cost: 7, effort: 1000}, 14, false, true},
		{"beaten, and what is carried costs and takes as much", 7, &found{cost: 6, effort: 0.01}, &found{cost: 7, effort: same}, 14, true, false},
		{"not beaten, and what is carried costs less", 5, &found{cost: 6, effort: 0.01}, &found{cost: 4}, 14, false, false},
	} {
		b := newBench()
		b.s.mine, b.s.rests = level(v.mine), [2]float64{v.mine, v.mine}
		if v.front != nil {
			b.s.front = []*found{v.front}
		}
		b.s.own = v.own
		c := found{cost: v.cost}
		b.s.judge(&c, b.zones, &b.lead, &b.head, &b.field)
		if pruned := b.s.r.Pruned == 1; pruned != v.pruned || b.s.r.Solved+b.s.r.Pruned != 1 {
			t.Errorf("%s: passed over: %t, %+v", v.name, pruned, b.s.r)
		}
		if better := b.s.own != v.own; better != v.better {
			t.Errorf("%s: the best that is carried is another: %t", v.name, better)
		}
	}
	// A supply must carry every zone, not the last alone.
	b := newBench()
	b.s.front, b.s.mine, b.zones[0].needs = []*found{{cost: 6, effort: 0.01}}, level(12.5), 10
	if b.s.judge(&found{cost: 7}, b.zones, &b.lead, &b.head, &b.field); b.s.r.Pruned != 1 {
		t.Errorf("a supply that carries one zone of two: %+v", b.s.r)
	}
}

// A tank that stands high enough takes nothing, and less the higher it stands.
func TestJudgeOfATank(t *testing.T) {
	b := newBench()
	b.s.gravity, b.s.p.Supply.Kind, b.s.mine = true, plan.GravityTank, level(0)
	b.s.rests = [2]float64{}
	for i := range b.zones {
		b.zones[i].needs, b.zones[i].air, b.zones[i].top = -18, -20, 5
	}
	b.lead.lifts = []float64{-20, -20}
	c := found{cost: 7}
	b.s.judge(&c, b.zones, &b.lead, &b.head, &b.field)
	if math.Abs(c.head+14) > 1e-9 || c.effort != c.head || c.power != 0 || b.s.own == nil || len(b.s.front) != 1 {
		t.Errorf("%+v, %+v", c, b.s.r)
	}
}

// What flows follow is worked out at the head where the zone meets the supply,
// and one that does not give what the zone needs does not meet it.
func TestOperatesByHand(t *testing.T) {
	const eps = near / 10
	for _, v := range []struct {
		name string
		loose,
		tree bool
		needs, gives float64
		head         float64
		ok           bool
	}{
		{"fixed flows in sums", false, true, 5, 13, 11, true},
		{"fixed flows", false, false, 5, 13, 13, true},
		{"fixed flows, too little", false, true, 15, 13, 11, true}, // as it is: breaks looks at what it needs
		{"flows that follow", true, false, 5, 13, 13, true},
		{"just enough", true, false, 12, 13 - 2*near + eps, 13, true},
		{"too little", true, false, 12, 13 - 2*near - eps, 0, false},
		{"too little, below the level", true, false, -8, -7.5, 0, false},
		{"nothing is enough", true, false, 200, 300, 0, false},
	} {
		b := newBench()
		b.s.tree = v.tree
		z := zone{flow: 1e-4, needs: v.needs}
		if v.loose {
			z = zone{loose: linear(v.needs)}
		}
		head, flow, ok := b.s.operates(&z, &b.lead, 0, level(v.gives))
		if want := 1e-4; ok != v.ok || math.Abs(head-v.head) > 3*near || ok && flow != want || !ok && flow != 0 {
			t.Errorf("%s: %g m at %g m³/s, %t, want %g, %t", v.name, head, flow, ok, v.head, v.ok)
		}
		got := b.s.breaks([]zone{z}, &b.lead, level(v.gives), [2]float64{}, &b.head, &b.field)
		if enough := v.ok && v.head > v.needs+1-3*near; (got&Reach == 0) != enough {
			t.Errorf("%s: %06b is broken", v.name, got)
		}
	}
}

// linear is a zone of one flow that needs a head.
type linear float64

func (l linear) at(float64) *zone {
	return &zone{flow: 1e-4, needs: float64(l), air: math.Inf(-1), top: math.Inf(1), even: 1}
}

func (l linear) lowest() float64 { return float64(l) - 2 }

// A zone that no head serves is out of reach, and so is what has it.
func TestJudgeOutOfReach(t *testing.T) {
	b := newBench()
	b.zones[1] = zone{loose: never{}}
	b.s.front, b.s.mine = []*found{{cost: 6, effort: 0.01}}, nil // which would beat it
	b.s.judge(&found{cost: 7}, b.zones, &b.lead, &b.head, &b.field)
	if b.s.r.Solved != 1 || b.s.fails != Reach || b.s.r.Failures[0] != 1 || len(b.s.front) != 1 {
		t.Errorf("%+v, %06b fails", b.s.r, b.s.fails)
	}
	if got := b.s.breaks(b.zones, &b.lead, level(100), [2]float64{}, &b.head, &b.field); got&Reach == 0 {
		t.Errorf("%06b is broken with a supply of 100 m", got)
	}
	if head, flow, ok := b.s.least(&b.zones[1], &b.lead, 1, false, 1); head != 0 || flow != 0 || ok {
		t.Errorf("it needs %g m at %g m³/s, %t", head, flow, ok)
	}
	if b.s.stillCarries(&b.zones[1], &b.lead, 1, level(100)) {
		t.Error("it is carried with a dirty filter")
	}
}

// never is a zone that always lacks 1 m.
type never struct{}

func (never) at(head float64) *zone {
	return &zone{flow: 1e-4, needs: head + 1, air: math.Inf(-1), top: math.Inf(1)}
}

func (never) lowest() float64 { return 3 }

// More than the strongest pump that a plan may hold gives is not looked for.
func TestMostHeadIsTheMost(t *testing.T) {
	if most := plan.FieldNamed("supply", "shut-off").Max; MostHead != most {
		t.Errorf("%d m are asked of a supply, and the form takes %g", MostHead, most)
	}
	for needs, want := range map[float64]bool{149.5: true, 150.5: false} {
		z := zone{loose: linear(needs)}
		if head, _, ok := z.least(0); ok != want || ok && math.Abs(head-needs) > near {
			t.Errorf("a zone that needs %g m: %g, %t", needs, head, ok)
		}
	}
}

// What fails is counted by limit, and what all fail is to blame.
func TestFail(t *testing.T) {
	s := newSearch(plan.Default(), split, nil)
	for _, why := range []Limit{Fast | Uneven | Dirty, Fast | Dirty | Reach, Fast | Dirty} {
		s.fail(why)
	}
	if want := [Limits]int{1, 3, 1, 0, 0, 3, 0}; s.r.Failures != want || s.fails != Fast|Dirty {
		t.Errorf("%v, %06b, want %v and %06b", s.r.Failures, s.fails, want, Fast|Dirty)
	}
}

// The plan's supply carries a head at a flow that its curve gives and reaches.
func TestCarries(t *testing.T) {
	b := newBench()
	b.s.mine = cut{13, 2e-4}
	for _, c := range []struct {
		head, flow float64
		want       bool
	}{{13, 2e-4, true}, {13 + 1.9*near, 1e-4, true}, {13 + 2.1*near, 1e-4, false}, {10, 2.01e-4, false}, {14, 3e-4, false}} {
		if got := b.s.carries(c.head, c.flow); got != c.want {
			t.Errorf("%g m at %g m³/s are carried: %t", c.head, c.flow, got)
		}
	}
	b.s.mine = nil
	if b.s.carries(1, 1e-6) {
		t.Error("a supply that nobody knows carries something")
	}
}

// Pumps are compared by the power of their water, tanks by how high they stand.
func TestEffort(t *testing.T) {
	b := newBench()
	if got, want := b.s.effort(5, 1e-3), 9.80665*b.s.water.Density*5e-3; math.Abs(got-want) > 1e-9 {
		t.Errorf("%g W, want %g", got, want)
	}
	if got := b.s.effort(-5, 1e-3); got != 0 {
		t.Errorf("water that falls by itself takes %g W", got)
	}
	b.s.gravity = true
	if got := b.s.effort(-5, 1e-3); got != -5 {
		t.Errorf("a tank of 5 m too much is to be raised by %g m", got)
	}
}
