package compile

import "slices"

// withOwnNumber returns a function that knows the upper part of the addresses
// that calls in it return to, its own number, from a local. Go pushes
// the whole address for each call:
//
//	i64.const 0x12340007     becomes     local.get 2 i64.const 7 i64.add
//
// It is 32 kB less to download, since the bytes of the number stand in
// each function once. The locals of Go follow behind the new one.
func withOwnNumber(slot int, locals []group, code []instruction) ([]group, []instruction) {
	if _, ok := dispatchOf(code); !ok || len(locals) == 0 || locals[0] != (group{1, typeI32}) {
		return locals, code
	}
	out := []instruction{constant(opI64Const, uint64(slot)<<16), with(opLocalSet, 2)}
	returns := 0
	for k, i := range code {
		switch {
		case opLocalGet <= i.op && i.op <= opLocalTee && i.arg >= 2:
			out = append(out, with(i.op, i.arg+1))
		case pushesReturn(code, k, slot):
			out = append(out, with(opLocalGet, 2), constant(opI64Const, i.arg&0xffff), plain(opI64Add))
			returns++
		default:
			out = append(out, i)
		}
	}
	if returns == 0 {
		return locals, code
	}
	if len(locals) > 1 && locals[1].kind == typeI64 {
		locals = slices.Clone(locals)
		locals[1].count++
	} else {
		locals = slices.Insert(slices.Clone(locals), 1, group{1, typeI64})
	}
	return locals, out
}

// pushesReturn reports whether the constant at k is an address in this
// function and goes to the top of the stack, which has just been moved for it.
func pushesReturn(code []instruction, k, slot int) bool {
	return k >= 6 && k+1 < len(code) && code[k].op == opI64Const && code[k].arg>>16 == uint64(slot) &&
		is(code[k-5], opI32Const, 8) && code[k-4].op == opI32Sub && is(code[k-3], opLocalTee, 1) && is(code[k-2], opGlobalSet, 0) &&
		is(code[k-1], opLocalGet, 1) && code[k+1].op == opI64Store && slices.Equal(code[k+1].raw[1:], []byte{3, 0})
}
