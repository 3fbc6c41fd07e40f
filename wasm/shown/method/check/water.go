package check

import "evenrow/wasm/ground/source"

var mwh = source.Ref{Work: source.MWH, At: "appendix C, table C-1, after Vennard and Street (1975)"}

// dynamic returns a row of dynamic viscosity, within 0.3 %.
func dynamic(id, given string, celsius, want float64) Row {
	return Row{
		ID: id, Topic: "water", Quantity: "dynamic viscosity", Given: given, Source: mwh,
		Parts: []Part{of("dynamic-viscosity", want, 0.003*want, celsius).in("mPa s", 1e-3)},
	}
}

// dense returns a row of density, within 0.1 kg/m³.
func dense(id, given string, celsius, want float64) Row {
	return Row{
		ID: id, Topic: "water", Quantity: "density", Given: given, Source: mwh,
		Parts: []Part{of("density", want, 0.1, celsius).in("kg/m³", 1)},
	}
}

var waterRows = []Row{
	dynamic("HY-001", "5 °C, 1 atm", 5, 1.518),
	dynamic("HY-003", "15 °C, 1 atm", 15, 1.139),
	dynamic("HY-004", "20 °C, 1 atm", 20, 1.002),
	dynamic("HY-005", "25 °C, 1 atm", 25, 0.890),
	dense("HY-007", "5 °C, 1 atm", 5, 1000.0),
	dense("HY-008", "10 °C, 1 atm", 10, 999.7),
	dense("HY-009", "20 °C, 1 atm", 20, 998.2),
	dense("HY-011", "30 °C, 1 atm", 30, 995.7),
	{
		ID: "HY-012", Topic: "water", Quantity: "kinematic viscosity", Given: "15 °C", Source: mwh,
		Parts: []Part{of("viscosity", 1.139, 0.003*1.139, 15).in("mm²/s", 1e-6)},
	},
	{
		ID: "HY-015", Topic: "water", Quantity: "kinematic viscosity", Given: "35 °C",
		Source: source.Ref{Work: "IAPWS R12-08 (2008) and SR6-08", At: "0.1 MPa", Standing: source.Derived},
		Parts:  []Part{of("viscosity", 0.7234, 0.003*0.7234, 35).in("mm²/s", 1e-6)},
	},
}
