package design

import "evenrow/wasm/works/limit"

// The limits that a candidate can fail as the bits of a set, for the tables here.
type Limit = limit.Set

const (
	Reach  Limit = 1 << limit.Reach
	Fast   Limit = 1 << limit.Speed
	Uneven Limit = 1 << limit.Evenness
	Above  Limit = 1 << limit.Range
	Rating Limit = 1 << limit.Rating
	Dirty  Limit = 1 << limit.Flushing
	Limits       = limit.Limits
)
