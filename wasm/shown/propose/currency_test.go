package propose

import (
	"testing"

	"evenrow/wasm/ground/work"
	"evenrow/wasm/grower/plan"
)

// Where a browser's languages are spoken says what is paid with. The rows are gathered apart from
// the list: from memory, of ISO 3166-1 and ISO 4217.
func TestCurrency(t *testing.T) {
	for languages, want := range map[string]string{
		"de-AT,de,en": "EUR", "en-US": "USD", "en-us": "USD", "en-GB,en;q=0.9": "GBP", "de-CH": "CHF", "pt-BR": "BRL", "pt-PT": "EUR",
		"zh-Hans-CN": "CNY", "zh-Hant-TW,zh": "TWD", "sr-Latn-RS": "RSD", "ja-JP": "JPY", "en-IN": "INR", "sv-SE": "SEK", "fr-CA": "CAD", "es-419": "",
		"de,en-NZ": "NZD", "en": "", "": "", "de-u-co-phonebk": "", "de-DE-u-co-phonebk": "EUR", "en-x-us": "", "xx-ZZ,tr-TR": "TRY", "-US": "USD",
		"en-UR": "", "en-SD": "", "en-EU": "", ",,,": "", "en-\x80\x81": "", "uk-UA": "UAH", "ro-RO": "RON", "pl-PL": "PLN", "tl-PH": "PHP", "sw-KE": "KES", "he-IL": "ILS",
	} {
		if got := Currency(languages); got != want {
			t.Errorf("%q pays with %q, want %q", languages, got, want)
		}
	}
	f := plan.FieldNamed("prices", "currency")
	for i := 0; i < len(currencies); i += 5 {
		p := plan.Default()
		region := currencies[i : i+2]
		if p.Prices.Currency = currencyOf(region); len(p.Prices.Currency) != 3 || p.Prices.Currency != currencies[i+2:i+5] || f.Problem(p, 0) != nil {
			t.Errorf("%s pays with %q", region, p.Prices.Currency)
		}
	}
}

// A first plan has the currency of the place, as something assumed. What a grower has written in
// the plan before stays, and so does what was said of parts.
func TestCurrencyOfAProposal(t *testing.T) {
	a := Empty(0)
	p, _ := Of(work.New(Units, nil), a, Known{Currency: "NOK"})
	f := plan.FieldNamed("prices", "currency")
	if p.Prices.Currency != "NOK" || p.Origin(f, 0) != plan.Assumed || len(p.Check()) > 0 {
		t.Errorf("%q, %v", p.Prices.Currency, p.Origin(f, 0))
	}
	p.Prices.Currency = "kr"
	p.SetOrigin(f, 0, plan.Typed)
	p.Bought = []plan.Bought{{Part: "pump", Price: 12}, {Part: "stake", Price: plan.Unset, Have: 3}}
	for i := range p.Bought {
		p.SetOrigin(plan.FieldNamed("bought", "price"), i, plan.Typed)
	}
	q, _ := Of(work.New(Units, nil), a, Known{Currency: "NOK", Before: p})
	if q.Prices.Currency != "kr" || q.Origin(f, 0) != plan.Typed {
		t.Errorf("it became %q, %v", q.Prices.Currency, q.Origin(f, 0))
	}
	if len(q.Bought) != 2 || q.Bought[0] != p.Bought[0] || q.Bought[1] != p.Bought[1] || q.Origin(plan.FieldNamed("bought", "price"), 0) != plan.Typed {
		t.Errorf("of the parts is left %+v", q.Bought)
	}
}
