package block

// A Fragment is the content of one place on the page.
type Fragment struct {
	ID   string // of the element whose content it is
	HTML string
}
