package parts

// An Item is what a line of the list is, whatever its size.
type Item uint8

const (
	ATube Item = iota
	AJoint
	AThreadAdapter
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
	Items = iota // how many there are
)

// A KindOf is what is declared of an item.
type KindOf struct {
	Key   string // what lines of it are known by, in links and files: permanent
	Group Group  // the counter of a shop
}

// Kinds declares each item.
var Kinds = [Items]KindOf{
	ATube:            {"tube", Tubing},
	AJoint:           {"joint", Fittings},
	AThreadAdapter:   {"thread-adapter", Fittings},
	AConnector:       {"connector", Fittings},
	AClamp:           {"clamp", Fittings},
	AnEmitter:        {"emitter", EmittersGroup},
	AMicroTubing:     {"micro-tubing", EmittersGroup},
	AMicroConnector:  {"micro-connector", EmittersGroup},
	AStake:           {"stake", EmittersGroup},
	AHolePlug:        {"hole-plug", EmittersGroup},
	ATank:            {"tank", WaterPath},
	ATankStand:       {"tank-stand", WaterPath},
	ATankOutlet:      {"tank-outlet", WaterPath},
	AFloatValve:      {"float-valve", WaterPath},
	ABackflow:        {"backflow", WaterPath},
	ATimerValve:      {"timer-valve", WaterPath},
	APump:            {"pump", WaterPath},
	AFilter:          {"filter", WaterPath},
	ARegulator:       {"regulator", WaterPath},
	AGauge:           {"gauge", WaterPath},
	AGaugeTee:        {"gauge-tee", WaterPath},
	AClearHose:       {"clear-hose", WaterPath},
	AProtectedOutlet: {"protected-outlet", Electrics},
	APlugCover:       {"plug-cover", Electrics},
	APumpTimer:       {"pump-timer", Electrics},
	ACordHook:        {"cord-hook", Electrics},
	AMedium:          {"medium", Growing},
	AFilling:         {"filling", Growing},
	ASowingPlug:      {"sowing-plug", Growing},
	ARaisingBlock:    {"raising-block", Growing},
	ADrainTray:       {"drain-tray", Growing},
	ADrainCan:        {"drain-can", Growing},
	AnECMeter:        {"ec-meter", Growing},
	APHMeter:         {"ph-meter", Growing},
	AnECFluid:        {"ec-fluid", Growing},
	APHFluid:         {"ph-fluid", Growing},
	APunch:           {"punch", Tools},
	ACutter:          {"cutter", Tools},
	AThreadTape:      {"thread-tape", Tools},
	AWasher:          {"washer", Tools},
	AClampDriver:     {"clamp-driver", Tools},
	ATapeMeasure:     {"tape-measure", Tools},
	AMarker:          {"marker", Tools},
	ATestCups:        {"test-cups", Tools},
}
