package check

import "evenrow/wasm/ground/source"

var algebra = source.Ref{Work: "algebra", Standing: source.Derived}

var pumpRows = []Row{
	{
		ID: "HY-098", Topic: "pumps", Quantity: "shaft power", Given: "ρ 998 kg/m³, Q 0.0233 m³/s, H 7.3 m, η 0.70",
		Source: source.Ref{Work: source.Cengel, At: "example 14-2 as retyped"},
		Parts:  []Part{of("shaft-power", 2379, 0.001*2379, 998, 0.0233, 7.3, 0.70).in("W", 1)},
	},
	{
		ID: "HY-100", Topic: "pumps", Quantity: "flow, head and power of a similar pump",
		Given:  "CQ 0.0625, CH 0.19, CP 0.014, d 8 in, 1200 rpm, ρ 1.94 slug/ft³",
		Source: source.Ref{Work: source.Munson, At: "example 12.5 as retyped"},
		Note:   "The book rounds 12.9 hp to 13.",
		Parts: []Part{
			of("similar-flow", 1044, 0.002*1044, 0.0625, 1200*rpm, 8*inch).in("gal/min", gpm),
			of("similar-head", 41.4, 0.002*41.4, 0.19, 1200*rpm, 8*inch).in("ft", foot),
			of("similar-power", 12.9, 0.002*12.9, 0.014, 1.94*scf, 1200*rpm, 8*inch).in("hp", hp),
		},
	},
	{
		ID: "HY-102", Topic: "pumps", Quantity: "where a pump meets its system: flow and head",
		Given:  "pump 20 - 5 Q², at most 2 m³/h; system 5 + 3.75 Q²; m and m³/h",
		Source: algebra,
		Parts: []Part{
			of("duty-flow", 1.3093, 0.001*1.3093, 20, 2*m3h, 5, 15).in("m³/h", m3h),
			of("duty-head", 11.429, 0.001*11.429, 20, 2*m3h, 5, 15).in("m", 1),
		},
	},
	{
		ID: "HY-103", Topic: "pumps", Quantity: "where a pump meets its system: flow, head and hydraulic power",
		Given:  "pump 12 - 3 Q², at most 2 m³/h; system 2 + 7 Q²; m and m³/h; ρ 998.2 kg/m³",
		Source: algebra,
		Parts: []Part{
			of("duty-flow", 1.0000, 0.002, 12, 2*m3h, 2, 28).in("m³/h", m3h),
			of("duty-head", 9.000, 0.002*9, 12, 2*m3h, 2, 28).in("m", 1),
			of("hydraulic-power", 24.5, 0.002*24.5, 998.2, 1*m3h, 9).in("W", 1),
		},
	},
}
