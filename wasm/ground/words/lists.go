package words

// And lists what is named: "a", "a and b", "a, b and c".
func And(parts []string) string {
	last := len(parts) - 1
	if last < 1 {
		return List(parts...)
	}
	return Say("{these} and {last}", List(parts[:last]...), parts[last])
}

// List lists what stands side by side: "a, b, c".
func List(parts ...string) string {
	return joined("{these}, {next}", parts)
}

// Notes lists what is noted one after the other: "a; b; c".
func Notes(parts ...string) string {
	return joined("{these}; {next}", parts)
}

// Sentences puts sentences one after the other; empty ones are left out.
func Sentences(parts ...string) string {
	return joined("{these} {next}", parts)
}

// joined joins what is not empty by a text of two places.
func joined(by Text, parts []string) string {
	all := ""
	for _, p := range parts {
		switch {
		case all == "":
			all = p
		case p != "":
			all = Say(by, all, p)
		}
	}
	return all
}
