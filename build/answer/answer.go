// Package answer writes everything worked out for a plan as JSON, for
// spreadsheets and scripts.
//
// Keys are words in lower case with underscores between them; the names of
// kinds, which stand as text, have hyphens. Every number is in the inner unit of
// the calculation, which the end of its key names: head_m is a head in metres of
// water, flow_m3_s a flow in cubic metres per second, and what ends in _share is
// a fraction of one. The measures of evenness, cu, cv, du, eu and us, are
// fractions of one too. A key without such an end is a count, a cost in the
// currency of the plan's prices, or the number of a run, a row, a plant or a
// zone, all counted from 1; or its unit stands beside it, under unit. A number
// that the plan leaves open is null. The plan itself is a plan file, with its
// own names and units.
package answer

import (
	"encoding/json"
	"math"
	"slices"

	"evenrow/wasm/grower/carry"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/answer"
	"evenrow/wasm/shown/buy"
	"evenrow/wasm/shown/sheet"
	"evenrow/wasm/trade/evenness"
	"evenrow/wasm/works/flush"
	"evenrow/wasm/works/headroom"
	"evenrow/wasm/works/parts"
	"evenrow/wasm/works/startup"
)

// A number is written as null when it is not finite, which JSON cannot hold.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	if math.IsNaN(float64(n)) || math.IsInf(float64(n), 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// A document is the whole answer.
type document struct {
	Answer     string          `json:"answer"` // in the plan's units
	Verdict    string          `json:"verdict"`
	Wanted     *wanted         `json:"pump_wanted"` // null where the plan has a pump, or takes none
	Findings   []finding       `json:"findings"`
	Fixes      []fix           `json:"fixes"`
	LeftOut    []string        `json:"left_out"` // what takes too much work; with "fixes" among it there may be more of them
	RestsOn    *rests          `json:"rests_on"`
	Critical   int             `json:"weakest_zone,omitempty"`
	Unlike     int             `json:"least_alike_zone,omitempty"` // whose plants' flows differ most
	Rows       []rowFare       `json:"rows_of_plants"`
	PerLitre   number          `json:"one_litre_each_s"` // until the last plant has it
	Sameness   string          `json:"sameness"`         // how the water of one plant compares with another's
	Season     *year           `json:"season"`
	Zones      []zone          `json:"zones"`
	Flush      *flushing       `json:"flush"`  // null where no water flows
	Zoning     *zoning         `json:"zoning"` // null where no water flows
	Ring       *loop           `json:"loop"`   // null where a far header makes no sense
	Designs    *search         `json:"designs"`
	Surge      []blow          `json:"surge"`
	Headroom   []room          `json:"headroom"`
	Starts     []start         `json:"starts"`
	Faults     []failing       `json:"faults"`
	Chance     []odds          `json:"chance"`
	Water      []thirst        `json:"water"`         // day by day
	Most       *most           `json:"greatest_need"` // null where nothing is planted
	Timer      []line          `json:"timer"`
	Judged     *judged         `json:"timer_judged"` // null where nothing is set
	Tank       *refill         `json:"tank"`         // null where there is none, or it is not known what is taken from it
	Parts      []part          `json:"parts"`
	Shopping   shopping        `json:"shopping"`
	WorkedPlan json.RawMessage `json:"plan"` // as a plan file, in the plan's units
}

type finding struct {
	Kind    string `json:"kind"`
	Zone    int    `json:"zone,omitempty"` // left out when it concerns all
	Row     int    `json:"row,omitempty"`
	Base    int    `json:"than_row,omitempty"` // the row that it is compared with
	Plant   int    `json:"plant,omitempty"`
	Count   int    `json:"count,omitempty"`
	Value   number `json:"value"`
	Limit   number `json:"limit"`
	Unit    string `json:"unit,omitempty"`     // of value and limit
	AtLeast bool   `json:"at_least,omitempty"` // count may be more, of never-open
	Relief  string `json:"relief,omitempty"`   // what takes pressure off, of over-rating
}

// A wanted is the pump to ask for. Where none will do as the plan stands, the least
// and the flow are what it would take if nothing were too much.
type wanted struct {
	Does   bool   `json:"will_do"`
	Least  number `json:"least_m"`
	Flow   number `json:"flow_m3_s"`
	Most   number `json:"most_shut_m"`
	Behind number `json:"regulator_pa"` // of a regulator behind it; 0 for none
}

func wantedOf(w *sheet.Wanted) *wanted {
	if w == nil {
		return nil
	}
	return &wanted{w.Does, number(w.Least), number(w.Flow), number(w.Most), number(w.Regulator)}
}

type fix struct {
	Kind    string `json:"kind"`
	Solves  bool   `json:"solves"`
	Value   number `json:"value"`
	Unit    string `json:"unit,omitempty"` // of value
	Flow    number `json:"flow_m3_s"`
	Tubing  string `json:"tubing,omitempty"`   // the wider one
	Zones   int    `json:"zones,omitempty"`    // how many
	LikeRow int    `json:"like_row,omitempty"` // whose emitters all plants get
	Most    number `json:"most_shut_m"`        // of a pump or a tap, with everything shut; 0 for no matter
	Behind  number `json:"regulator_pa"`       // of a regulator behind the pump or the tap; 0 for none
	Cost    number `json:"cost_more"`          // of tubing, valves and places at the timer
	Bare    bool   `json:"not_all_priced"`     // it takes something that the plan has no price for
	And     *fix   `json:"and,omitempty"`      // what has to be done besides
	Link    string `json:"link,omitempty"`     // to the changed plan
}

type zone struct {
	Zone        int       `json:"zone"`
	Flow        number    `json:"flow_m3_s"`
	Head        number    `json:"head_m"`
	Margin      number    `json:"margin_m"`
	Fouled      number    `json:"margin_fouled_m"`
	Worst       *place    `json:"worst"`
	Best        *place    `json:"best"`
	Emitters    int       `json:"emitters"`
	Open        int       `json:"emitters_open"`
	Below       int       `json:"emitters_below_range"`
	Above       int       `json:"emitters_above_range"`
	Even        even      `json:"evenness"`        // against what the emitters are made to give
	Alike       even      `json:"plants_evenness"` // of the plants' flows as they are
	Least       number    `json:"least_m3_s"`
	LeadSpeed   number    `json:"supply_line_speed_m_s"`
	HeaderSpeed number    `json:"header_speed_m_s"`
	RowSpeed    number    `json:"row_speed_m_s"`
	Budget      []loss    `json:"budget"`
	Fittings    bool      `json:"hangs_on_fittings"` // they take more than there is beyond the safety margin, or than is missing
	Stretches   []stretch `json:"stretches"`
	Plants      []plant   `json:"plants"`
	Iterations  int       `json:"iterations"`
	Imbalance   number    `json:"imbalance_share"`
}

type place struct {
	Row   int `json:"row"`
	Plant int `json:"plant"`
}

type even struct {
	N    int    `json:"plants"`
	Mean number `json:"mean_m3_s"`
	Low  number `json:"low_quarter_m3_s"`
	CV   number `json:"cv"`
	DU   number `json:"du"`
	CU   number `json:"cu"`
	Us   number `json:"us"`
	EU   number `json:"eu"`
}

type loss struct {
	Kind  string `json:"kind"`
	Index int    `json:"number,omitempty"` // of the run or row
	Head  number `json:"head_m"`
}

type stretch struct {
	Kind   string `json:"kind"`
	Index  int    `json:"number,omitempty"` // run or row; for header pieces the row that it leads to
	Length number `json:"length_m"`
	Flow   number `json:"flow_m3_s"` // into it
	Lost   number `json:"head_lost_m"`
}

type plant struct {
	Row   int    `json:"row"`
	Plant int    `json:"plant"`
	X     number `json:"x_m"`
	Y     number `json:"y_m"`
	Z     number `json:"z_m"`
	Head  number `json:"head_m"` // pressure head at the emitter
	Flow  number `json:"flow_m3_s"`
	Open  bool   `json:"open"`
	State string `json:"state"`
}

// A rowFare is how the plants of a row fare while its zone is watered.
type rowFare struct {
	Row       int    `json:"row"`
	Zone      int    `json:"zone"`
	Plants    int    `json:"plants"`
	Unknown   int    `json:"plants_not_worked_out,omitempty"` // and then nothing of them is known
	Shut      int    `json:"plants_shut"`
	Below     int    `json:"plants_below_range"`
	Within    int    `json:"plants_in_range"`
	Above     int    `json:"plants_above_range"`
	LeastHead number `json:"least_head_m"`
	MeanHead  number `json:"mean_head_m"`
	MostHead  number `json:"most_head_m"`
	LeastFlow number `json:"least_flow_m3_s"`
	MeanFlow  number `json:"mean_flow_m3_s"`
	MostFlow  number `json:"most_flow_m3_s"`
}

type blow struct {
	Tubing   string `json:"tubing"`
	Stretch  string `json:"stretch"` // where it is worst
	Index    int    `json:"number"`  // of the run or row
	Speed    number `json:"speed_m_s"`
	Celerity number `json:"wave_speed_m_s"`
	Rest     number `json:"at_rest_pa"`
	Rise     number `json:"rise_pa"`
	Rated    number `json:"rated_pa"`          // at 20 °C
	Carries  number `json:"carries_in_sun_pa"` // at 50 °C
	Closing  number `json:"least_closing_s"`   // null where the pressure at rest is too much
}

type room struct {
	Of    string `json:"kind"`
	Row   int    `json:"row,omitempty"`
	Yes   number `json:"yes_with"`
	Ended string `json:"ended_by"`
	Ends  number `json:"ended_at"` // not yes, unless ended by what is searched
	Unit  string `json:"unit,omitempty"`
}

type flushing struct {
	Wanted   number     `json:"wanted_speed_m_s"`
	Verdict  string     `json:"verdict"`
	Ends     []end      `json:"ends"` // each opened alone
	Together []together `json:"together"`
}

type end struct {
	Of     string `json:"place"`
	Row    int    `json:"row"` // beside it, of the header
	Zone   int    `json:"zone"`
	Speed  number `json:"speed_m_s"`
	Alone  number `json:"speed_others_shut_m_s"`
	Supply number `json:"supply_flow_m3_s"`
	Shut   int    `json:"emitters_shut"`
}

type together struct {
	Zone int `json:"zone"`
	Ends int `json:"ends"`
	Most int `json:"most_ends"`
}

type part struct {
	Key    string `json:"key"` // by which a plan says something of it
	Group  string `json:"group"`
	Name   string `json:"name"`
	Count  int    `json:"count,omitempty"`
	Spare  int    `json:"spare,omitempty"`
	Length number `json:"length_m,omitempty"`
	Rolls  int    `json:"rolls,omitempty"` // that hold it, each of
	Roll   number `json:"roll_m,omitempty"`
	Why    string `json:"why"`
	Ask    string `json:"ask,omitempty"` // in the plan's units

	// What is bought of it after what one has. The first of a pair is in pieces, the other of
	// what is sold by its length.
	Have       number  `json:"have,omitempty"`
	HaveLength number  `json:"have_m,omitempty"`
	Packs      int     `json:"packs"` // or rolls, or metres or feet
	Pack       number  `json:"pack,omitempty"`
	PackLength number  `json:"pack_m,omitempty"`
	Over       number  `json:"over,omitempty"`
	OverLength number  `json:"over_m,omitempty"`
	Price      *number `json:"price"` // of a pack; null where there is none
	Cost       *number `json:"cost"`
	Invented   bool    `json:"price_invented"`
}

// shopping is what all parts cost together.
type shopping struct {
	Currency string    `json:"currency"`
	Cost     number    `json:"cost"`
	Invented number    `json:"invented_share"`
	Unpriced int       `json:"parts_without_price"`
	Lost     []int     `json:"records_of_no_part"` // of what the plan says, from 1
	Counters []counter `json:"counters"`
}

type counter struct {
	Group string `json:"group"`
	Cost  number `json:"cost"`
}

// shop adds the parts, and what they cost.
func (d *document) shop(s *sheet.Sheet) {
	bought := parts.Shop(s.Parts, s.Plan)
	for i := range bought.Lines {
		b := &bought.Lines[i]
		p := part{Key: b.Key(), Group: groups[b.Group], Name: b.Name, Count: b.Count, Spare: b.Spare, Length: number(b.Length), Rolls: b.Rolls, Roll: number(b.Roll), Why: b.Why, Ask: buy.Ask(s, b.Line),
			Packs: b.Packs, Invented: b.Invented}
		if b.ByLength() {
			p.HaveLength, p.PackLength, p.OverLength = number(b.Have), number(b.Pack), number(b.Over)
		} else {
			p.Have, p.Pack, p.Over = number(b.Have), number(b.Pack), number(b.Over)
		}
		if !b.None {
			price, cost := number(b.Price), number(b.Cost)
			p.Price, p.Cost = &price, &cost
		}
		d.Parts = append(d.Parts, p)
	}
	d.Shopping = shopping{Currency: s.Plan.Prices.Currency, Cost: number(bought.Total), Invented: number(bought.Share()), Unpriced: bought.None, Lost: []int{}, Counters: []counter{}}
	for _, k := range bought.Lost {
		d.Shopping.Lost = append(d.Shopping.Lost, k+1)
	}
	for g, cost := range bought.Groups {
		d.Shopping.Counters = append(d.Shopping.Counters, counter{groups[g], number(cost)})
	}
}

// JSON returns the answer to a checked plan, indented, with a line feed at its
// end.
func JSON(p *plan.Plan) ([]byte, error) { return written(sheet.Work(p)) }

// written is a sheet as JSON.
func written(s *sheet.Sheet) ([]byte, error) {
	p := s.Plan
	round, _ := s.Round()
	d := document{
		Answer:     answer.Announce(s),
		Verdict:    verdicts[s.Verdict],
		Wanted:     wantedOf(s.Wanted),
		Findings:   []finding{},
		Fixes:      []fix{},
		LeftOut:    leftOut(s),
		Zones:      []zone{},
		Surge:      []blow{},
		Headroom:   []room{},
		Parts:      []part{},
		Rows:       []rowFare{},
		PerLitre:   number(round),
		Sameness:   samenesses[s.Sameness],
		WorkedPlan: carry.JSON(p),
	}
	for _, f := range s.Findings {
		k := &sheet.Kinds[f.Kind]
		told := finding{
			Kind: k.Name, Unit: inner[k.Unit], Zone: f.Zone, Row: f.Row + 1, Plant: f.Plant, Count: f.Count,
			Value: number(f.Value), Limit: number(f.Limit),
		}
		switch f.Kind {
		case sheet.Unlike:
			told.Base = f.Base + 1
		case sheet.NeverOpen:
			told.AtLeast = s.MoreShut()
		case sheet.OverRating:
			told.Relief = reliefs[s.Relief()]
		}
		d.Findings = append(d.Findings, told)
	}
	for _, f := range s.Fixes {
		changed := fixOf(&f.Change)
		changed.Solves, changed.Cost, changed.Bare = f.Solves, number(f.Cost), f.Unpriced
		if f.And != nil {
			and := fixOf(f.And)
			and.Solves = f.Solves
			changed.And = &and
		}
		if f.Plan != nil {
			changed.Link = "#" + carry.Link(f.Plan)
		}
		d.Fixes = append(d.Fixes, changed)
	}
	for i := range s.Zones {
		d.Zones = append(d.Zones, zoneOf(s, &s.Zones[i]))
	}
	if s.Critical >= 0 && s.Critical < len(s.Zones) {
		d.Critical = s.Zones[s.Critical].Zone
	}
	if z := s.LeastAlike(); z != nil {
		d.Unlike = z.Zone
	}
	for i := range s.Rows {
		d.Rows = append(d.Rows, rowFareOf(s, i))
	}
	d.RestsOn = restsOf(s)
	d.Flush = flushingOf(s.Flush)
	d.Season = yearOf(p, s.Season)
	d.Starts, d.Faults, d.Chance = startsOf(s.Startup), faultsOf(s), oddsOf(s)
	d.Water, d.Most, d.Timer = thirstOf(s.Demand), mostOf(s), linesOf(s.Shots)
	d.Judged, d.Tank = judgedOf(s.Shots), refillOf(s.Refill())
	d.Zoning, d.Ring, d.Designs = zoningOf(s), loopOf(s.Loop), searchOf(s)
	for i := range s.Surge {
		b := &s.Surge[i]
		st := &s.Layout.Stretches[b.Stretch]
		d.Surge = append(d.Surge, blow{s.Layout.Tubes[st.Tube].Name(p.Units), stretches[st.Kind], st.Index + 1, number(b.Speed), number(b.Celerity),
			number(b.Rest), number(b.Rise), number(b.Rated), number(b.Carries), number(b.Closing)})
	}
	for i := range s.Headroom {
		d.Headroom = append(d.Headroom, roomOf(&s.Headroom[i]))
	}
	d.shop(s)
	text, err := json.MarshalIndent(d, "", "\t")
	return append(text, '\n'), err
}

// leftOut names what was not worked out, or not to its end.
func leftOut(s *sheet.Sheet) []string {
	list := []string{}
	if s.Untried {
		list = append(list, "fixes")
	}
	for which, left := range s.Left {
		// A start without rows is one in which it was given up to follow the water.
		if s.Startup != nil && sheet.Exploration(which) == sheet.Starting {
			left = left || slices.ContainsFunc(s.Startup.Zones, func(z startup.Zone) bool { return len(z.Rows) == 0 })
		}
		if left {
			list = append(list, sheet.Exploration(which).Name())
		}
	}
	return list
}

func fixOf(c *sheet.Change) fix {
	k := &sheet.FixesOf[c.Kind]
	out := fix{Kind: k.Name, Unit: inner[k.Unit], Value: number(c.Value), Flow: number(c.Flow), Most: number(c.Most), Behind: number(c.Regulator)}
	switch k.Index {
	case sheet.OfTube:
		out.Tubing = sizeOf(c.Index)
	case sheet.OfZones:
		out.Zones = c.Index
	case sheet.OfRow:
		out.LikeRow = c.Index + 1
	}
	return out
}

func zoneOf(s *sheet.Sheet, z *sheet.ZoneResult) zone {
	out := zone{
		Zone: z.Zone, Flow: number(z.Flow), Head: number(z.Head), Margin: number(z.Margin), Fouled: number(z.Fouled),
		Worst: placeOf(s, z.Worst), Best: placeOf(s, z.Best),
		Emitters: z.Emitters, Open: z.Open, Below: z.Below, Above: z.Above, Even: evenOf(z.Even), Alike: evenOf(z.Alike), Least: number(z.Least),
		LeadSpeed: number(z.LeadSpeed), HeaderSpeed: number(z.HeaderSpeed), RowSpeed: number(z.RowSpeed),
		Budget: []loss{}, Stretches: []stretch{}, Plants: []plant{},
	}
	for _, l := range z.Budget {
		line := loss{Kind: losses[l.Kind], Head: number(l.Head)}
		if l.Kind == sheet.InRun || l.Kind == sheet.InRow {
			line.Index = l.Index + 1
		}
		out.Budget = append(out.Budget, line)
	}
	_, _, out.Fittings = z.Softest()
	if z.Solution == nil {
		return out
	}
	out.Iterations, out.Imbalance = z.Solution.Iterations, number(z.Solution.Imbalance)
	net := &s.Layout.Network
	for _, st := range s.Layout.Stretches {
		if len(st.Links) == 0 {
			continue
		}
		first, last := st.Links[0], st.Links[len(st.Links)-1]
		out.Stretches = append(out.Stretches, stretch{
			Kind: stretches[st.Kind], Index: st.Index + 1, Length: number(st.Length),
			Flow: number(z.Solution.Flow[first]),
			Lost: number(z.Solution.Head[net.Links[first].From] - z.Solution.Head[net.Links[last].To]),
		})
	}
	for i, p := range s.Layout.Plants {
		if s.Layout.ZoneOf(p.Row) != z.Zone {
			continue
		}
		out.Plants = append(out.Plants, plant{
			Row: p.Row + 1, Plant: p.Number, X: number(p.At.X), Y: number(p.At.Y), Z: number(p.At.Z),
			Head: number(z.Solution.Head[p.Node] - net.Nodes[p.Node].Z),
			Flow: number(z.Solution.Out[p.Node]), Open: z.Solution.Open[p.Node], State: states[s.Plants[i].State],
		})
	}
	return out
}

func rowFareOf(s *sheet.Sheet, row int) rowFare {
	r := &s.Rows[row]
	return rowFare{row + 1, s.Layout.ZoneOf(row), r.Plants, r.In[sheet.Unknown], r.In[sheet.Shut], r.In[sheet.Below], r.In[sheet.Within], r.In[sheet.Above],
		number(r.LeastHead), number(r.MeanHead), number(r.MostHead), number(r.LeastFlow), number(r.MeanFlow), number(r.MostFlow)}
}

func flushingOf(f *flush.Flush) *flushing {
	if f == nil {
		return nil
	}
	out := &flushing{Wanted: flush.Wanted, Verdict: flushed[f.Verdict], Ends: []end{}, Together: []together{}}
	for _, e := range f.Ends {
		out.Ends = append(out.Ends, end{ends[e.Place], e.Row + 1, e.Zone, number(e.Speed), number(e.Alone), number(e.Flow), e.Shut})
	}
	for _, z := range f.Zones {
		out.Together = append(out.Together, together(z))
	}
	return out
}

func roomOf(r *headroom.Room) room {
	k := rooms[r.Kind]
	fails := headroom.Room{Kind: r.Kind, Most: r.Fails}
	out := room{Of: k.name, Unit: k.unit, Yes: number(r.Value()), Ends: number(fails.Value())}
	if r.Kind == headroom.InRow {
		out.Row = r.Row + 1
	}
	switch r.Why.Limit {
	case headroom.Refused:
		out.Ended = "form"
	case headroom.Enough:
		out.Ended = "search"
	default:
		out.Ended = "other"
		if k, ok := sheet.EndedBy(r.Why); ok {
			out.Ended = sheet.Kinds[k].Name
		}
	}
	return out
}

func placeOf(s *sheet.Sheet, index int) *place {
	if index < 0 || index >= len(s.Layout.Plants) {
		return nil
	}
	p := s.Layout.Plants[index]
	return &place{p.Row + 1, p.Number}
}

func evenOf(e evenness.Evenness) even {
	return even{e.N, number(e.Mean), number(e.Low), number(e.CV), number(e.DU), number(e.CU), number(e.Us), number(e.EU)}
}
