package page

import "evenrow/wasm/ground/words"

// Speak has everything that follows said in the language of a list of texts, in
// the form that [words.Read] takes. A list that cannot be read changes nothing;
// Announce then says why.
func Speak(list string) Reply {
	l, problem := words.Read(list)
	if problem == "" {
		words.Use(l)
	}
	return Reply{Announce: problem}
}
