package carry

import (
	"math"
	"strings"
	"testing"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
)

// A zero has no sign, however it was written.
func TestNoNegativeZero(t *testing.T) {
	f := plan.FieldNamed("rows", "height")
	for _, zero := range []string{"-0", "-0.0e3", `"SI -0"`, "0"} {
		p, errs := ReadJSON([]byte(`{"format": "evenrow plan 1", "rows": [{"height": ` + zero + `}]}`))
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		if v := *f.Number(p, 0); v != 0 || math.Signbit(v) {
			t.Errorf("a height of %s is %g", zero, v)
		}
	}
	// In a link: a map of one list of rows, of one record, of one float64.
	section := plan.SectionNamed("rows")
	data := writeInt([]byte{mapping<<5 | 1}, int64(section.ID))
	data = append(data, array<<5|1, mapping<<5|1)
	data = writeDouble(writeInt(data, int64(f.ID)), math.Copysign(0, -1))
	p, problem := decode(data)
	if problem != nil {
		t.Fatal(problem.Of("the link"))
	}
	if v := *f.Number(p, 0); v != 0 || math.Signbit(v) {
		t.Errorf("a height of -0 in a link is %g", v)
	}
}

// Numbers that no float64 holds, and such as are none, are refused in both of
// their ways to be written.
func TestNumbersThatAreNone(t *testing.T) {
	for value, want := range map[string]string{
		"1e999": "must be a smaller number", "-1e999": "must be a smaller number", "1e308": "must be",
		`"SI 1e999"`: "must be a number", `"SI Inf"`: "must be a number", `"SI NaN"`: "must be a number", `"SI x"`: "must be a number", `"SI"`: "must be a number, without quotes", `"0.5"`: "must be a number, without quotes", `true`: "must be a number, without quotes",
	} {
		p, errs := ReadJSON([]byte(`{"format": "evenrow plan 1", "rows": [{"height": ` + value + `}]}`))
		if p != nil || len(errs) != 1 || errs[0].Path != "rows.1.height" || !strings.Contains(errs[0].Text, want) {
			t.Errorf("a height of %s: %v, want one error that it %s", value, errs, want)
		}
	}
}

// The longest file and the longest link are read; versions to come are told
// from what is no version.
func TestLongestAndVersions(t *testing.T) {
	file := `{"format": "evenrow plan 1"}`
	if _, errs := ReadJSON([]byte(file + strings.Repeat(" ", MaxFile-len(file)))); len(errs) > 0 {
		t.Errorf("a file of the greatest size: %v", errs)
	}
	link := Link(plan.Default())
	for link, want := range map[string]*words.Remark{
		"1" + strings.Repeat("A", MaxLink-1): damaged,
		"9" + link[1:]:                       newer, "2" + link[1:]: newer,
		":" + link[1:]: damaged, "0" + link[1:]: damaged, "A" + link[1:]: damaged,
		"1" + link[1:2] + "=" + link[3:]: damaged,
	} {
		if _, err := ReadLink(link); err == nil || err.Error() != want.Of("The link") {
			t.Errorf("%.20s…: %v, want %s", link, err, want.Of("The link"))
		}
	}
}

// Whole numbers beyond what an int of 32 bits holds are refused, and so are
// sections and fields that do not rise.
func TestLinksOfOddNumbers(t *testing.T) {
	rows, plants := plan.SectionNamed("rows"), plan.FieldNamed("rows", "plants")
	spacing := plan.FieldNamed("rows", "spacing")
	record := func(ids ...int64) []byte {
		data := append(writeInt([]byte{mapping<<5 | 1}, int64(rows.ID)), array<<5|1, mapping<<5|byte(len(ids)))
		for _, id := range ids {
			data = writeInt(writeInt(data, id), 1)
		}
		return data
	}
	one := func(n int64) []byte {
		data := append(writeInt([]byte{mapping<<5 | 1}, int64(rows.ID)), array<<5|1, mapping<<5|1)
		return writeInt(writeInt(data, int64(plants.ID)), n)
	}
	low, high := min(int64(plants.ID), int64(spacing.ID)), max(int64(plants.ID), int64(spacing.ID))
	for _, c := range []struct {
		name string
		data []byte
		want *words.Remark
	}{
		{"20 plants", one(20), nil}, {"a thousand million", one(1e9), nil}, {"one more", one(1e9 + 1), damaged}, {"less than none by as many", one(-1e9), nil}, {"and one", one(-1e9 - 1), damaged},
		{"fields that rise", record(low, high), nil}, {"that fall", record(high, low), damaged}, {"twice the same", record(low, low), damaged},
		{"more behind", append(one(20), 0), damaged}, {"less than said", one(20)[:4], damaged},
	} {
		if _, got := decode(c.data); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
