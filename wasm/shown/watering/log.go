package watering

import (
	"strconv"

	"evenrow/wasm/ground/words"
	"evenrow/wasm/grower/plan"
	"evenrow/wasm/shown/block"
	"evenrow/wasm/year/drain"
)

// Buttons of the log, by what they send.
const (
	LogAdd    = "log-add"
	LogRemove = "log-remove." // and the row's number
	LogCSV    = "log-csv"
	LogOpen   = "log-open" // sent by the script for what the device has kept
)

// Log is the content of the form in which the drain is noted, with rows rows.
// hint is what stands below a row; see [Hints].
func Log(get func(path string) string, rows int, hint func(row int) string) string {
	w := logForm{&block.Writer{}}
	w.HTML(`<p>One row a day, of one slab: the share of its water that drained. <span class="if-kept">It is kept on this device, not in the link.</span><b class="if-lost">It is not kept on this device: save it as a table before you close the page.</b></p>`)
	for row := 1; row <= rows; row++ {
		w.HTML(`<fieldset class="log"><legend>Day `).Num(row).HTML(`</legend>`)
		w.box(drain.Path(row, drain.DayName), "Date", "", "text", get)
		w.sky(drain.Path(row, drain.SkyName), get)
		for i := range drain.Columns {
			c := &drain.Columns[i]
			w.box(drain.Path(row, c.Name), words.Say(c.Label), c.Unit, "decimal", get)
		}
		if !drain.Blank(get, row) {
			w.do(LogRemove+strconv.Itoa(row), "Remove", " day "+strconv.Itoa(row))
		}
		w.HTML(`<p class="log__note field__hint"`).Attr("id", HintName(row)).HTML(`>`).Text(hint(row)).HTML(`</p></fieldset>`)
	}
	w.HTML(`<p class="record__do">`)
	if rows < drain.MaxRows {
		w.do(LogAdd, "Add a day", "")
	}
	w.do(LogCSV, "Save as a table", "")
	w.HTML(`</p>`)
	return w.String()
}

// A logForm is the form of the log on its way to the page.
type logForm struct{ *block.Writer }

// HintName is the id of what stands below a row of the log.
func HintName(row int) string { return "log-set-" + strconv.Itoa(row) }

// sky writes the choice of a day's weather.
func (w logForm) sky(path string, get func(string) string) {
	w.HTML(`<label>Weather <select`).Attr("id", "f-"+path).Attr("name", path).HTML(` autocomplete="off">`)
	for sky, code := range drain.SkyNames {
		w.HTML(`<option`).Attr("value", code)
		if drain.SkyOf(get(path)) == drain.Sky(sky) {
			w.HTML(` selected`)
		}
		w.HTML(`>`).Text(orNot(code)).HTML(`</option>`)
	}
	w.HTML(`</select></label>`)
}

func orNot(code string) string {
	if code == "" {
		return "not noted"
	}
	return code
}

// do writes a button of the log.
func (w logForm) do(value, name, hidden string) {
	w.HTML(`<button class="button"`).Attr("name", plan.ActionName).Attr("value", value).HTML(`>`).Text(name)
	if hidden != "" {
		w.HTML(`<span class="out">`).Text(hidden).HTML(`</span>`)
	}
	w.HTML(`</button> `)
}

// box writes a box of the log.
func (w logForm) box(path, label, unit string, keyboard block.Markup, get func(string) string) {
	w.HTML(`<label>`).Text(label)
	if unit != "" {
		w.Text(", " + unit)
	}
	w.HTML(` <input`).Attr("id", "f-"+path).Attr("name", path).Attr("value", get(path)).HTML(` inputmode="`).HTML(keyboard).HTML(`"`).Attr("aria-describedby", "e-"+path).HTML(` autocomplete="off" spellcheck="false"`)
	if keyboard == "text" {
		w.HTML(` placeholder="15 July"`)
	}
	w.HTML(`></label><p class="field__error"`).Attr("id", "e-"+path).HTML(` hidden></p>`)
}

// Slips are boxes of the log that cannot be read, as errors of a form.
func Slips(slips []drain.Slip) []plan.Error {
	var list []plan.Error
	for _, e := range slips {
		list = append(list, plan.Error{Path: e.Path, Text: e.Problem.Of(slipName(e.Path))})
	}
	return list
}

// slipName names a box of the log.
func slipName(path string) string {
	var row, name string
	for i := len("log."); i < len(path); i++ {
		if path[i] == '.' {
			row, name = path[len("log."):i], path[i+1:]
		}
	}
	label := words.Say("date")
	for i := range drain.Columns {
		if drain.Columns[i].Name == name {
			label = words.Say(drain.Columns[i].Label)
		}
	}
	return words.Say("Day {row}: {label}", row, label)
}
