package layout

import "evenrow/wasm/grower/plan"

// A Joint is one fitting, or several alike in one stretch.
type Joint struct {
	Kind    JointKind
	N       int    // how many
	Node    int    // where it stands; for fittings within a run, the run's end
	Stretch int    // index into Layout.Stretches
	Ends    [3]int // tubing that it holds, as indices into Layout.Tubes: the straight way in and out, then the branch; NoTube for none
}

// Barbs returns how many ends of tubing the fittings hold here, all N
// together. The outlet of a RunTee that leads out of the plan is not
// among them.
func (j *Joint) Barbs() int {
	n := 0
	for _, t := range j.Ends {
		if t != NoTube {
			n++
		}
	}
	return n * j.N
}

// Stub is the length in m of the short pieces of header tubing that belong to
// no stretch, because their water stands still or their loss is not worth
// counting: from the last tee to the cap at a closed end of the header, and
// from a HeaderJoiner to row 1's tee. It is long enough to fold the open end
// into a can when flushing (common practice, no source).
const Stub = plan.Tail

// Stub returns the tubing of which a piece of length Stub stands at the joint,
// or NoTube.
func (j *Joint) Stub() int {
	switch j.Kind {
	case HeaderCap:
		return j.Ends[0]
	case HeaderJoiner:
		return j.Ends[1]
	}
	return NoTube
}

// joint notes n fittings at a node, in the stretch that was begun last.
func (l *Layout) joint(kind JointKind, n, node int, in, out, branch int) {
	if n > 0 {
		l.Joints = append(l.Joints, Joint{kind, n, node, len(l.Stretches) - 1, [3]int{in, out, branch}})
	}
}
