package parts

import "evenrow/wasm/grower/plan"

// An Item is what a line of the list is, whatever its size.
type Item uint8

const (
	ATube Item = iota
	AJoint
	AConnector
	AClamp
	AnEmitter
	AMicroTubing
	AMicroConnector
	AStake
	AHolePlug
	ATank
	ATankStand
	ATankOutlet
	AFloatValve
	ABackflow
	ATimerValve
	APump
	AFilter
	ARegulator
	AGauge
	AGaugeTee
	AClearHose
	AProtectedOutlet
	APlugCover
	APumpTimer
	ACordHook
	AMedium
	AFilling
	ASowingPlug
	ARaisingBlock
	ADrainTray
	ADrainCan
	AnECMeter
	APHMeter
	AnECFluid
	APHFluid
	APunch
	ACutter
	AThreadTape
	AWasher
	AClampDriver
	ATapeMeasure
	AMarker
	ATestCups
	AMeasuringJug
	AKitchenTimer
	Items = iota // how many there are
)

// A KindOf is what is declared of an item.
type KindOf struct {
	Key   string // what lines of it are known by, in links and files: permanent
	Group Group  // the counter of a shop

	// What it costs and how it is sold, until somebody says more: see [Shop].
	Price float64                             // of a piece of a usual size, or of a metre, invented, in any currency
	By    func(p *plan.Plan, n *Line) float64 // times that, for the size of a line; nil where all cost alike
	Pack  int                                 // pieces in a usual pack
}

// Kinds declares each item.
var Kinds = [Items]KindOf{
	ATube:            {"tube", Tubing, 0, nil, 1},
	AJoint:           {"joint", Fittings, 1.5, byFitting, 1},
	AConnector:       {"connector", Fittings, 2.5, nil, 1},
	AClamp:           {"clamp", Fittings, 0.4, byBore, 10},
	AnEmitter:        {"emitter", EmittersGroup, 0.3, nil, 10},
	AMicroTubing:     {"micro-tubing", EmittersGroup, 0.4, nil, 1},
	AMicroConnector:  {"micro-connector", EmittersGroup, 0.15, nil, 20},
	AStake:           {"stake", EmittersGroup, 0.2, nil, 25},
	AHolePlug:        {"hole-plug", EmittersGroup, 0.1, nil, 10},
	ATank:            {"tank", WaterPath, 25, byTank, 1},
	ATankStand:       {"tank-stand", WaterPath, 30, byTank, 1},
	ATankOutlet:      {"tank-outlet", WaterPath, 7, nil, 1},
	AFloatValve:      {"float-valve", WaterPath, 12, nil, 1},
	ABackflow:        {"backflow", WaterPath, 18, nil, 1},
	ATimerValve:      {"timer-valve", WaterPath, 45, nil, 1},
	APump:            {"pump", WaterPath, 90, nil, 1},
	AFilter:          {"filter", WaterPath, 25, nil, 1},
	ARegulator:       {"regulator", WaterPath, 12, nil, 1},
	AGauge:           {"gauge", WaterPath, 9, nil, 1},
	AGaugeTee:        {"gauge-tee", WaterPath, 3, nil, 1},
	AClearHose:       {"clear-hose", WaterPath, 4, nil, 1},
	AProtectedOutlet: {"protected-outlet", Electrics, 25, nil, 1},
	APlugCover:       {"plug-cover", Electrics, 12, nil, 1},
	APumpTimer:       {"pump-timer", Electrics, 20, nil, 1},
	ACordHook:        {"cord-hook", Electrics, 2, nil, 1},
	AMedium:          {"medium", Growing, 2.5, byMedium, 1},
	AFilling:         {"filling", Growing, 2, byFilling, 1},
	ASowingPlug:      {"sowing-plug", Growing, 0.1, nil, 25},
	ARaisingBlock:    {"raising-block", Growing, 0.5, nil, 8},
	ADrainTray:       {"drain-tray", Growing, 2.5, byMedium, 1},
	ADrainCan:        {"drain-can", Growing, 5, nil, 1},
	AnECMeter:        {"ec-meter", Growing, 35, nil, 1},
	APHMeter:         {"ph-meter", Growing, 40, nil, 1},
	AnECFluid:        {"ec-fluid", Growing, 6, nil, 1},
	APHFluid:         {"ph-fluid", Growing, 6, nil, 1},
	APunch:           {"punch", Tools, 5, nil, 1},
	ACutter:          {"cutter", Tools, 12, nil, 1},
	AThreadTape:      {"thread-tape", Tools, 1.5, nil, 1},
	AWasher:          {"washer", Tools, 0.2, nil, 10},
	AClampDriver:     {"clamp-driver", Tools, 5, nil, 1},
	ATapeMeasure:     {"tape-measure", Tools, 6, nil, 1},
	AMarker:          {"marker", Tools, 2, nil, 1},
	ATestCups:        {"test-cups", Tools, 0.2, nil, 20},
	AMeasuringJug:    {"measuring-jug", Tools, 4, nil, 1},
	AKitchenTimer:    {"kitchen-timer", Tools, 6, nil, 1},
}
