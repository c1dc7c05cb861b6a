package workbench

import (
	"crypto/rand"
	"crypto/subtle"
	"net"
	"net/http"
	"slices"
	"strings"
)

// A door lets in requests of this machine's own page and no others. Three things are asked
// of each: that it was sent to this address and not to another name that leads here; that
// no other page sent it; and that it bears the key of this start, as a cookie.
type door struct {
	hosts  []string
	key    string
	inside http.Handler
}

// hostsOf are the names by which a browser may call the host.
func hostsOf(host string) []string {
	_, port, err := net.SplitHostPort(host)
	if err != nil {
		return []string{host}
	}
	return []string{host, "localhost:" + port}
}

// largestBody is the most that a request may bring: a picture.
const largestBody = 24 << 20

// cookie is the name of the one cookie. Cookies know no ports, so the name does.
func (d *door) cookie() string {
	_, port, _ := net.SplitHostPort(d.hosts[0])
	return "tallyfold-" + port
}

func (d *door) ServeHTTP(out http.ResponseWriter, in *http.Request) {
	nonce := rand.Text()
	guard(out.Header(), nonce)
	switch {
	case !slices.Contains(d.hosts, in.Host):
		turnAway(out, "This address is not the workbench's own.")
	case d.fromElsewhere(in):
		turnAway(out, "Another page asked for this, so it was not done.")
	case in.URL.Path == "/open" && in.Method == http.MethodGet && d.holdsKey(in.URL.Query().Get("key")):
		http.SetCookie(out, &http.Cookie{Name: d.cookie(), Value: d.key, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
		http.Redirect(out, in, "/", http.StatusSeeOther)
	case !d.admitted(in):
		turnAway(out, "The workbench was started anew, or this is another browser. Open the address that “tallyfold workbench” printed when it began.")
	default:
		in.Body = http.MaxBytesReader(out, in.Body, largestBody)
		d.inside.ServeHTTP(out, in.WithContext(withNonce(in.Context(), nonce)))
	}
}

// fromElsewhere says whether another page than ours sent a request, as far as browsers tell
// (Fetch Metadata, and RFC 6454 for Origin). What changes something must say where it is
// from.
func (d *door) fromElsewhere(in *http.Request) bool {
	site := in.Header.Get("Sec-Fetch-Site")
	if site != "" && site != "same-origin" && site != "none" {
		return true
	}
	origin := in.Header.Get("Origin")
	if origin == "" {
		return in.Method != http.MethodGet && in.Method != http.MethodHead
	}
	host, ours := strings.CutPrefix(origin, "http://")
	return !ours || host != in.Host
}

func (d *door) admitted(in *http.Request) bool {
	cookie, err := in.Cookie(d.cookie())
	return err == nil && d.holdsKey(cookie.Value)
}

func (d *door) holdsKey(key string) bool {
	return subtle.ConstantTimeCompare([]byte(key), []byte(d.key)) == 1
}

// guard sets what every answer says to the browser: nothing from outside, no script but
// ours, no frame around us. The editor component writes its styles under the nonce.
func guard(header http.Header, nonce string) {
	header.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self' 'nonce-"+nonce+"'; img-src 'self' blob: data:; "+
		"font-src 'self'; connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'")
	header.Set("X-Content-Type-Options", "nosniff")
	header.Set("Referrer-Policy", "same-origin")
	header.Set("Cross-Origin-Opener-Policy", "same-origin")
	header.Set("Cross-Origin-Resource-Policy", "same-origin")
	header.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
	header.Set("Cache-Control", "no-store")
}

// guardMade is for the booklet inside our page: a document with its styles, faces and
// pictures inside and no script, which only our page may frame.
func guardMade(header http.Header) {
	header.Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'; "+
		"frame-ancestors 'self'")
}

func turnAway(out http.ResponseWriter, why string) {
	out.Header().Set("Content-Type", "text/plain; charset=utf-8")
	out.WriteHeader(http.StatusForbidden)
	_, _ = out.Write([]byte(why + "\n"))
}
