package sheet

// An EnoughKind is what the search for the fewest zones comes to.
type EnoughKind uint8

const (
	OneAlone    EnoughKind = iota // no valve can shut off a row alone, and one zone is enough
	NoneAlone                     // no valve can shut off a row alone, and one zone is not enough
	TooLarge                      // the plan is too large to try more zones than were tried, which are not enough
	OneRow                        // one row cannot be split, and one zone is not enough
	NoneEnough                    // no number of zones is enough by itself
	FewerDo                       // the answer is Yes, and it is with fewer zones too
	Regroup                       // as many zones as there are would do, with other rows in each
	OthersDo                      // with another number of zones the answer is Yes, and with no fewer
	OneDoes                       // there is one zone, which is enough
	AllNeeded                     // with fewer zones than there are the answer is not Yes
	EnoughKinds = iota            // how many there are
)

// An Enough is how many zones a plan needs, beside how many it has.
type Enough struct {
	Kind     EnoughKind
	Together bool // OthersDo and AllNeeded: fewer zones were tried in several ways, but only of rows that stand together
	Crops    bool // FewerDo: rows have different crops, a reason to keep the zones that the water does not need
}

// Enough returns what the search for the fewest zones comes to. Zoning must have
// been looked for and found.
func (s *Sheet) Enough() Enough {
	z, now := s.Zoning, len(s.Zones)
	// Fewer zones than two are one, which leaves no choice of rows.
	const choice = 3
	switch {
	case z.Alone && z.Fewest == 1:
		return Enough{Kind: OneAlone}
	case z.Alone:
		return Enough{Kind: NoneAlone}
	case z.Fewest == 0 && z.Large:
		return Enough{Kind: TooLarge}
	case z.Fewest == 0 && z.Tried == 1:
		return Enough{Kind: OneRow}
	case z.Fewest == 0:
		return Enough{Kind: NoneEnough}
	case z.Plan != nil && s.Verdict == Yes:
		return Enough{Kind: FewerDo, Crops: s.cropsDiffer()}
	case z.Plan != nil && z.Fewest == now:
		return Enough{Kind: Regroup}
	case z.Plan != nil:
		return Enough{Kind: OthersDo, Together: z.Fewest >= choice}
	case now == 1:
		return Enough{Kind: OneDoes}
	}
	return Enough{Kind: AllNeeded, Together: now >= choice}
}

// cropsDiffer says whether rows have different crops.
func (s *Sheet) cropsDiffer() bool {
	for i := range s.Plan.Rows {
		if s.Plan.Rows[i].Crop != s.Plan.Rows[0].Crop {
			return true
		}
	}
	return false
}
