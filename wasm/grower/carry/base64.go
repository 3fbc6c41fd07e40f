package carry

// The alphabet of base64url (RFC 4648, section 5), which needs no escaping in
// a link.
const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"

// toBase64 appends data to dst in base64url without padding.
func toBase64(dst, data []byte) []byte {
	var bits, n uint
	for _, c := range data {
		bits = bits<<8 | uint(c)
		for n += 8; n >= 6; n -= 6 {
			dst = append(dst, alphabet[bits>>(n-6)&63])
		}
	}
	if n > 0 {
		dst = append(dst, alphabet[bits<<(6-n)&63])
	}
	return dst
}

// fromBase64 is the inverse of toBase64. It refuses what toBase64 never
// writes: other characters, and bits that belong to no byte.
func fromBase64(text string) ([]byte, bool) {
	data := make([]byte, 0, len(text)*3/4)
	var bits, n uint
	for i := range len(text) {
		v := digit(text[i])
		if v < 0 {
			return nil, false
		}
		bits = bits<<6 | uint(v)
		if n += 6; n >= 8 {
			n -= 8
			data = append(data, byte(bits>>n))
		}
	}
	return data, n < 6 && bits&(1<<n-1) == 0
}

// digit returns the value of a base64url character, or -1.
func digit(c byte) int {
	switch {
	case 'A' <= c && c <= 'Z':
		return int(c - 'A')
	case 'a' <= c && c <= 'z':
		return int(c-'a') + 26
	case '0' <= c && c <= '9':
		return int(c-'0') + 52
	case c == '-':
		return 62
	case c == '_':
		return 63
	}
	return -1
}
