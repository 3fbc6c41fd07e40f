package compile

import (
	"slices"
	"testing"
)

// threeParts is a function of three parts that Go could have compiled: the first
// calls function 9 and jumps to the third unless it is over; the second jumps
// back to the first; the third returns.
func threeParts() []byte {
	return slices.Concat(
		[]byte{opGlobalGet, 0, opLocalSet, 1},
		[]byte{opBlock, noValue, opLoop, noValue, opBlock, noValue, opBlock, noValue, opBlock, noValue},
		[]byte{opLocalGet, 0, opBrTable, 3, 0, 0, 1, 2, opEnd},
		[]byte{opI32Const, 0, opCall, 9, opBrIf, 3},
		[]byte{opLocalGet, 2, opIf, noValue, opI32Const, 3, opLocalSet, 0, opBr, 3, opEnd, opEnd},
		[]byte{opI32Const, 0, opLocalSet, 0, opBr, 1, opEnd},
		[]byte{opI32Const, 0, opReturn, opEnd, opUnreachable, opEnd, opI32Const, 1, opEnd},
	)
}

func parsed(t *testing.T, code []byte) []instruction {
	t.Helper()
	list, err := instructions(code)
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func written(code []instruction) (out []byte) {
	for _, i := range code {
		out = append(out, i.raw...)
	}
	return out
}

func TestWithoutJumps(t *testing.T) {
	want := slices.Concat(threeParts()[:29], []byte{opLocalGet, 2, opBrIf, 1, opEnd}, threeParts()[41:])
	if got := written(withoutJumps(parsed(t, threeParts()))); !slices.Equal(got, want) {
		t.Errorf("% x, want\n% x", got, want)
	}
	// A jump that stands alone, and one to a number that is too large for the table.
	alone := slices.Concat(threeParts()[:29], []byte{opI32Const, 9, opLocalSet, 0, opBr, 2, opEnd}, threeParts()[41:])
	want = slices.Concat(threeParts()[:29], []byte{opBr, 1, opEnd}, threeParts()[41:])
	if got := written(withoutJumps(parsed(t, alone))); !slices.Equal(got, want) {
		t.Errorf("% x, want\n% x", got, want)
	}
}

func TestWithoutExit(t *testing.T) {
	want := slices.Concat(threeParts()[:4], threeParts()[6:27],
		[]byte{opIf, noValue, opI32Const, 1, opReturn, opEnd}, threeParts()[29:53], []byte{opI32Const, 1, opEnd})
	if got := written(withoutExit(parsed(t, threeParts()))); !slices.Equal(got, want) {
		t.Errorf("% x, want\n% x", got, want)
	}
}

// A function in which anything is not as Go compiles it is left as it is.
func TestOtherFunctionsAreLeftAlone(t *testing.T) {
	for name, change := range map[string]func(code []byte){
		"no stack pointer":            func(code []byte) { code[1] = 1 },
		"another table":               func(code []byte) { code[15] = 2 },
		"a number that is read again": func(code []byte) { code[30] = 0 },
		"round without a number":      func(code []byte) { code[28] = 2 },
		"another loop":                func(code []byte) { code[31] = opLoop },
		"a table out of the function": func(code []byte) { code[21] = 9 },
	} {
		code := threeParts()
		change(code)
		list := parsed(t, code)
		got := written(withoutExit(withoutJumps(list)))
		if !slices.Equal(got, code) {
			t.Errorf("%s: % x becomes\n% x", name, code, got)
		}
		if _, got := withOwnNumber(firstSlot, []group{{1, typeI32}}, list); !slices.Equal(written(got), code) {
			t.Errorf("%s: % x becomes\n% x", name, code, written(got))
		}
	}
}

func TestWithOwnNumber(t *testing.T) {
	push := func(address ...byte) []byte {
		return slices.Concat(
			[]byte{opLocalGet, 1, opI32Const, 8, opI32Sub, opLocalTee, 1, opGlobalSet, 0, opLocalGet, 1},
			address, []byte{opI64Store, 3, 0})
	}
	head, tail := threeParts()[:23], threeParts()[23:]
	code := slices.Concat(head, push(opI64Const, 7|0x80, 0x80, 0x84, 0x80, 1), push(opI64Const, 7|0x80, 0x80, 0x88, 0x80, 1), tail)
	want := slices.Concat([]byte{opI64Const, 0x80, 0x80, 0x84, 0x80, 1, opLocalSet, 2}, head,
		push(opLocalGet, 2, opI64Const, 7, opI64Add), push(opI64Const, 7|0x80, 0x80, 0x88, 0x80, 1), tail)
	want[len(want)-len(tail)+7] = 3 // what was local 2
	for _, c := range []struct{ before, after []group }{
		{[]group{{1, typeI32}}, []group{{1, typeI32}, {1, typeI64}}},
		{[]group{{1, typeI32}, {4, typeI64}}, []group{{1, typeI32}, {5, typeI64}}},
		{[]group{{1, typeI32}, {4, 0x7c}}, []group{{1, typeI32}, {1, typeI64}, {4, 0x7c}}},
	} {
		locals, got := withOwnNumber(firstSlot+1, c.before, parsed(t, code))
		if !slices.Equal(locals, c.after) || !slices.Equal(written(got), want) {
			t.Errorf("%v % x, want\n%v % x", locals, written(got), c.after, want)
		}
	}
	// Without a call there is nothing to know.
	if locals, got := withOwnNumber(firstSlot, []group{{1, typeI32}}, parsed(t, threeParts())); len(locals) != 1 || !slices.Equal(written(got), threeParts()) {
		t.Errorf("%v % x", locals, written(got))
	}
}

func TestBrokenCodeIsRefused(t *testing.T) {
	for _, code := range [][]byte{{0x06}, {opI32Const}, {opI64Const, 0x80}, {opBrTable, 200, 1, 0}, {0xfc, 8}, {0x44, 1, 2}} {
		if _, err := instructions(code); err == nil {
			t.Errorf("% x is taken", code)
		}
	}
	same := func(_ int, l []group, c []instruction) ([]group, []instruction) { return l, c }
	whole := []byte{1, 4, 1, 2, typeI64, opEnd}
	if got, err := shorterCode(whole, same); err != nil || !slices.Equal(got, whole) {
		t.Errorf("% x, %v", got, err)
	}
	for n := range whole {
		if _, err := shorterCode(whole[:n], same); err == nil {
			t.Errorf("% x is taken", whole[:n])
		}
	}
	if _, err := shorterCode(append(whole, 0), same); err == nil {
		t.Error("more than its functions is taken")
	}
}
