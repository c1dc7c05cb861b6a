package workbench

import (
	"cmp"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/proof"
	"tallyfold/render"
)

// A view is what every page shows; Body is the page's own.
type view struct {
	Nonce, Version, Title string
	// Kit is the kit's place in addresses, "" on the shelf.
	Kit, Called string
	Edition     int
	Page        string
	Tabs        []tab
	Tally       tally
	// Notices stand at the head of the page: what is not saved and why, what others did.
	Notices []notice
	// News is the number of the last change that the page shows.
	News int
	// Stuck: something stands against saving; Notices tell what.
	Stuck bool
	// Unsaved counts the files that are written down and not saved yet.
	Unsaved int
	Undo    undoView
	Body    any
}

type tab struct {
	Name, Title string
	Here        bool
}

type notice struct {
	Words string
	// Trouble: it asks for something to be done.
	Trouble  bool
	Go, Says string
}

type undoView struct {
	File         string
	Undos, Redos int
}

// tally is what is always in sight: whether anything must be fixed, the worst of it, and
// what is packed, used and left.
type tally struct {
	Unread             bool // no kit could be read
	Must, Should, Know int
	CannotCheck        int
	Accepted           int
	Worst              []toldFinding
	Bars               []bar
}

// A bar is one component: how much of its pack is used, in hundredths of the pack.
type bar struct {
	Key, Letter, Name, Says, Go string
	// Used is 0 to 100; Over what goes beyond the pack; Spare what nobody has to use.
	Used, Over, Spare float64
	// Unknown: nothing can be told of it.
	Unknown, Short bool
}

// view gathers what the frame of a page needs. The lock is held.
func (d *desk) view(p page, in *http.Request) view {
	news := d.news.number()
	proof := d.proved()
	v := view{
		Nonce: nonceOf(in.Context()), Version: d.bench.settings.Version, Title: p.title, Kit: d.name, Called: d.base(), Page: p.name,
		Tally: tallyOf(d.name, proof), News: news,
		Stuck: len(d.troubles)+len(d.clashes) > 0,
	}
	if k := proof.Kit; k != nil {
		v.Called, v.Edition = cmp.Or(k.Name.Value, d.base()), k.Edition.Value
	}
	for _, other := range pages {
		if !other.aside {
			v.Tabs = append(v.Tabs, tab{other.name, other.title, other.name == p.name})
		}
	}
	v.Notices = d.notices()
	if drafts, err := d.folder.Drafts(); err == nil {
		v.Unsaved = len(drafts)
	}
	v.Undo = d.undoOf(in)
	return v
}

// notices are told as long as they are true; notes for a while.
func (d *desk) notices() []notice {
	var all []notice
	for _, name := range sortedKeys(d.clashes) {
		all = append(all, notice{
			Words: name + " was changed by another program in the same lines. Both texts are kept; nothing is saved until you choose.", Trouble: true,
			Go: kitPath(d.name) + "/clash?file=" + url.QueryEscape(name), Says: "See both side by side",
		})
	}
	for _, name := range sortedKeys(d.troubles) {
		all = append(all, notice{Words: d.troubles[name], Trouble: true})
	}
	now := d.bench.settings.Now()
	d.notes = slices.DeleteFunc(d.notes, func(n note) bool { return now.Sub(n.when) > noteStays })
	for _, n := range d.notes {
		all = append(all, notice{Words: n.words})
	}
	return all
}

// undoOf says what “Undo” takes back: the file that the page is about, else the one changed
// last.
func (d *desk) undoOf(in *http.Request) undoView {
	name := fileOf(in)
	if name == "" && len(d.changed) > 0 {
		name = d.changed[len(d.changed)-1]
	}
	if name == "" {
		name = "kit.yaml"
	}
	text, err := d.folder.Read(name)
	if err != nil {
		return undoView{File: name}
	}
	return undoView{File: name, Undos: text.Undos, Redos: text.Redos}
}

// tallyOf counts what was found. The worst are those that a maker should look at first.
func tallyOf(kit string, p *proof.Proof) tally {
	t := tally{
		Unread: p.Kit == nil, Must: p.Findings.Count(diag.MustFix), Should: p.Findings.Count(diag.ShouldFix),
		Know: p.Findings.Count(diag.WorthKnowing), Accepted: len(p.Accepted),
	}
	for _, f := range p.Findings {
		if f.CannotCheck() {
			t.CannotCheck++
		}
	}
	t.Worst = worstOf(kit, p.Findings.Sorted())
	if p.Ledger != nil {
		for _, b := range p.Ledger.Balances {
			t.Bars = append(t.Bars, barOf(kit, p, b))
		}
	}
	return t
}

// worstOf tells the first three findings that are no mere consequence of another, each with
// how many are.
func worstOf(kit string, found diag.List) []toldFinding {
	const most = 3
	follow := map[string]int{}
	for _, f := range found {
		if f.Follows && f.Severity != diag.WorthKnowing {
			follow[f.Cause]++
		}
	}
	var worst []toldFinding
	for _, f := range found {
		if len(worst) == most || f.Follows || f.Severity == diag.WorthKnowing {
			continue
		}
		told := tell(kit, f)
		if f.Cause != "" {
			told.With = follow[f.Cause]
			delete(follow, f.Cause) // told once
		}
		worst = append(worst, told)
	}
	return worst
}

// barOf draws one balance. What cannot be told is drawn as unknown, never as empty.
func barOf(kit string, p *proof.Proof, b *ledger.Balance) bar {
	c := p.Kit.Component(b.Thing)
	drawn := bar{Key: b.Thing, Letter: c.Letter, Name: c.String(), Go: addressOfField(kit, "components", b.Thing), Says: render.BalanceSays(b)}
	if !b.Packed.Known() || !b.Used.Known() || b.Packed.Value().Sign() <= 0 {
		drawn.Unknown = true
		return drawn
	}
	part := func(f *ledger.Figure) float64 {
		if !f.Known() {
			return 0
		}
		return 100 * f.Value().Float() / b.Packed.Value().Float()
	}
	used := part(b.Used)
	drawn.Used, drawn.Over, drawn.Spare = min(used, 100), min(max(used-100, 0), 100), min(part(b.Spare), max(100-used, 0))
	drawn.Short = used > 100
	return drawn
}

func sortedKeys[T any](all map[string]T) []string {
	var keys []string
	for key := range all {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// fileOf is the text file that a page was asked for, "" for none.
func fileOf(in *http.Request) string {
	name := in.URL.Query().Get("file")
	if !isText(name) {
		return ""
	}
	return name
}

// isText says whether a name is that of a file which the page edits.
func isText(name string) bool {
	if strings.ContainsAny(name, "/\\") || strings.HasPrefix(name, ".") {
		return false
	}
	return strings.HasSuffix(name, ".md") || strings.HasSuffix(name, ".yaml") || strings.HasSuffix(name, ".txt")
}
