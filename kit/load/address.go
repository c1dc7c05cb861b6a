package load

import (
	"regexp"

	"tallyfold/kit"
)

// addressForm is an address on the web (RFC 9110, 4.2; RFC 3986) as one types it: http or
// https, a host, and then printable letters of ASCII, which print, read out and scan alike
// everywhere. The JSON Schema has the same form.
const addressForm = `^[Hh][Tt][Tt][Pp][Ss]?://[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?(?::[0-9]{1,5})?(?:[/?#][!-~]*)?$`

// longestAddress is, in letters, what still makes a code that a telephone reads from
// paper at 26 mm: 106 letters make 41 modules a side at level M (ISO/IEC 18004, table 7,
// from memory), each then half a millimetre with the room around.
const longestAddress = 106

var address = regexp.MustCompile(addressForm)

// addressOf reads the address of a page.
func addressOf[T any](key, expected, example string, at func(*T) *kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Address}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !v.isText() || !address.MatchString(v.text()) || len(v.text()) > longestAddress {
			r.wrong(v, k)
			return
		}
		*at(into) = said(v, v.text())
	}}
}
