package words

import (
	"strconv"
	"strings"
)

// A Language is the texts of another language and the way it counts.
type Language struct {
	texts  map[string]string
	counts func(number string) int // which form goes with a number, from 0
}

// ways of counting, by name: which form of a text goes with a number. They are
// those of Unicode's plural rules (CLDR) for whole numbers, the languages named
// as examples.
var ways = map[string]func(string) int{
	"one":          func(string) int { return 0 }, // Japanese, Turkish after a number
	"one many":     oneAndMany,                    // English, German
	"none many":    noneAndMany,                   // French: 0 counts as one
	"one few many": oneFewMany,                    // Polish
}

// Ways names how a language can count, and how many forms it then has.
func Ways() map[string]int {
	names := map[string]int{}
	for name := range ways {
		names[name] = strings.Count(name, " ") + 1
	}
	return names
}

func oneAndMany(number string) int {
	if number == "1" {
		return 0
	}
	return 1
}

func noneAndMany(number string) int {
	if number == "0" || number == "1" {
		return 0
	}
	return 1
}

func oneFewMany(number string) int {
	n, err := strconv.Atoi(number)
	switch tens := n / 10 % 10; {
	case err != nil:
		return 2
	case n == 1:
		return 0
	case n%10 >= 2 && n%10 <= 4 && tens != 1:
		return 1
	}
	return 2
}

// Read reads a list of texts: a first line "counts: " and a way of counting, then
// for each text the English and the other language's, a line each, and an empty
// line before each pair.
func Read(list string) (l *Language, problem string) {
	lines := strings.Split(strings.TrimSuffix(strings.ReplaceAll(list, "\r\n", "\n"), "\n"), "\n")
	way, ok := strings.CutPrefix(lines[0], "counts: ")
	if l = (&Language{map[string]string{}, ways[way]}); !ok || l.counts == nil {
		return nil, "The first line of a list says how the language counts."
	}
	for i := 1; i < len(lines); i += 3 {
		if lines[i] != "" || i+2 >= len(lines) || lines[i+1] == "" || lines[i+2] == "" {
			return nil, "Line " + strconv.Itoa(i+1) + " of the list: an empty line, the English text and the other language's are wanted."
		}
		l.texts[lines[i+1]] = lines[i+2]
	}
	return l, ""
}
