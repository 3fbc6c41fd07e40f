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
	return words.And(parts)
}

// And is [words.And].
func And(parts []string) string { return words.And(parts) }

// Sentences is [words.Sentences].
func Sentences(parts ...string) string { return words.Sentences(parts...) }
