package compile

// Places among the programs of a function, and among its data
// (internal/abi.PCDATA_UnsafePoint and FUNCDATA_ArgInfo).
const (
	unsafeProgram = 0
	argumentsData = 5
)

// none as an offset stands for no data; for a program it is 0.
const none = 1<<32 - 1

// withoutArguments takes away, in place, what says where the arguments of each
// function lie. Only the text of a stack trace is made from it: it shows
// "view.(...)" where it showed "view.(0x1, 0x2)".
func (t functions) withoutArguments() {
	for _, r := range t.records {
		if int(t.table[r+dataField]) > argumentsData {
			t.setOffset(r+recordSize+4*(t.offset(r+countField)+argumentsData), none)
		}
	}
}

// withoutUnsafePoints takes away, in place, the programs that say at which
// instructions a function must not be interrupted by a signal: WebAssembly has
// none.
func (t functions) withoutUnsafePoints() {
	for _, r := range t.records {
		if t.offset(r+countField) > unsafeProgram {
			t.setOffset(r+recordSize+4*unsafeProgram, 0)
		}
	}
}
