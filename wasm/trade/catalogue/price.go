package catalogue

// Prices holds what a metre of each of [Tubes] costs, in no currency, for
// comparing sizes with one another: invented figures that rise with the bore as
// those of shops do. Common practice, no source; growers type their own.
var Prices = [...]float64{
	Custom: 0.50,
	// 16 and 20 mm drip tubing, then PE pipe of 25 to 50 mm
	0.35, 0.55, 0.90, 1.40, 2.20, 3.40,
	// 1/2 in, five bores, then 3/4 and 1 in drip tubing
	0.36, 0.40, 0.42, 0.44, 0.46, 0.80, 1.20,
	// PE pipe of 3/4, 1 and 1-1/4 in
	0.95, 1.30, 2.10,
}
