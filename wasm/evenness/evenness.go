// Package evenness measures how alike the flows of a set of emitters are.
package evenness

// An Evenness holds the usual measures, as fractions of one.
type Evenness struct {
	N    int
	Mean float64 // m³/s
	Low  float64 // mean of the lowest quarter
	CV   float64 // sample standard deviation over mean
	DU   float64 // low-quarter distribution uniformity
	CU   float64 // Christiansen's coefficient
	Us   float64 // statistical uniformity, 1 - CV
	EU   float64 // design emission uniformity with manufacturing variation
}
