package words

// A Remark is a sentence about something that is named later, such as "{field}
// must be a number, such as 12.5.": who finds the fault does not know where it
// stands. Nil is no remark: all is well.
type Remark struct {
	text Text
	args []string
}

// About returns a remark. The first place of its text is that of the name; the
// arguments fill the others.
func About(t Text, args ...string) *Remark { return &Remark{t, args} }

// Of returns the sentence about what is named.
func (r *Remark) Of(name string) string {
	return Say(r.text, append([]string{name}, r.args...)...)
}

// Within returns a label as it stands within a sentence. English begins it with
// a small letter there, but for an abbreviation, such as UTC. Another language
// keeps it as its list has it: German writes nouns with a capital anywhere.
func Within(label Text, args ...string) string {
	s := Say(label, args...)
	if spoken.Load() != nil || len(s) < 2 || s[0] < 'A' || s[0] > 'Z' || s[1] >= 'A' && s[1] <= 'Z' {
		return s
	}
	return string(s[0]|0x20) + s[1:]
}
