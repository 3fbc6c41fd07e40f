package check

import (
	"evenrow/wasm/ground/source"
	"evenrow/wasm/ground/unit"
)

// Units of FAO-56, in inner units.
const (
	megajoule = 1e6    // per m² a day
	mmDay     = 1e-3   // a day
	hour      = 3600.0 // s
)

// fao is a place in FAO-56.
func fao(at string) source.Ref { return source.Ref{Work: source.FAO56, At: at} }

// second is a place in it of which a transcription was read.
func second(at string) source.Ref { return fao(at + ", read in a transcription") }

// saturation returns a row of the table of vapour pressures.
func saturation(id, given string, celsius, want float64) Row {
	return Row{
		ID: id, Topic: "vapour", Quantity: "pressure of vapour over water", Given: given, Source: fao("annex 2, table 2.3"),
		Parts: []Part{of("saturation-vapour", want, 0.0011, celsius).in("kPa", kPa)},
		Note:  "The table's own last digit is off by up to one: the tolerance is one of it.",
	}
}

// slope returns a row of the table of its slope.
func slope(id, given string, celsius, want float64) Row {
	return Row{
		ID: id, Topic: "vapour", Quantity: "slope of the curve of vapour pressure", Given: given, Source: fao("equation 13 and annex 2, table 2.4"),
		Parts: []Part{of("vapour-slope", want, 0.0006, celsius).in("kPa/°C", kPa)},
	}
}

// middle is the number in the year of the 15th of each month of a common year.
var middle = [13]float64{0, 15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349}

// monthNames are those of the months, from 1.
var monthNames = [13]string{"", "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// aboveAir returns a row of the table of radiation above the air.
func aboveAir(id, given string, lat float64, month int, want float64) Row {
	return Row{
		ID: id, Topic: "radiation", Quantity: "radiation above the air", Given: given + ", 15 " + monthNames[month],
		Source: second("annex 2, table 2.6"),
		Note:   "The table is for the middle of the month by its own count of days; the tolerance is what a day makes.",
		Parts:  []Part{of("extraterrestrial-radiation", want, 0.16, lat, middle[month]).in("MJ/m²", megajoule)},
	}
}

// daylight returns a row of hours of daylight; read says that the table was.
func daylight(id, given string, lat float64, month int, want float64, read bool) Row {
	from := source.Ref{Work: source.FAO56, At: "equation 34, worked out", Standing: source.Derived}
	if read {
		from = second("annex 2, table 2.7")
	}
	return Row{
		ID: id, Topic: "radiation", Quantity: "hours of daylight", Given: given + ", 15 " + monthNames[month], Source: from,
		Parts: []Part{of("day-hours", want, 0.11, lat, middle[month]).in("h", hour)},
	}
}

var vapourRows = []Row{
	{
		ID: "VP-01", Topic: "vapour", Quantity: "pressure of vapour over water", Given: "24.5, 15 and 19.75 °C", Source: fao("equation 11, example 3"),
		Parts: []Part{
			of("saturation-vapour", 3.075, 0.005, 24.5).in("kPa", kPa),
			of("saturation-vapour", 1.705, 0.005, 15).in("kPa", kPa),
			of("saturation-vapour", 2.30, 0.005, 19.75).in("kPa", kPa),
		},
	},
	{
		ID: "VP-03", Topic: "vapour", Quantity: "pressure of the air, vapour over water and in the air", Given: "1200 m, dry 25.6 °C, wet 19.5 °C",
		Source: fao("equations 7 and 15, example 4"),
		Parts: []Part{
			of("air-pressure", 87.9, 0.05, 1200).in("kPa", kPa),
			of("saturation-vapour", 2.267, 0.0005, 19.5).in("kPa", kPa),
			of("vapour-wet-bulb", 1.91, 0.005, 25.6, 19.5, 1200).in("kPa", kPa),
		},
	},
	{
		ID: "VP-04", Topic: "vapour", Quantity: "vapour in the air by humidities at the extremes, and by their mean", Given: "18 °C at 82 %, 25 °C at 54 %",
		Source: fao("example 5"),
		Parts: []Part{
			of("vapour-extremes", 1.70, 0.006, 18, 0.82, 25, 0.54).in("kPa", kPa),
			of("vapour-mean", 1.78, 0.006, 18, 25, 0.68).in("kPa", kPa),
		},
	},
	saturation("VP-10", "5 °C", 5, 0.872),
	saturation("VP-11", "10 °C", 10, 1.228),
	saturation("VP-12", "15 °C", 15, 1.705),
	saturation("VP-13", "20 °C", 20, 2.338),
	saturation("VP-15", "26 °C", 26, 3.361),
	saturation("VP-16", "30 °C", 30, 4.243),
	saturation("VP-18", "35 °C", 35, 5.623),
	slope("VP-20", "10 °C", 10, 0.082),
	slope("VP-21", "20 °C", 20, 0.145),
	slope("VP-22", "25 °C", 25, 0.189),
	slope("VP-24", "40 °C", 40, 0.393),
	emission("VP-30", "10 °C", 10, 31.52),
	emission("VP-31", "20 °C", 20, 36.21),
}

// emission returns a row of the table of a black body's heat.
func emission(id, given string, celsius, want float64) Row {
	return Row{
		ID: id, Topic: "radiation", Quantity: "heat that a black body sends out", Given: given, Source: fao("annex 2, table 2.8"),
		Note:  "The table takes 273.16 K for 0 °C.",
		Parts: []Part{of("emission", want, 0.011, celsius).in("MJ/m²", megajoule)},
	}
}

const (
	bangkok = 13.73 // latitude of examples 16 and 17
	lyon    = 45.72 // of examples 15 and 20
	july15  = 196.0
	april15 = 105.0
)

var radiationRows = []Row{
	{
		ID: "UN-01", Topic: "radiation", Quantity: "1 MJ/m² a day in other units", Given: "1 MJ/m² a day", Source: fao("table 3"),
		Parts: []Part{
			of("radiation-depth", 0.408, 0.0005, megajoule).in("mm", mmDay),
			{Kind: unit.Radiation, In: []float64{1}, Unit: "J/cm²", Per: 1e4, Want: 100},
			{Kind: unit.Radiation, In: []float64{1}, Unit: "W/m²", Per: 24 * hour, Want: 11.6, Tol: 0.05},
		},
	},
	{
		ID: "RA-01", Topic: "radiation", Quantity: "latitude in radians", Given: "13° 44' N and 22° 54' S", Source: fao("equation 22, example 7"),
		Parts: []Part{of("radians", 0.240, 0.0006, 13+44.0/60), of("radians", -0.400, 0.0006, -22-54.0/60)},
	},
	{
		ID: "RA-02", Topic: "radiation", Quantity: "distance and declination of the sun, sunset angle, radiation above the air", Given: "20° S, 3 September (246)",
		Source: fao("equations 21 to 25, example 8"),
		Parts: []Part{
			of("sun-distance", 0.985, 0.0005, 246), of("declination", 0.120, 0.0005, 246), of("sunset-angle", 1.527, 0.0005, -20, 246),
			of("extraterrestrial-radiation", 32.2, 0.05, -20, 246).in("MJ/m²", megajoule),
			of("radiation-depth", 13.1, 0.051, 32.19*megajoule).in("mm", mmDay),
		},
	},
	{
		ID: "RA-04", Topic: "radiation", Quantity: "radiation above the air, hours of daylight, radiation at the ground", Given: "22° 54' S, 15 May (135), 220 h of sunshine in 31 days",
		Source: fao("example 10"),
		Parts: []Part{
			of("extraterrestrial-radiation", 25.1, 0.05, -22.9, 135).in("MJ/m²", megajoule),
			of("day-hours", 10.9, 0.05, -22.9, 135).in("h", hour),
			of("radiation-sunshine", 14.5, 0.06, 25.11*megajoule, 220.0/31/10.9).in("MJ/m²", megajoule),
		},
	},
	{
		ID: "RA-06", Topic: "radiation", Quantity: "radiation above the air, and at the ground by temperatures", Given: "45.72° N, 15 July, 14.8 to 26.6 °C, inland",
		Source: fao("equation 50, example 15"),
		Parts: []Part{
			of("extraterrestrial-radiation", 40.6, 0.06, lyon, july15).in("MJ/m²", megajoule),
			of("radiation-temperatures", 22.3, 0.05, 40.55*megajoule, 14.8, 26.6, 0.16).in("MJ/m²", megajoule),
			of("radiation-depth", 9.1, 0.05, 22.29*megajoule).in("mm", mmDay),
		},
	},
	{
		ID: "RA-07", Topic: "radiation", Quantity: "radiation above the air, at the ground, under a clear sky, kept", Given: "13.73° N, 15 April, 25.6 to 34.8 °C, by the sea",
		Source: fao("example 16"),
		Parts: []Part{
			of("extraterrestrial-radiation", 38.1, 0.05, bangkok, april15).in("MJ/m²", megajoule),
			of("radiation-temperatures", 21.9, 0.05, 38.06*megajoule, 25.6, 34.8, 0.19).in("MJ/m²", megajoule),
			of("clear-radiation", 28.5, 0.06, 38.06*megajoule, 0).in("MJ/m²", megajoule),
			of("net-short", 16.9, 0.05, 21.93*megajoule).in("MJ/m²", megajoule),
		},
	},
	aboveAir("RT-00", "20° N", 20, 1, 26.8),
	aboveAir("RT-02", "20° N", 20, 9, 35.8),
	aboveAir("RT-03", "20° N", 20, 12, 25.6),
	aboveAir("RT-05", "30° N", 30, 6, 41.2),
	aboveAir("RT-06", "30° N", 30, 9, 33.4),
	aboveAir("RT-07", "30° N", 30, 12, 19.8),
	aboveAir("RT-08", "40° N", 40, 1, 15.0),
	aboveAir("RT-10", "40° N", 40, 6, 41.9),
	aboveAir("RT-12", "40° N", 40, 12, 13.6),
	aboveAir("RT-13", "50° N", 50, 1, 8.9),
	aboveAir("RT-14", "50° N", 50, 6, 41.7),
	aboveAir("RT-15", "50° N", 50, 9, 25.7),
	aboveAir("RT-18", "60° N", 60, 1, 3.3),
	aboveAir("RT-19", "60° N", 60, 6, 41.2),
	aboveAir("RT-20", "60° N", 60, 9, 20.6),
	aboveAir("RT-21", "60° N", 60, 12, 2.2),
	{
		ID: "RT-50", Topic: "radiation", Quantity: "radiation above the air", Given: "34° S and 36° S, 15 February", Source: fao("annex 2, table 2.6, as quoted by others"),
		Parts: []Part{
			of("extraterrestrial-radiation", 39.2, 0.16, -34, middle[2]).in("MJ/m²", megajoule),
			of("extraterrestrial-radiation", 38.9, 0.16, -36, middle[2]).in("MJ/m²", megajoule),
		},
	},
	daylight("NT-00", "48° N", 48, 1, 8.6, true),
	daylight("NT-01", "48° N", 48, 2, 10.0, true),
	daylight("NT-02", "48° N", 48, 3, 11.6, true),
	daylight("NT-04", "48° N", 48, 5, 15.0, true),
	daylight("NT-05", "the equator", 0, 1, 12.0, false),
	daylight("NT-06", "20° N", 20, 6, 13.2, false),
	daylight("NT-08", "30° N", 30, 6, 13.9, false),
	daylight("NT-09", "40° N", 40, 1, 9.5, false),
	daylight("NT-10", "40° N", 40, 6, 14.8, false),
	daylight("NT-12", "50° N", 50, 1, 8.3, false),
	daylight("NT-13", "50° N", 50, 6, 16.1, false),
	daylight("NT-15", "60° N", 60, 12, 5.6, false),
	daylight("NT-16", "30° S", -30, 1, 13.7, false),
	{
		ID: "SB-05", Topic: "radiation", Quantity: "most water that radiation can turn into vapour", Given: "1 J/cm² on 1 m²",
		Source: source.Ref{Work: source.FAO56, At: "table 3: 1 mm a day is 245 J/cm² a day", Standing: source.Derived},
		Parts:  []Part{of("radiation-depth", 4.08, 0.01, 1e4).in("mL/m²", 1e-6)},
	},
}

var evapoRows = []Row{
	{
		ID: "ET-01", Topic: "evapotranspiration", Quantity: "radiation above the air, daylight, radiation at the ground and kept, reference evapotranspiration after Penman and Monteith",
		Given:  "13.73° N, 2 m above the sea, April: 25.6 to 34.8 °C, vapour 2.85 kPa, wind 2 m/s, 8.5 h of sunshine, 0.14 MJ/m² into the ground",
		Source: fao("example 17"),
		Parts: []Part{
			of("extraterrestrial-radiation", 38.06, 0.01, bangkok, april15).in("MJ/m²", megajoule),
			of("day-hours", 12.31, 0.01, bangkok, april15).in("h", hour),
			of("radiation-sunshine", 22.65, 0.01, 38.06*megajoule, 8.5/12.31).in("MJ/m²", megajoule),
			of("net-short", 17.44, 0.01, 22.65*megajoule).in("MJ/m²", megajoule),
			of("net-long", 3.11, 0.02, 25.6, 34.8, 2.85*kPa, 22.65/28.54).in("MJ/m²", megajoule),
			of("penman-monteith", 5.72, 0.01, 25.6, 34.8, 2.85*kPa, 14.33*megajoule, 0.14*megajoule, 2, 2).in("mm", mmDay),
		},
	},
	{
		ID: "ET-04", Topic: "evapotranspiration", Quantity: "reference evapotranspiration after Hargreaves and Samani", Given: "45.72° N, July: 14.8 to 26.6 °C",
		Source: fao("equation 52, example 20"),
		Parts:  []Part{of("hargreaves-samani", 5.0, 0.06, 14.8, 26.6, 40.55*megajoule).in("mm", mmDay)},
	},
	{
		ID: "KC-01", Topic: "crop coefficient", Quantity: "coefficient of maize in a damp and in a dry, windy climate", Given: "1.20 in the table, 2 m high: 1.3 m/s at 75 %, 4.6 m/s at 44 %",
		Source: fao("equation 62, example 27"),
		Parts: []Part{
			of("coefficient-climate", 1.07, 0.006, 1.20, 1.3, 0.75, 2),
			of("coefficient-climate", 1.30, 0.006, 1.20, 4.6, 0.44, 2),
		},
	},
	{
		ID: "KC-03", Topic: "crop coefficient", Quantity: "ratio of lucerne to grass", Given: "1.2 in the table, 0.5 m high, 2.2 m/s at 30 %",
		Source: fao("equation 68"),
		Parts:  []Part{of("coefficient-climate", 1.24, 0.006, 1.2, 2.2, 0.30, 0.5)},
	},
	{
		ID: "KC-04", Topic: "crop coefficient", Quantity: "coefficient on days 20, 40, 70 and 95", Given: "stages of 25, 25, 30 and 20 days, 0.15, 1.19 and 0.35",
		Source: fao("equation 66, example 28"),
		Parts: []Part{
			of("crop-coefficient", 0.15, 0.006, 20, 25, 25, 30, 20, 0.15, 1.19, 0.35),
			of("crop-coefficient", 0.77, 0.006, 40, 25, 25, 30, 20, 0.15, 1.19, 0.35),
			of("crop-coefficient", 1.19, 0.006, 70, 25, 25, 30, 20, 0.15, 1.19, 0.35),
			of("crop-coefficient", 0.56, 0.006, 95, 25, 25, 30, 20, 0.15, 1.19, 0.35),
		},
	},
	{
		ID: "KC-06", Topic: "crop coefficient", Quantity: "water that a crop uses", Given: "coefficients 1.19, 0.98 and 0.56, reference 5.1, 4.5 and 5.2 mm a day",
		Source: fao("figure 36"),
		Parts: []Part{
			of("crop-use", 6.1, 0.06, 1.19, 5.1*mmDay).in("mm", mmDay),
			of("crop-use", 4.4, 0.06, 0.98, 4.5*mmDay).in("mm", mmDay),
			of("crop-use", 2.9, 0.06, 0.56, 5.2*mmDay).in("mm", mmDay),
		},
	},
	{
		ID: "SB-04", Topic: "crop coefficient", Quantity: "litres for a plant by depth of water and density", Given: "4.0 mm at 2.5 plants to a m²; 5.5 mm at 3.2",
		Source: source.Ref{Work: "a millimetre on a square metre is a litre", Standing: source.Derived},
		Parts: []Part{
			of("plant-water", 1.60, 0.001, 4.0*mmDay, 1, 1, 1, 1/2.5, 1).in("L", litre),
			of("plant-water", 1.719, 0.001, 5.5*mmDay, 1, 1, 1, 1/3.2, 1).in("L", litre),
		},
	},
	{
		ID: "KC-07", Topic: "crop coefficient", Quantity: "coefficient of cucumber on plastic mulch, grown and at the end", Given: "1.00 and 0.75 in the table",
		Source: fao("example 45"),
		Parts:  []Part{of("coefficient-mulched", 0.85, 0.006, 1.00), of("coefficient-mulched", 0.64, 0.006, 0.75)},
	},
}
