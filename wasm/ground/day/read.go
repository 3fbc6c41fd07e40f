package day

import "evenrow/wasm/ground/words"

// Near returns the day of a month and a day of the month, in whatever year it
// is nearest to a given day, and false where no year has it.
func Near(month, dom int, to Day) (Day, bool) {
	if month < 1 || month > 12 || dom < 1 || dom > InMonth(2000, month) {
		return 0, false
	}
	best := Day(0)
	found := false
	for y := to.Year() - 8; y <= to.Year()+8; y++ { // 29 February may be eight years off
		if dom > InMonth(y, month) {
			continue
		}
		if d := Of(y, month, dom); !found || apart(d, to) < apart(best, to) {
			best, found = d, true
		}
	}
	return best, true
}

func apart(a, b Day) Day { return max(a-b, b-a) }

// Read returns the day that people write: "2027-07-15", "15.7.", "15.7.27",
// "15/7/2027", "15 July", "Jul 15, 2027", with the name of the day of the week
// or without. Of two numbers with a stroke the first is the month when
// monthFirst is true, else the day, unless only the other way there is such a
// date. A date without a year is the one nearest to near. It reports false for
// what it cannot read and for dates that do not exist.
func Read(text string, monthFirst bool, near Day) (Day, bool) {
	var n, long [3]int // numbers, and how many digits they have
	count, month := 0, 0
	stroke := false
	for i := 0; i < len(text); {
		start := i
		switch c := text[i]; {
		case c >= '0' && c <= '9':
			for i < len(text) && text[i] >= '0' && text[i] <= '9' {
				i++
			}
			if count == 3 || i-start > 4 {
				return 0, false
			}
			n[count], _ = digits(text[start:i])
			long[count] = i - start
			count++
			if i+1 < len(text) {
				switch text[i : i+2] {
				case "st", "nd", "rd", "th":
					i += 2
				}
			}
		case letter(c):
			for i < len(text) && letter(text[i]) {
				i++
			}
			word := text[start:i]
			if m := named(word, months[:]); m >= 0 && month == 0 {
				month = m + 1
				continue
			}
			if named(word, weekdays[:]) < 0 {
				return 0, false
			}
		case c == ' ' || c == '.' || c == ',' || c == '/' || c == '-':
			stroke = stroke || c == '/' || c == '-'
			i++
		default:
			return 0, false
		}
	}
	need := 2
	if month > 0 {
		need = 1
	}
	hasYear := count == need+1
	if count != need && !hasYear {
		return 0, false
	}
	year := n[need]
	switch {
	case !hasYear:
	case long[0] == 4: // as in ISO 8601
		year = n[0]
		n[0], n[1] = n[1], n[2]
		monthFirst, stroke = true, true
	case long[need] == 2:
		year += 2000
	case long[need] != 4:
		return 0, false
	}
	dom := n[0]
	if month == 0 {
		month = n[1]
		if monthFirst && stroke {
			month, dom = dom, month
		}
		if month > 12 {
			month, dom = dom, month
		}
	}
	if !hasYear {
		return Near(month, dom, near)
	}
	if month < 1 || month > 12 || dom < 1 || dom > InMonth(year, month) {
		return 0, false
	}
	return Of(year, month, dom), true
}

// letter says whether a byte belongs to a word: those of letters that are not in
// ASCII do too.
func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c >= 0x80 }

// named returns which of the names a word is the whole or the beginning of, in
// English or in the language in use, of three letters at least; -1 for none.
func named(word string, names []words.Text) int {
	for i, name := range names {
		if begins(word, string(name)) || begins(word, words.Say(name)) {
			return i
		}
	}
	return -1
}

// begins says whether a word of three letters or more is the beginning of a
// name, whatever the case of letters from a to z.
func begins(word, name string) bool {
	if len(word) < 3 || len(word) > len(name) {
		return false
	}
	for k := range len(word) {
		if word[k]|0x20 != name[k]|0x20 {
			return false
		}
	}
	return true
}
