package rules

import "regexp"

// An orderOnBody is a way in which a sentence brings a part of a body and plaster together.
type orderOnBody struct {
	words *regexp.Regexp
	// body and with are the groups of the part of the body and of what may be plaster.
	body, with int
	// holds says whether what may hold plaster counts as it: a hand goes into a tray.
	holds bool
}

const (
	// owners of parts of a body; a clock and a toy have hands and feet as well.
	owners = `(?:child|kid|baby|toddler|boy|girl|son|daughter|friend|partner|person|grown-up|adult|mother|father|someone|somebody|model|wearer|dog|cat|pet)['’]s`
	// whose are words before a part of a body.
	whose = `(?:(?:both|one|the|a|an|your|his|her|their|each|of|this|that|whole|bare|clean|gloved|left|right|other|open|flat|back|side|` + owners + `)\s+)`
	// aBody is a part of a body. A face, a nose or a skin has an owner: things have faces too.
	aBody = `(` + whose + `{0,5}(?:hands?|foot|feet|fingers?|thumbs?|fists?|palms?|arms?|wrists?|elbows?|legs?|knees?|toes?|paws?)|` +
		`(?:(?:your|his|her|their|bare|` + owners + `)\s+)(?:[\w]+\s+)?(?:face|nose|ears?|belly|body|skin)|` + whose + `{0,3}(?:hand|foot|paw)-?prints?)`
	aWord = `(?:[\w'’-]+\s+)`
	dest  = `(` + aWord + `{0,3}[\w'’-]+)`
)

// ordersOnBodies are in English alone.
var ordersOnBodies = []orderOnBody{
	{words: onBodies(`(?:press|push|dip|lay|put|place|lower|hold|sink|immerse|submerge|stamp|pat|stick|set|rest|plunge|bury|keep|leave|slide|poke|make|take)\s+` + aBody + `\s+` + aWord + `{0,2}(?:into|in|inside|under)\s+` + dest), body: 1, with: 2, holds: true},
	{words: onBodies(`(?:press|push|lay|put|place|hold|set|rest|lean)\s+` + aBody + `\s+` + aWord + `{0,2}(?:onto|on|against)\s+` + dest), body: 1, with: 2},
	{words: onBodies(`(?:cast|casts|impression|imprint|print|copy|mould|mold)\s+(?:of\s+)?` + aBody + `\s+` + aWord + `{0,2}(?:into|in|with|from)\s+` + dest), body: 1, with: 2},
	{words: onBodies(`(?:cover|coat|wrap|bury|encase|enclose|smear|surround)\s+` + aBody + `\s+` + aWord + `{0,3}(?:with|in)\s+` + dest), body: 1, with: 2},
	{words: onBodies(`(?:spread|smear|pour|brush|smooth|lay|put|place|wrap|wind|drape|apply|drip|paint|spoon|press)\s+(` + aWord + `{0,5}[\w'’-]+)\s+(?:on|onto|over|round|around|about|to)\s+(?:top\s+of\s+)?` + aBody + `\b`), body: 2, with: 1},
}

func onBodies(words string) *regexp.Regexp { return regexp.MustCompile(`(?i)\b` + words) }

// plasterWords can mean plaster in a kit that has some; keepsOff are what keeps it off. At
// goesOn a sentence goes on to something else. After notTo it says what is not to be done.
var (
	plasterWords = []string{"it", "this", "plaster", "mix", "mixture", "paste", "slurry", "batter", "cast", "layer", "layers", "strip", "strips", "bandage", "bandages", "mould", "mold"}
	keepsOff     = []string{"glove", "gloves", "bag", "pocket", "water", "sink", "sleeve", "sleeves", "film", "jelly", "cream", "soap", "oil", "towel"}
	goesOn       = []string{"and", "then", "to", "for", "until", "while", "so", "but"}
	notTo        = []string{"not", "never", "don't", "don’t", "without", "instead", "no", "nobody", "rather"}
)
