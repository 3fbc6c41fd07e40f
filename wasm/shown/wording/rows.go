package wording

import (
	"evenrow/wasm/ground/words"
)

// Rows names rows, from their indices, which rise: "row 3", "rows 1 and 2",
// "rows 1 to 3 and 5".
func Rows(rows []int) string {
	if len(rows) == 0 {
		return words.Say("no row")
	}
	return words.Say("{n|row|rows} {list}", words.N(len(rows)), numbers(rows))
}

// RowsBegin is [Rows] at the beginning of a sentence.
func RowsBegin(rows []int) string {
	if len(rows) == 0 {
		return words.Say("No row")
	}
	return words.Say("{n|Row|Rows} {list}", words.N(len(rows)), numbers(rows))
}

// numbers lists rows without the word: of three and more in line the first and
// the last.
func numbers(rows []int) string {
	var parts []string
	for i := 0; i < len(rows); {
		k := i
		for k+1 < len(rows) && rows[k+1] == rows[k]+1 {
			k++
		}
		first, last := words.N(rows[i]+1), words.N(rows[k]+1)
		switch k {
		case i:
			parts = append(parts, first)
		case i + 1:
			parts = append(parts, first, last)
		default:
			parts = append(parts, words.Say("{first} to {last}", first, last))
		}
		i = k + 1
	}
	return And(parts)
}

// And lists what is named: "a", "a and b", "a, b and c".
func And(parts []string) string {
	if len(parts) == 0 {
		return ""
	}
	list := parts[0]
	for i, p := range parts[1:] {
		if i == len(parts)-2 {
			list = words.Say("{these} and {last}", list, p)
		} else {
			list = words.Say("{these}, {next}", list, p)
		}
	}
	return list
}
