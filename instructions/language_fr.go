package instructions

import (
	"strings"

	"tallyfold/kit"
)

var french = &language{
	tag:         "fr",
	elided:      []string{"l'", "d'", "n'", "s'", "c'", "qu'"},
	joined:      []string{"demi-"},
	articles:    say("la", "le", "les", "l'", "votre", "vos", "ce", "cet", "cette", "ces", "sa", "son", "ses", "leur", "leurs"),
	indefinite:  say("un", "une"),
	of:          say("de", "d'", "du", "des", "de la", "de l'"),
	ofThe:       say("du", "des", "de la", "de l'", "de vos", "de votre", "de ces", "de ce", "de cette"),
	ofThem:      say("d' entre eux", "d' entre elles"),
	each:        say("chacun", "chacune", "chaque", "par pièce", "l' unité", "pièce"),
	every:       say("chaque", "toutes", "tous"),
	per:         say("par"),
	inAll:       say("en tout", "au total", "en totalité", "tout compris"),
	about:       say("environ", "approximativement", "vers", "à peu près", "autour de", "env", "ca", "circa"),
	aboutBehind: say("environ", "à peu près"),
	exactly:     say("exactement", "juste", "précisément", "la", "le", "les"),
	to:          say("à", "jusqu'à"),
	fillTo:      say("jusqu'à"),
	byHead:      say("de"),
	both:        say("tous les deux", "toutes les deux", "l' un et l' autre"),
	multiples:   map[string]int{"double": 2},
	times:       say("fois"),
	more:        say("de plus", "autre", "autres", "supplémentaire", "supplémentaires", "encore"),
	again:       say("encore", "de nouveau", "à nouveau", "une fois encore", "de même"),
	all:         say("tous", "toutes"),
	whole:       say("tout", "toute", "entier", "entière", "entiers", "entières", "totalité", "intégralité", "complet", "complète"),
	notAll: say("tout doucement", "tout lentement", "tout en", "tout autour", "tout de suite", "tout juste", "tout à fait", "tout d' abord",
		"tout petit", "tout petits", "tout le temps"),
	rest: say("reste", "restant", "restante", "restants", "restantes", "reliquat", "surplus", "ce qui reste", "ce qu' il reste",
		"qui reste", "qui restent", "qu' il reste"),
	fractions: map[string]int64{
		"moitié": 2, "demi": 2, "demi-": 2, "demie": 2, "tiers": 3, "quart": 4, "quarts": 4, "cinquième": 5, "cinquièmes": 5,
		"sixième": 6, "sixièmes": 6, "huitième": 8, "huitièmes": 8, "dixième": 10, "dixièmes": 10,
	},
	notHalf:   say("plein", "pleine", "pleins", "pleines", "vide", "rempli", "remplie"),
	halves:    say("demi", "demie", "demi-"),
	last:      say("autre", "autres", "dernier", "dernière", "derniers", "dernières"),
	second:    say("seconde", "deuxième"),
	remaining: say("restant", "restante", "restants", "restantes", "qui reste", "qui restent"),
	itself:    []string{"cela", "celui-ci", "celle-ci", "reste", "ce", "total"},
	packs: []string{"paquet", "sachet", "sac", "flacon", "bouteille", "pochette", "boîte", "tube", "pot", "écheveau", "rouleau",
		"feuille", "bobine", "bloc", "enveloppe", "fiole", "pain", "pelote", "carton", "bidon", "barquette", "poche"},
	lotsOf: say("de", "d'", "à"),
	ordinals: say("un", "une", "premier", "première", "1er", "1re", "deuxième", "second", "seconde", "troisième", "quatrième",
		"cinquième", "sixième", "prochain", "prochaine", "dernier", "dernière", "autre"),
	rims:   say("sous", "bord", "bords", "ras", "haut", "trait", "repère", "goulot", "col", "épaule", "rebord", "en dessous"),
	below:  say("sous", "en dessous", "au-dessous", "du", "au dessous"),
	edge:   say("bord", "rebord", "haut"),
	labels: say("sachet", "sachets", "paquet", "étape", "étapes", "taille", "no", "n", "numéro", "partie", "page", "image", "type", "qualité", "pot", "figure"),
	joins:  say("de", "d'", "du", "des", "fois", "autres", "autre", "et", "ou", "à"),
	signals: map[kit.Signal][]string{kit.Danger: {"DANGER"}, kit.Warning: {"AVERTISSEMENT"}, kit.CautionWord: {"ATTENTION"},
		kit.Notice: {"AVIS", "REMARQUE"}},
	stem: frenchStem,
}

// frenchStem takes the plural off: "pots", "bocaux", "anneaux".
func frenchStem(word string) string {
	switch {
	case len(word) < 4:
		return word
	case strings.HasSuffix(word, "eaux"):
		return strings.TrimSuffix(word, "x")
	case strings.HasSuffix(word, "aux"):
		return strings.TrimSuffix(word, "ux") + "l"
	case strings.HasSuffix(word, "s"), strings.HasSuffix(word, "x"):
		return word[:len(word)-1]
	}
	return word
}
