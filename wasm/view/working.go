package view

// working opens the main figures to their formulas.
func (sc *scene) working() {}
