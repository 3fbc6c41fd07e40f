// Package water gives the density and viscosity of water by temperature.
package water

// Water is the water in the lines, at one temperature.
type Water struct {
	Celsius   float64
	Density   float64 // kg/m³
	Kinematic float64 // m²/s, kinematic viscosity
}

// Gravity is standard gravity in m/s².
const Gravity = 9.80665
