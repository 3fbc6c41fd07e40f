package texts

import (
	"slices"
	"strconv"
	"strings"

	"evenrow/wasm/ground/words"
)

// List is a list for another language, its second lines to be written: what a
// translator is given.
func (p *Program) List(counts string) string {
	var b strings.Builder
	b.WriteString("counts: " + counts + "\n")
	for _, t := range p.Unique() {
		b.WriteString("\n" + t + "\n" + t + "\n")
	}
	return b.String()
}

// Check says what is wrong with a list: texts that it lacks, or has and the
// program does not, places that are not the English ones', and forms too few or
// too many.
func (p *Program) Check(list string) []string {
	if _, problem := words.Read(list); problem != "" {
		return []string{problem}
	}
	lines := strings.Split(strings.TrimSuffix(strings.ReplaceAll(list, "\r\n", "\n"), "\n"), "\n")
	forms := words.Ways()[strings.TrimPrefix(lines[0], "counts: ")]
	var problems []string
	there := map[string]bool{}
	said := p.Unique()
	for i := 2; i+1 < len(lines); i += 3 {
		at := "line " + strconv.Itoa(i+1) + ": "
		english, other := lines[i], lines[i+1]
		switch {
		case there[english]:
			problems = append(problems, at+"it stands twice: "+english)
		case !slices.Contains(said, english):
			problems = append(problems, at+"the program does not say this: "+english)
		}
		there[english] = true
		want, got := words.Places(english), words.Places(other)
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(want, got) {
			problems = append(problems, at+"the places are {"+strings.Join(want, "}, {")+"}: "+other)
		}
		for _, counted := range strings.Split(other, "{")[1:] {
			inside, _, _ := strings.Cut(counted, "}")
			if n := strings.Count(inside, "|"); n > 0 && n != forms {
				problems = append(problems, at+"the language has "+strconv.Itoa(forms)+" forms: {"+inside+"}")
			}
		}
	}
	for _, t := range said {
		if !there[t] {
			problems = append(problems, "it lacks: "+t)
		}
	}
	return problems
}

// The marks that stand around each text of the pseudo-language.
const (
	Begin = "⟦"
	End   = "⟧"
)

// accented is each letter as the pseudo-language writes it: still to be read,
// and nothing else on a page has it.
var accented = strings.NewReplacer(
	"a", "á", "b", "ƀ", "c", "ç", "d", "ð", "e", "é", "f", "ƒ", "g", "ğ", "h", "ĥ", "i", "í", "j", "ĵ", "k", "ķ", "l", "ĺ", "m", "ɱ",
	"n", "ñ", "o", "ö", "p", "þ", "q", "ɋ", "r", "ŕ", "s", "š", "t", "ţ", "u", "ú", "v", "ṽ", "w", "ŵ", "x", "ẋ", "y", "ý", "z", "ž",
	"A", "Á", "B", "Ɓ", "C", "Ç", "D", "Ð", "E", "É", "F", "Ƒ", "G", "Ğ", "H", "Ĥ", "I", "Í", "J", "Ĵ", "K", "Ķ", "L", "Ĺ", "M", "Ṁ",
	"N", "Ñ", "O", "Ö", "P", "Þ", "Q", "Ɋ", "R", "Ŕ", "S", "Š", "T", "Ţ", "U", "Ú", "V", "Ṽ", "W", "Ŵ", "X", "Ẋ", "Y", "Ý", "Z", "Ž",
)

// Pseudo is a list of a language that nobody speaks: each text between two
// marks, accented, and longer by a third, as texts in German or Finnish are. With
// it, what stands on the page without marks is outside of every list, and what
// has no room for other languages runs over.
func (p *Program) Pseudo() string {
	var b strings.Builder
	b.WriteString("counts: one many\n")
	for _, t := range p.Unique() {
		b.WriteString("\n" + t + "\n" + pseudo(t) + "\n")
	}
	return b.String()
}

func pseudo(text string) string {
	var b strings.Builder
	b.WriteString(Begin)
	rest, letters := text, 0
	for rest != "" {
		open, end := strings.IndexByte(rest, '{'), strings.IndexByte(rest, '}')
		if open < 0 || end < open {
			open, end = len(rest), len(rest)-1
		}
		b.WriteString(accented.Replace(rest[:open]))
		letters += open
		if open < len(rest) {
			name, forms, counted := strings.Cut(rest[open+1:end], "|")
			if counted {
				forms = "|" + accented.Replace(forms)
			}
			b.WriteString("{" + name + forms + "}")
		}
		rest = rest[min(len(rest), end+1):]
	}
	for n := 0; n < (letters+2)/3; n += 5 {
		b.WriteString(" ~~~~"[:min(5, (letters+2)/3-n+1)])
	}
	b.WriteString(End)
	return b.String()
}
