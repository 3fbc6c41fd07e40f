package check

import (
	"strconv"

	"evenrow/wasm/ground/source"
)

// share returns a row of Christiansen's F, exact and in three terms.
func share(id string, m float64, n int, exact, short float64) Row {
	r := Row{
		ID: id, Topic: "outlets", Quantity: "Christiansen's F: exact sum, and in three terms",
		Given:  "m " + strconv.FormatFloat(m, 'g', -1, 64) + ", N " + strconv.Itoa(n) + ", the first outlet one spacing from the inlet",
		Source: source.Ref{Work: source.Christians, At: "as in Keller and Bliesner (1990), chapter 8", Standing: source.Derived},
		Parts: []Part{
			of("outlets", exact, 0.0005, float64(n), m),
			of("outlets-short", short, 0.0005, float64(n), m),
		},
	}
	if exact != short {
		r.Note = "The three terms err with so few outlets."
	}
	return r
}

var jensen = source.Ref{Work: source.Jensen, At: "formula from memory", Standing: source.Derived}

var outletRows = []Row{
	share("HY-047", 1.75, 1, 1.0000, 1.0080),
	share("HY-048", 1.75, 5, 0.4694, 0.4694),
	share("HY-049", 1.75, 10, 0.4151, 0.4151),
	share("HY-051", 1.75, 50, 0.3737, 0.3737),
	share("HY-052", 1.852, 2, 0.6385, 0.6391),
	share("HY-053", 1.852, 10, 0.4022, 0.4022),
	share("HY-054", 1.852, 20, 0.3760, 0.3760),
	share("HY-056", 2, 4, 0.4688, 0.4688),
	share("HY-058", 2, 40, 0.3459, 0.3459),
	{
		ID: "HY-059", Topic: "outlets", Quantity: "F, first outlet at half a spacing", Given: "m 1.852, N 10",
		Source: jensen, Parts: []Part{of("outlets-half", 0.3707, 0.0005, 10, 1.852)},
	},
	{
		ID: "HY-061", Topic: "outlets", Quantity: "F, first outlet at half a spacing", Given: "m 2, N 4",
		Source: jensen, Parts: []Part{of("outlets-half", 0.3929, 0.0005, 4, 2)},
	},
	{
		ID: "HY-062", Topic: "outlets", Quantity: "F, first outlet at the inlet", Given: "m 1.75, N 20",
		Source: source.Ref{Work: "(N F - 1)/(N - 1)", Standing: source.Derived},
		Parts:  []Part{of("outlets-inlet", 0.3568, 0.0005, 20, 1.75)},
	},
}
