package unit

// Capital returns s with its first letter, if it is one of a to z, in upper
// case, as a sentence or a label begins.
func Capital(s string) string { return first(s, 'a', 'z') }

// Uncapital returns s with its first letter, if it is one of A to Z, in lower
// case, as it stands within a sentence.
func Uncapital(s string) string { return first(s, 'A', 'Z') }

// first changes the case of the first letter if it is from a to z.
func first(s string, a, z byte) string {
	if s == "" || s[0] < a || s[0] > z {
		return s
	}
	return string(rune(s[0]^0x20)) + s[1:]
}
