package compile

import "slices"

// firstSlot is the place of a program's first function in its table of
// functions, which is also how the runtime numbers it (cmd/link/internal/wasm).
const firstSlot = 0x1000

// A dispatch is the head of a function as Go compiles it
// (cmd/internal/obj/wasm). A goroutine that waits leaves all its functions, and
// later enters each of them where it was: what a function does is cut into
// parts, each but the first behind the end of a block, and the number in local 0
// says through a table which part is next.
//
//	block                    ; the way out: it leaves 1
//	  loop
//	    block ... block      ; one for each part
//	      local.get 0
//	      br_table ...
//	    end
//	    the first part
//	    end
//	    the second part ...
//	  end
//	  unreachable
//	end
//	i32.const 1
//
// The way out and the loop are missing where nothing uses them.
type dispatch struct {
	at    int   // the table
	exit  int   // the block that is the way out, or -1
	loop  int   // or -1
	parts []int // for each number the block whose end it leads to; the last for all that are larger
}

// dispatchOf finds the head of a function. ok is false where there is none, or
// something in the function is not as Go compiles it.
func dispatchOf(code []instruction) (d dispatch, ok bool) {
	d = dispatch{exit: -1, loop: -1}
	if len(code) < 4 || !is(code[0], opGlobalGet, 0) || !is(code[1], opLocalSet, 1) { // the stack pointer
		return d, false
	}
	var open []int
	for d.at = 2; d.at < len(code) && (code[d.at].op == opBlock || code[d.at].op == opLoop); d.at++ {
		if code[d.at].op == opLoop {
			if d.loop >= 0 || len(open) > 1 {
				return d, false
			}
			d.loop = d.at
		}
		open = append(open, d.at)
	}
	if !is(code[d.at], opLocalGet, 0) || code[d.at+1].op != opBrTable {
		return d, false
	}
	d.at++
	for _, label := range code[d.at].labels() {
		if label >= uint64(len(open)) {
			return d, false
		}
		d.parts = append(d.parts, open[len(open)-1-int(label)])
	}
	if end := len(code) - 3; code[end].op == opEnd && is(code[end+1], opI32Const, 1) && open[0] != d.loop && !slices.Contains(d.parts, open[0]) {
		d.exit = open[0]
	}
	return d, d.sane(code)
}

// sane reports whether the number in local 0 is used for nothing but the table
// and is set before it is read.
func (d dispatch) sane(code []instruction) bool {
	w := walk{code: code}
	for k, i := range code {
		w.step(k)
		switch {
		case k > d.at && (i.op == opBlock || i.op == opLoop || i.op == opElse || i.op == opBrTable || i.op == opLocalTee && i.arg == 0):
			return false
		case k != d.at-1 && is(i, opLocalGet, 0) && !(is(code[k-1], opI32Const, 0) && is(code[k-2], opLocalSet, 0)):
			return false
		case (i.op == opBr || i.op == opBrIf) && d.loop >= 0 && w.label(i.arg) == d.loop && !(i.op == opBr && is(code[k-1], opLocalSet, 0) && code[k-2].op == opI32Const):
			return false
		}
	}
	return true
}

// is reports whether an instruction is that one with that number.
func is(i instruction, op byte, arg uint64) bool { return i.op == op && i.arg == arg }

// A walk knows, while it goes over the code, which blocks are open.
type walk struct {
	code []instruction
	open []int // where each begins, the innermost last
}

// step goes over the instruction at k.
func (w *walk) step(k int) {
	switch w.code[k].op {
	case opBlock, opLoop, opIf:
		w.open = append(w.open, k)
	case opEnd:
		w.open = w.open[:max(0, len(w.open)-1)] // the last ends the function
	}
}

// label is where the block begins that a label leads out of, or -1 for the
// function itself.
func (w *walk) label(depth uint64) int {
	if depth >= uint64(len(w.open)) {
		return -1
	}
	return w.open[len(w.open)-1-int(depth)]
}

// depth is the label of a block, or -1 when it is not open.
func (w *walk) depth(block int) int {
	at := slices.Index(w.open, block)
	if at < 0 {
		return -1
	}
	return len(w.open) - 1 - at
}
