package ledger

import "tallyfold/kit/quantity"

// An Account is the ledger as programs and spreadsheets read it: plain values,
// names instead of keys, exact amounts in base units.
type Account struct {
	Kit        string            `json:"kit"`
	Edition    int               `json:"edition,omitempty"`
	Things     []AccountThing    `json:"things"`
	Movements  []AccountMovement `json:"movements"`
	Containers []AccountFilling  `json:"containers"`
	Vessels    []AccountVessel   `json:"vessels"`
	Solutions  []AccountSolution `json:"solutions,omitempty"`
	Cut        []AccountCutting  `json:"cut,omitempty"`
	Answers    []AccountAnswer   `json:"answers"`
}

// An AccountAnswer is one uncertain figure told three ways, ends in base units.
type AccountAnswer struct {
	About      string  `json:"about"`
	Sort       string  `json:"sort"`
	Unit       string  `json:"unit"`
	Written    string  `json:"asWritten"`
	Lowest     string  `json:"lowest"`
	Highest    string  `json:"highest"`
	LikelyLow  float64 `json:"likelyLow"`
	LikelyHigh float64 `json:"likelyHigh"`
	// How is how the likely range was found: "propagation" or "draws".
	How      string `json:"how"`
	Sentence string `json:"sentence"`
}

// An AccountSolution is how strong a solution is, and what its solvent takes up.
type AccountSolution struct {
	Run      string        `json:"run,omitempty"`
	Step     int           `json:"step"`
	Vessel   string        `json:"vessel"`
	Solute   string        `json:"solute"`
	Solvent  string        `json:"solvent"`
	Strength AccountFigure `json:"strength"`
	Takes    AccountFigure `json:"takesUp"`
}

// An AccountCutting is how many pieces of a sheet find a place.
type AccountCutting struct {
	Component  string `json:"component"`
	Sheets     int    `json:"sheets"`
	Wanted     int    `json:"wanted"`
	Placed     int    `json:"placed"`
	CannotTell string `json:"cannotTell,omitempty"`
}

// An AccountFigure is one figure: its exact value in base units, the ends of the
// worst case where it has a tolerance, how a person reads it, and its sum. A
// figure that cannot be told has no value and says why.
type AccountFigure struct {
	Value      string `json:"value,omitempty"`
	Unit       string `json:"unit"`
	Lowest     string `json:"lowest,omitempty"`
	Highest    string `json:"highest,omitempty"`
	Shown      string `json:"shown"`
	Sum        string `json:"sum,omitempty"`
	CannotTell string `json:"cannotTell,omitempty"`
}

// An AccountThing is packed against used for a component or household item.
type AccountThing struct {
	Key    string         `json:"key"`
	Name   string         `json:"name"`
	Letter string         `json:"letter,omitempty"`
	Packed *AccountFigure `json:"packed,omitempty"`
	Spare  *AccountFigure `json:"spare,omitempty"`
	Used   AccountFigure  `json:"used"`
	Left   *AccountFigure `json:"left,omitempty"`
}

// An AccountMovement is one entry of the ledger.
type AccountMovement struct {
	Run    string        `json:"run,omitempty"`
	Step   int           `json:"step"`
	Title  string        `json:"title"`
	Move   string        `json:"move"`
	Thing  string        `json:"thing"`
	Amount AccountFigure `json:"amount"`
	From   string        `json:"from,omitempty"`
	To     string        `json:"to,omitempty"`
}

// An AccountFilling is a group of containers filled alike.
type AccountFilling struct {
	Run       string        `json:"run,omitempty"`
	Container string        `json:"container"`
	First     int           `json:"first"`
	Count     int           `json:"count"`
	Mass      AccountFigure `json:"mass"`
	Volume    AccountFigure `json:"volume"`
	Room      AccountFigure `json:"room"`
	Free      AccountFigure `json:"free"`
	Height    AccountFigure `json:"heightFromBase"`
	FromRim   AccountFigure `json:"heightFromRim"`
	SetHeight AccountFigure `json:"heightWhenSet"`
	Dried     AccountFigure `json:"massWhenDry"`
	Parts     []AccountPart `json:"parts"`
	Inserts   []string      `json:"inserts,omitempty"`
}

// An AccountVessel is what a vessel holds after a step.
type AccountVessel struct {
	Run    string        `json:"run,omitempty"`
	Step   int           `json:"step"`
	Vessel string        `json:"vessel"`
	Mass   AccountFigure `json:"mass"`
	Parts  []AccountPart `json:"parts"`
}

// An AccountPart is one thing's part of a mixture.
type AccountPart struct {
	Thing  string        `json:"thing"`
	Amount AccountFigure `json:"amount"`
	Share  AccountFigure `json:"share"`
}

// Account gives the ledger in plain values.
func (l *Ledger) Account() Account {
	account := Account{Kit: l.Kit.Name.Value, Edition: l.Kit.Edition.Value}
	for _, balances := range [][]*Balance{l.Balances, l.Household} {
		for _, b := range balances {
			account.Things = append(account.Things, l.thing(b))
		}
	}
	for _, e := range l.Entries {
		account.Movements = append(account.Movements, AccountMovement{
			Run: e.Run.Name.Value, Step: e.Step.Number, Title: e.Step.Title, Move: string(e.Move),
			Thing: l.Kit.Called(e.Thing), Amount: accounted(e.Amount), From: l.called(e.From), To: l.called(e.To),
		})
	}
	for _, f := range l.Fillings {
		account.Containers = append(account.Containers, l.filling(f))
	}
	for _, s := range l.Stages {
		for _, c := range s.Vessels {
			account.Vessels = append(account.Vessels, AccountVessel{
				Run: s.Run.Name.Value, Step: s.Step.Number, Vessel: l.Kit.Called(c.Vessel),
				Mass: accounted(c.Mass()), Parts: l.parts(&c),
			})
		}
	}
	l.accountRest(&account)
	return account
}

func (l *Ledger) accountRest(account *Account) {
	for _, s := range l.Solutions() {
		account.Solutions = append(account.Solutions, AccountSolution{
			Run: s.Run.Name.Value, Step: s.Step.Number, Vessel: l.Kit.Called(s.Vessel), Solute: s.Solute.String(),
			Solvent: l.Kit.Called(s.Solvent), Strength: accounted(s.Strength), Takes: accounted(s.Takes),
		})
	}
	for _, c := range l.Cuttings {
		account.Cut = append(account.Cut, AccountCutting{c.Component.String(), c.Sheets, c.Wanted(), c.Placed, c.Unknown})
	}
	account.Answers = []AccountAnswer{}
	for _, a := range l.Answers() {
		account.Answers = append(account.Answers, AccountAnswer{
			About: a.About, Sort: string(a.Sort), Unit: baseUnit(a.Figure), Written: a.Figure.Value().String(),
			Lowest: a.Low.String(), Highest: a.High.String(), LikelyLow: a.LikelyLow, LikelyHigh: a.LikelyHigh,
			How: a.How(), Sentence: a.Sentence(),
		})
	}
}

func (l *Ledger) thing(b *Balance) AccountThing {
	t := AccountThing{Key: b.Thing, Name: l.Kit.Called(b.Thing), Used: accounted(b.Used)}
	if c := l.Kit.Component(b.Thing); c != nil {
		t.Letter = c.Letter
	}
	t.Packed, t.Spare, t.Left = optional(b.Packed), optional(b.Spare), optional(b.Left)
	return t
}

func (l *Ledger) filling(f *Filling) AccountFilling {
	filling := AccountFilling{
		Run: f.Run.Name.Value, Container: f.Container.String(), First: f.First, Count: f.Count,
		Mass: accounted(f.Mass()), Volume: accounted(f.Volume()),
		Room: accounted(f.Room()), Free: accounted(f.Free()), Height: accounted(f.Height()),
		FromRim: accounted(f.FromRim()), SetHeight: accounted(f.SetHeight()), Dried: accounted(f.Dried()), Parts: l.parts(&f.Contents),
	}
	for _, insert := range f.Inserts {
		filling.Inserts = append(filling.Inserts, insert.Component.String())
	}
	return filling
}

func (l *Ledger) parts(c *Contents) []AccountPart {
	list := []AccountPart{}
	for _, p := range c.Parts() {
		list = append(list, AccountPart{l.Kit.Called(p.Thing), accounted(p.Amount), accounted(c.Share(p.Thing))})
	}
	return list
}

// called names the place an entry goes from or to; "" is the customer's hand.
func (l *Ledger) called(key string) string {
	if key == "" {
		return ""
	}
	return l.Kit.Called(key)
}

func optional(f *Figure) *AccountFigure {
	if f == nil {
		return nil
	}
	told := accounted(f)
	return &told
}

func accounted(f *Figure) AccountFigure {
	if !f.Known() {
		return AccountFigure{Unit: baseUnit(f), Shown: f.Show(), CannotTell: f.Why()}
	}
	told := AccountFigure{Value: f.Value().String(), Unit: baseUnit(f), Shown: f.Show(), Sum: f.Sum()}
	if low, high := f.Worst(); low.Cmp(high) != 0 {
		told.Lowest, told.Highest = low.String(), high.String()
	}
	return told
}

// baseUnit names the unit that values are reckoned in.
func baseUnit(f *Figure) string {
	if f == nil {
		return ""
	}
	return map[quantity.Dimension]string{
		quantity.Mass: "g", quantity.Volume: "mL", quantity.Count: "1", quantity.Length: "mm", quantity.Area: "mm²",
		quantity.Temperature: "°C", quantity.Duration: "s", quantity.Share: "1", quantity.Density: "g/mL",
		quantity.Proportion: "1", quantity.VolumePerMass: "mL/g",
	}[f.Dimension]
}
