package numeric

// Sort puts n things in order, given which of two comes first and how to swap
// them. Things that are alike may change places.
//
// It is a heap sort. The sorts of the standard library are compiled anew for
// every type, at some 10 kB of program each.
func Sort(n int, less func(i, j int) bool, swap func(i, j int)) {
	for i := n/2 - 1; i >= 0; i-- {
		sink(i, n, less, swap)
	}
	for i := n - 1; i > 0; i-- {
		swap(0, i)
		sink(0, i, less, swap)
	}
}

// sink moves the thing at i down until both below it come before it.
func sink(i, n int, less func(i, j int) bool, swap func(i, j int)) {
	for {
		child := 2*i + 1
		if child >= n {
			return
		}
		if child+1 < n && less(child, child+1) {
			child++
		}
		if !less(i, child) {
			return
		}
		swap(i, child)
		i = child
	}
}
