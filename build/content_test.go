package main

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"evenrow/wasm/grower/care"
	"evenrow/wasm/trade/chlorine"
)

var (
	fenced = regexp.MustCompile("(?s)```.*?```|#[a-z-]+") // computed blocks and names of headings
	spaces = regexp.MustCompile(`\s+`)
)

// authored is everything that authors wrote, by the name of its file, as one line
// each: without the blocks that are computed.
func authored(t *testing.T) map[string]string {
	t.Helper()
	all := map[string]string{}
	for _, folder := range []string{"guides", "cautions"} {
		names, err := fs.Glob(os.DirFS("../content"), folder+"/*.md")
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %d files, %v", folder, len(names), err)
		}
		for _, name := range names {
			b, err := os.ReadFile("../content/" + name)
			if err != nil {
				t.Fatal(err)
			}
			all[name] = spaces.ReplaceAllString(fenced.ReplaceAllString(string(b), " "), " ")
		}
	}
	return all
}

// forbidden is what no guide and no caution says any more, and why.
var forbidden = []struct{ pattern, why string }{
	{`close all the ends\b|give it ten minutes\.`, "a pump that runs shut heats up: an end stays open a crack"},
	{`feel under every joint|let the air out at the far ends, one cap`, "tubing is not touched while the pump is plugged in"},
	{`start it, shut the valve`, "the valve is set while the pump is unplugged"},
	{`fourth (watering|irrigation)`, "printed for orchards, with days between irrigations; a timer's shots would make it three flushes a day"},
	{`over a bucket\. start|then a minute more`, "an open end fills a bucket within seconds"},
	{`softens at about 100`, "polyethylene melts there; it softens well below"},
	{`not boiling, with gloves`, "water far below boiling burns in a second"},
	{`before a leak (of it )?can kill`, "ground-fault protection reduces the risk and does not remove it"},
	{`no method wins`, "one trial of one crop is no proof for all"},
	{`no crop can take more than`, "wind and warm air bring heat beside the sun"},
	{`most plants are lost`, "nobody has counted them"},
	{`fits one in an hour`, "nobody has timed it"},
	{`\*\*blockage and leaks\.\*\* all|are not in the answer\. the surge`, "both are calculated beside the answer"},
	{`thinner than a grain of sand`, "most grains of sand are finer than the passages in the guide's own table"},
	{`2\.05 kg|11\.6 kg|9\.55 l|coco bag of 18 l, `, "figures of somebody's product"},
	{`1 in outlet|two adapters`, "one build retold"},

	// Words that make a grower stumble.
	{`\bleads?\b`, "supply line: a lead is also a power cord"},
	{`\bknocks?\b|\bblow of\b`, "pressure surge, water hammer"},
	{`thirst of the air|thirsty the air|takes? the thirst`, "evaporative demand, ETo"},
	{`\breckon`, "calculated"},
	{`serve for less|\bdear(er|est)?\b`, "cheaper designs; expensive"},
	{`## ring\b|\bin a ring\b|\bring (helps|gains|costs)|a ring gains`, "loop, as a layout"},
	{`\bupright\b`, "vertical line"},
	{`treat(ing|ment)?( of)? the lines`, "clean the lines"},
	{`(the|file) edition|edition of the calendar`, "calendar version number"},
	{`universal time`, "UTC offset"},
	{`\breal use\b`, "correction from your drain readings"},
	{`\brubs?\b|\brub on\b`, "friction"},
	{`head to keep in hand|(leave|keep) a reserve|larger reserve|more reserve|what you ask of`, "safety margin; your limits"},
	{`\bthirstier\b`, "the crop that needs more"},
	{`until (they|the seedlings) show`, "until the seedlings are up"},
	{`(^|[.:] )(as a start only, )?from memory,`, "the standing of a value follows it, and does not open the sentence"},
}

func TestGuidesDoNotSay(t *testing.T) {
	all := authored(t)
	for _, f := range forbidden {
		re := regexp.MustCompile("(?i)" + f.pattern)
		for name, text := range all {
			if at := re.FindStringIndex(text); at != nil {
				t.Errorf("content/%s: %q (%s)", name, text[max(0, at[0]-40):min(len(text), at[1]+40)], f.why)
			}
		}
	}
}

// required is what a reader needs, and where it is looked for.
var required = []struct{ file, pattern, why string }{
	{"guides/assembly", `open a crack`, "the leak test never shuts the pump"},
	{"guides/assembly", `unplugged until every joint is clamped`, "electricity comes after the last clamp"},
	{"guides/assembly", `melts at about 100 to 115 °C`, "why hot water works"},
	{"guides/assembly", `70 °C \(158 °F\).{0,60}about a second`, "water from a flask burns"},
	{"guides/assembly", `compressed air`, "no test with air"},
	{"guides/assembly", `"not for drinking"`, "the feed tank is labelled"},
	{"guides/flushing", `once a week to once a month`, "how often on dirty water"},
	{"guides/flushing", `hose .{0,80}drain`, "where the flush goes"},
	{"guides/flushing", `compressed air`, "lines are not blown out"},
	{"guides/flushing", `neither scented nor thickened`, "which bleach"},
	{"guides/flushing", `never .{0,60}acid`, "bleach and acid"},
	{"guides/flushing", `from outside`, "nobody enters a tank"},
	{"guides/electricity", `reduces the risk .{0,40}does not remove it`, "what ground-fault protection does"},
	{"guides/electricity", `## Low-voltage pumps`, "12 V and 24 V"},
	{"guides/electricity", `IPX8`, "ratings against water"},
	{"guides/electricity", `## If someone gets a shock .{0,400}emergency`, "what to do on a shock"},
	{"guides/assembly", `filter directly behind them .{0,300} 4\. Fit the regulator, .{0,40}after the filter .{0,40}arrow along the flow`, "the order of filter and regulator"},
	{"guides/filter", `before a regulator and everything else`, "the order of filter and regulator"},
	{"guides/filter", `Before a regulator, gauges see all`, "the scale of gauges"},
	{"guides/layout", `1 kg`, "the weight of water"},
	{"guides/layout", `owner .{0,40}engineer`, "what a balcony carries"},
	{"guides/layout", `tips`, "raised tanks"},
	{"guides/media", `stone wool .{0,40}alkaline`, "stone wool is soaked in acidified feed"},
	{"guides/weather", `heat illness`, "work in a tunnel"},
	{"cautions/backflow", `"not for drinking"`, "the feed tank is labelled"},
	{"cautions/chemicals", `neither scented nor thickened`, "which bleach"},
	{"cautions/drowning", `never climb into a tank, a well or a cistern`, "air in tanks can kill"},
	{"cautions/electricity", `reduces the risk .{0,40}does not remove it`, "what ground-fault protection does"},
	{"cautions/electricity", `gets a shock`, "what to do on a shock"},
	{"cautions/heat", `70 °C \(158 °F\).{0,60}in about one`, "water from a flask burns"},
	{"cautions/pressure", `compressed air`, "no test with air"},
	{"cautions/lifting", `engineer`, "what a balcony carries"},
	{"cautions/tunnel", `emergency`, "heat illness"},
}

func TestGuidesSay(t *testing.T) {
	all := authored(t)
	for _, r := range required {
		if !regexp.MustCompile("(?i)" + r.pattern).MatchString(all[r.file+".md"]) {
			t.Errorf("content/%s.md lacks %q (%s)", r.file, r.pattern, r.why)
		}
	}
}

// Each file of a caution has a row that says where and for which plans it
// stands, and each row a file.
func TestEveryCautionHasARowAndAFile(t *testing.T) {
	rows := map[string]bool{}
	for _, c := range care.Catalogue {
		rows[c.Name] = true
		if _, err := os.Stat("../content/cautions/" + c.Name + ".md"); err != nil {
			t.Errorf("wasm/grower/care/catalogue.go has a row %s, and content/cautions/%s.md is not there", c.Name, c.Name)
		}
	}
	files, err := fs.Glob(os.DirFS("../content"), "cautions/*.md")
	if err != nil || len(files) == 0 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, f := range files {
		if name := strings.TrimSuffix(strings.TrimPrefix(f, "cautions/"), ".md"); !rows[name] {
			t.Errorf("content/%s has no row in wasm/grower/plan/cautions.go", f)
		}
	}
}

// A caution comes before the step that it is for: who works along a guide must
// have read it by then.
func TestCautionsComeBeforeTheSteps(t *testing.T) {
	all := authored(t)
	for _, c := range []struct{ guide, caution, step string }{
		{"pump-curve", "electricity", "Fit a pressure gauge to the outlet"},
		{"pump-curve", "pressure", "Fit a pressure gauge to the outlet"},
		{"pump-curve", "electricity", "let the hose run into a bucket"},
		{"pump-curve", "backflow", "Screw a gauge on the tap"},
		{"assembly", "blades", "tubing cutter"},
		{"assembly", "electricity", "Set the pump where it will stay"},
		{"assembly", "pressure", "Run water with all the ends open"},
		{"assembly", "heat", "Hold the end in hot water"},
		{"flushing", "electricity", "Open the end of one row"},
		{"flushing", "chemicals", "household bleach"},
		{"flushing", "drowning", "Wash the tank"},
		{"season", "chemicals", "Clean the lines"},
		{"season", "electricity", "Unplug the pump"},
		{"media", "dust", "Sow one seed"},
		{"media", "chemicals", "Soak it before anything grows"},
		{"media", "lifting", "Lay the slabs dry"},
		{"filter", "pressure", "Open the filter"},
		{"layout", "raised", "tips"},
		{"weather", "tunnel", "Heat illness"},
		{"electricity", "electricity", "test button"},
	} {
		_, body, _ := strings.Cut(strings.TrimPrefix(all["guides/"+c.guide+".md"], "---"), " --- ")
		box, step := strings.Index(body, "[!CAUTION] "+c.caution+" "), strings.Index(body, c.step)
		if box < 0 || step < 0 || step < box {
			t.Errorf("%s: the caution %s stands at %d and %q at %d", c.guide, c.caution, box, c.step, step)
		}
	}
}

// The end of the season has one order, in both guides that tell it.
func TestOneOrderOfCleaning(t *testing.T) {
	all := authored(t)
	steps := []string{
		`\d\. [^.]*take out (the )?plants`, `\d\. wash the tank`, `\d\. flush every`, `\d\. clean the lines`, `\d\. unplug the pump`, `\d\. open every end`,
		`\d\. open the filter`, `\d\. disinfect`, `\d\. empty the tank`,
	}
	for name, heading := range map[string]string{"flushing": "## End of season", "season": "## Clean-down"} {
		_, part, found := strings.Cut(all["guides/"+name+".md"], heading)
		part, _, _ = strings.Cut(part, " ## ")
		for _, s := range steps {
			at := regexp.MustCompile("(?i)" + s).FindStringIndex(part)
			if !found || at == nil {
				t.Errorf("%s: %q does not follow the steps before it", name, s)
				break
			}
			part = part[at[1]:]
		}
	}
}

// The bleach that the guide measures out has the strength that it names.
func TestBleachInNumbers(t *testing.T) {
	text := authored(t)["guides/flushing.md"]
	for _, c := range []struct {
		says     string
		strength float64 // of the bottle
		bleach   float64 // mL
		water    float64 // mL
		low, up  float64 // mg/L
	}{
		{"38 mL (1.3 fl oz)", 0.0525, 38, 100e3, 19.5, 20.5},
		{"24 mL (0.8 fl oz)", 0.0825, 24, 100e3, 19.5, 20.5},
		{"one part of household bleach of 5.25 % to nine parts of water", 0.0525, 1, 9, 5200, 5300},
	} {
		got := chlorine.Diluted(c.strength, c.water/c.bleach) * 1e6
		if !strings.Contains(strings.ToLower(text), strings.ToLower(c.says)) || got < c.low || got > c.up {
			t.Errorf("%q: %.1f mg/L of chlorine, want %g to %g, and the guide to say so", c.says, got, c.low, c.up)
		}
	}
}

// Whatever a guide names as its standing is one of four, or invented.
func TestSourcesNameTheirStanding(t *testing.T) {
	standing := regexp.MustCompile(`\((published|from memory|common practice, no source|derived|invented)\)`)
	names, _ := fs.Glob(os.DirFS("../content/guides"), "*.md")
	for _, name := range names {
		b, err := os.ReadFile("../content/guides/" + name)
		if err != nil {
			t.Fatal(err)
		}
		head, _, _ := strings.Cut(strings.TrimPrefix(string(b), "---\n"), "\n---\n")
		for _, line := range strings.Split(head, "\n") {
			if strings.HasPrefix(line, "- ") && !standing.MatchString(line) {
				t.Errorf("content/guides/%s: %q has no standing", path.Base(name), line)
			}
		}
	}
}
