// Package words holds what the program says as whole texts, so that somebody can
// put each into another language.
//
// A text is English and stands where it is used:
//
//	words.Say("Row {row} reaches {far}, and the place ends at {end}.", row, far, end)
//
// The arguments fill the places in the order in which their names first appear.
// A place with forms in it picks one by a number, as the language counts:
//
//	words.Say("{n} {n|plant stays|plants stay} dry.", words.N(n))
//
// Texts are never cut apart or joined: another language puts their parts in
// another order. What fills a place may be a text of its own where it can stand
// in any sentence, such as "row 4, plant 30". The tool in build/texts lists all
// texts, finds what is wrong with their places, and checks other languages'
// lists.
package words

import (
	"strconv"
	"strings"
	"sync/atomic"
)

// A Text is a sentence or a name in English, with its places. Only constants
// become texts: what was typed, or put together, does not stand in any list.
type Text string

// N is a number that fills a place.
func N(n int) string { return strconv.Itoa(n) }

// Say returns a text in the language in use, with its places filled. A place
// that has no argument stays as it is written.
func Say(t Text, args ...string) string {
	english := string(t)
	if strings.IndexByte(english, '{') < 0 {
		return in(english)
	}
	return fill(in(english), english, args)
}

// spoken is the language in use; nil for English.
var spoken atomic.Pointer[Language]

// Use has everything that is said from now on said in a language; nil for
// English. A program speaks one language at a time.
func Use(l *Language) { spoken.Store(l) }

// in is a text in the language in use, its places still open. What is missing
// there stays English.
func in(english string) string {
	if l := spoken.Load(); l != nil {
		if t, ok := l.texts[english]; ok {
			return t
		}
	}
	return english
}

// fill fills the places of a text. Their order is that of their names in the
// English one.
func fill(text, english string, args []string) string {
	var b []byte
	names := Places(english)
	for {
		open := strings.IndexByte(text, '{')
		end := strings.IndexByte(text, '}')
		if open < 0 || end < open {
			return string(append(b, text...))
		}
		b = append(b, text[:open]...)
		name, forms, counted := strings.Cut(text[open+1:end], "|")
		i := indexOf(names, name)
		switch {
		case i < 0 || i >= len(args):
			b = append(b, text[open:end+1]...)
		case counted:
			b = append(b, form(forms, args[i])...)
		default:
			b = append(b, args[i]...)
		}
		text = text[end+1:]
	}
}

func indexOf(names []string, name string) int {
	for i, n := range names {
		if n == name {
			return i
		}
	}
	return -1
}

// Places are the names of a text's places, each once, in the order in which they
// appear.
func Places(text string) []string {
	var names []string
next:
	for {
		open := strings.IndexByte(text, '{')
		if open < 0 {
			return names
		}
		text = text[open+1:]
		end := strings.IndexByte(text, '}')
		if end < 0 {
			return names
		}
		name, _, _ := strings.Cut(text[:end], "|")
		text = text[end+1:]
		for _, n := range names {
			if n == name {
				continue next
			}
		}
		names = append(names, name)
	}
}

// form picks the form for a number, as the language in use counts.
func form(forms, number string) string {
	i := 0
	if l := spoken.Load(); l != nil {
		i = l.counts(number)
	} else {
		i = oneAndMany(number)
	}
	for ; i > 0; i-- {
		_, rest, more := strings.Cut(forms, "|")
		if !more {
			break
		}
		forms = rest
	}
	first, _, _ := strings.Cut(forms, "|")
	return first
}
