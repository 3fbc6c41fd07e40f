package check

import "evenrow/wasm/ground/source"

// litre is a litre in m³.
const litre = 1e-3

var (
	leaching = source.Ref{Work: "definition of the leaching fraction", At: "read in a reprint of an extension article, worked out", Standing: source.Derived}
	counted  = source.Ref{Work: "arithmetic", Standing: source.Derived}
)

var doseRows = []Row{
	{
		ID: "SB-02", Topic: "shots", Quantity: "water to apply for a share that drains", Given: "use 1.5, 0.6 and 2.4 L; share 0.25, 0.10 and 0.30",
		Source: leaching,
		Parts: []Part{
			of("water-to-apply", 2.00, 0.005, 1.5*litre, 0.25).in("L", litre),
			of("water-to-apply", 0.667, 0.0005, 0.6*litre, 0.10).in("L", litre),
			of("water-to-apply", 3.429, 0.0005, 2.4*litre, 0.30).in("L", litre),
			of("drain-share", 0.25, 1e-9, 1.5*litre, 2*litre),
		},
	},
	{
		ID: "SB-07", Topic: "shots", Quantity: "number of shots and minutes of one", Given: "2.0 L a plant, one emitter of 2 L/h, 100 mL a shot",
		Source: counted,
		Parts: []Part{
			of("shots-a-day", 20, 0, 2*litre, 0.1*litre),
			of("shot-minutes", 3.0, 0.05, 0.1*litre, 2*lph).in("min", 60),
		},
	},
	{
		ID: "SB-21", Topic: "shots", Quantity: "water of one shot", Given: "5 L of medium, 3 %",
		Source: counted,
		Parts:  []Part{of("shot-volume", 150, 0.5, 5*litre, 0.03).in("mL", 1e-6)},
	},
	{
		ID: "SB-22", Topic: "shots", Quantity: "water to give next", Given: "2 L given, half of it drained, a fifth is wanted",
		Source: counted, Note: "The plant took up 1 L, which is four fifths of 1.25 L.",
		Parts: []Part{of("next-water", 1.25, 0.005, 2*litre, 0.5, 0.2).in("L", litre)},
	},
	{
		ID: "SB-23", Topic: "shots", Quantity: "hours until the easily available water is gone", Given: "a coco bag of 18 L with three plants, a quarter easily available, 0.3 L/h",
		Source: counted, Note: "The inputs are from memory.",
		Parts: []Part{of("dry-time", 5, 0.5, 6*litre, 0.25, 0.3*lph).in("h", 3600)},
	},
}
