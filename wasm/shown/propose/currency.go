package propose

import "strings"

// euro are the regions that pay in euros, and currencies those that pay in others, each before its
// currency: codes of ISO 3166-1 and ISO 4217, from memory. One that is not here has no currency
// proposed.
const (
	euro       = "ADATBEBGCYDEEEESFIFRGRHRIEITLTLULVMCMEMTNLPTSISKSMVAXK"
	currencies = "USUSDPRUSDECUSDSVUSDCACADMXMXNGTGTQCRCRCDODOPJMJMDTTTTDCOCOPPEPENCLCLPARARSBRBRLUYUYUPYPYGBOBOBGBGBPCHCHFLICHFNONOKSESEK" +
		"DKDKKISISKPLPLNCZCZKHUHUFRORONRSRSDALALLMKMKDBABAMMDMDLUAUAHTRTRYGEGELAMAMDAZAZNILILSJOJODLBLBPIQIQDAEAEDSASARQAQARKWKWD" +
		"OMOMRBHBHDEGEGPMAMADTNTNDDZDZDKEKESTZTZSUGUGXRWRWFETETBNGNGNGHGHSSNXOFCIXOFCMXAFZMZMWZAZARININRPKPKRBDBDTLKLKRNPNPRTHTHB" +
		"VNVNDMYMYRSGSGDIDIDRPHPHPKZKZTUZUZSCNCNYHKHKDTWTWDKRKRWJPJPYAUAUDNZNZD"
)

// Currency is what is paid with where a reader's languages say that the reader is, as a browser
// lists them: "de-AT,de,en". The first that names a region counts; empty where none does.
func Currency(languages string) string {
	for _, tag := range strings.Split(languages, ",") {
		tag, _, _ = strings.Cut(tag, ";")
		parts := strings.Split(strings.TrimSpace(tag), "-")
		for _, part := range parts[1:] {
			if len(part) == 1 {
				break // what follows is no region
			}
			if len(part) != 2 {
				continue
			}
			region := string([]byte{part[0] &^ 0x20, part[1] &^ 0x20})
			if of := currencyOf(region); of != "" {
				return of
			}
			break
		}
	}
	return ""
}

// currencyOf is the currency of a region.
func currencyOf(region string) string {
	for i := 0; i < len(euro); i += 2 {
		if euro[i:i+2] == region {
			return "EUR"
		}
	}
	for i := 0; i < len(currencies); i += 5 {
		if currencies[i:i+2] == region {
			return currencies[i+2 : i+5]
		}
	}
	return ""
}
