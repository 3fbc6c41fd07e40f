package parts

import "evenrow/wasm/works/layout"

// A Site is a part of the waterworks that is built by itself.
type Site uint8

const (
	Leading Site   = iota // the supply line, from the supply to the header
	Heading               // the header and its tees
	Rowing                // the rows
	Ending                // ends that stay open until they are flushed
	Sites   = iota        // how many there are
)

// sites says where joints of each kind stand.
var sites = [layout.JointKinds]Site{
	layout.Adapter:      Leading,
	layout.Joiner:       Leading,
	layout.HeaderJoiner: Heading,
	layout.RunElbow:     Leading,
	layout.RunTee:       Leading,
	layout.BallValve:    Leading,
	layout.CheckValve:   Leading,
	layout.EntryTee:     Heading,
	layout.RowTee:       Heading,
	layout.HeaderCap:    Ending,
	layout.ZoneValve:    Rowing,
	layout.TurnElbow:    Rowing,
	layout.RowCap:       Ending,
	layout.FarTee:       Heading,
}

// siteOf says where tubing of each use lies.
var siteOf = [uses]Site{inLead: Leading, inHeader: Heading, inStubs: Heading, inRows: Rowing, inTurns: Rowing, inFar: Heading}

// site says where a joint stands; a joiner in the tubing that it joins.
func (c *count) site(j *layout.Joint) Site {
	if j.Kind == layout.Joiner {
		return siteOf[use(c.Stretches[j.Stretch].Kind)]
	}
	return sites[j.Kind]
}
