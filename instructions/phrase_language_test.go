package instructions

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// candles is a kit of the Brindle Quay Workroom with names in six languages.
const candles = `name: Quayside candles
maker: Brindle Quay Workroom
makes: 3 candles
components:
  wax:
    name: Soy wax
    names: {fr: Cire de soja, de: Sojawachs / Wachs, es: Cera de soja, nl: Sojawas / was, it: Cera di soia}
    packed: 600 g
    density: 0.9 g/mL
  oil:
    name: Fragrance oil
    names: {fr: Huile parfumée, de: Duftöl, es: Aceite perfumado, nl: Geurolie, it: Olio profumato}
    packed: 30 mL
    density: 0.95 g/mL
  jar:
    name: Glass jar
    names: {fr: Pot en verre / pot, de: Glas mit Deckel / Glas, es: Vaso de cristal / vaso, nl: Glazen pot / pot, it: Vasetto di vetro / vasetto}
    packed: 3
    container: {brimful: 250 mL, headspace: 15 mL}
  wick: {name: Wick, names: {fr: Mèche, de: Docht, es: Mecha, nl: Lont, it: Stoppino}, packed: 6}
  cord: {name: Hemp cord, names: {fr: Cordelette, de: Hanfschnur / Schnur, es: Cordel, nl: Koord, it: Cordino}, packed: 3 m}
tools:
  jug: {name: Melting jug, names: {fr: Pichet, de: Schmelzkanne / Kanne, es: Jarra, nl: Kan, it: Caraffa}, from: box, essential: true, holds: 1 L}
  ladle: {name: Wooden ladle, names: {fr: Cuillère en bois, de: Hölzerner Löffel, es: Cucharón de madera, nl: Houten lepel, it: Mestolo di legno}, from: box, holds: 50 mL}
pieces:
  candle: {name: Candle, names: {fr: Bougie, de: Kerze, es: Vela, nl: Kaars, it: Candela}, count: 3, in: jar}
`

// sentences are texts of links as makers in the trade write them, and what each says;
// read by speakers of the language against its grammar, no other source.
var sentences = map[string][]struct{ destination, text, want string }{
	"en": {
		{"take:wax", "550 g of wax", `exactly 550="550 g"`},
		{"take:wax", "1.5 kg of wax", `exactly 1500="1.5 kg"`},
		{"take:wax", "all of the wax", `all`},
		{"take:wax", "the rest of the wax", `rest`},
		{"take:wax", "what is left of the wax", `rest`},
		{"take:wax", "half of the wax", `part 1/2`},
		{"take:wax", "half of the wax (275 g)", `part 1/2 275="275 g"`},
		{"take:wax", "the other half", `rest`},
		{"take:wax", "a third of the bag", `part 1/3 of-pack`},
		{"take:wax", "two thirds of the wax", `part 2/3`},
		{"take:oil", "about 10 mL", `exactly 10="about 10 mL" about`},
		{"take:oil", "up to 5 mL", `exactly 5="up to 5 mL"`},
		{"take:oil", "10 mL in all", `exactly 10="10 mL" in-all`},
		{"take:wax", "20 g per jar", `exactly 20="20 g" each`},
		{"use:cord", "two lengths of 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"take:wick", "2 of the wicks", `exactly 2="2"`},
		{"take:wick", "all 6 wicks", `all 6="6 wicks"`},
		{"place:wick?into=jar", "one wick in each of 3 jars", `exactly 1="one wick" each each-count:3 count:3`},
		{"fill:jar", "each of 3 jars to 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "each jar with 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "all the jars to 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "the remaining two to 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "the first jar to 190 g", `exactly 190="190 g" to count:1`},
		{"warm:", "to 75 °C", `exactly 75="75 °C"`},
		{"cool:", "by 5 °C", `exactly 5="by 5 °C" by`},
		{"work:", "3 × 10 minutes", `exactly 600="10 minutes" each each-count:3 count:3`},
		{"work:", "20 minutes, stirring every 5 minutes", `exactly 1200="20 minutes"`},
		{"again:", "five more times", `none count:5`},
		{"again:", "twice more", `none count:2`},
	},
	"fr": {
		{"take:oil", "20 mL d'huile, tout doucement", `exactly 20="20 mL"`},
		{"take:oil", "20 mL d'huile à feu moyen", `exactly 20="20 mL"`},
		{"take:wax", "550 g de cire", `exactly 550="550 g"`},
		{"take:wax", "1,5 kg de cire", `exactly 1500="1,5 kg"`},
		{"take:oil", "toute l'huile", `all`},
		{"take:oil", "la totalité de l’huile parfumée", `all`},
		{"take:wax", "le reste de la cire", `rest`},
		{"take:wax", "la cire restante", `rest`},
		{"take:wax", "ce qui reste de cire", `rest`},
		{"take:wax", "ce qu'il reste", `rest`},
		{"take:wax", "la moitié de la cire", `part 1/2`},
		{"take:oil", "la moitié de l'huile (15 mL)", `part 1/2 15="15 mL"`},
		{"take:wax", "l'autre moitié", `rest`},
		{"take:wax", "la moitié restante", `rest`},
		{"take:wax", "un tiers du sachet", `part 1/3 of-pack`},
		{"take:wax", "deux tiers de la cire", `part 2/3`},
		{"take:wax", "trois quarts du sachet de cire", `part 3/4 of-pack`},
		{"take:wax", "un demi-sachet", `part 1/2 of-pack`},
		{"take:wax", "50 % du sachet", `part 1/2 of-pack`},
		{"take:oil", "environ 10 mL", `exactly 10="environ 10 mL" about`},
		{"take:oil", "10 mL environ", `exactly 10="10 mL" about`},
		{"take:oil", "jusqu'à 5 mL", `exactly 5="jusqu'à 5 mL"`},
		{"take:oil", "10 mL en tout", `exactly 10="10 mL" in-all`},
		{"take:wax", "20 g par pot", `exactly 20="20 g" each`},
		{"take:wax", "20 g par petites quantités", `exactly 20="20 g"`},
		{"take:wax", "20 g pour chaque bougie", `exactly 20="20 g" each`},
		{"use:cord", "deux longueurs de 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"use:cord", "3 bouts de cordelette, 20 cm chacun", `exactly 200="20 cm" each each-count:3 count:3`},
		{"take:wick", "deux des mèches", `exactly 2="deux"`},
		{"take:wick", "les 6 mèches", `exactly 6="6 mèches"`},
		{"take:wick", "toutes les 6 mèches", `all 6="6 mèches"`},
		{"place:wick?into=jar", "une mèche dans chacun des 3 pots", `exactly 1="une mèche" each each-count:3 count:3`},
		{"fill:jar", "chacun des 3 pots à 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "chacun des 3 pots jusqu’à 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "chaque pot avec 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "tous les pots à 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "les trois pots à 190 g", `exactly 190="190 g" to count:3`},
		{"fill:jar", "les deux restants à 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "les deux autres pots à 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "le premier pot à 190 g", `exactly 190="190 g" to count:1`},
		{"fill:jar", "le pot avec le reste", `rest`},
		{"fill:jar", "environ 190 g dans chaque pot", `exactly 190="environ 190 g" each about`},
		{"move:jug", "le tout", `all`},
		{"move:jug", "la moitié", `part 1/2`},
		{"warm:", "à 75 °C", `exactly 75="75 °C"`},
		{"warm:", "jusqu'à 75 °C", `exactly 75="75 °C"`},
		{"warm:", "de 75 à 80 °C", `exactly 77.5="de 75 à 80 °C"`},
		{"cool:", "de 5 °C", `exactly 5="5 °C" by`},
		{"cool:", "en dessous de 60 °C", `exactly 60="en dessous de 60 °C"`},
		{"work:", "20 minutes", `exactly 1200="20 minutes"`},
		{"work:", "3 × 10 minutes", `exactly 600="10 minutes" each each-count:3 count:3`},
		{"work:", "trois fois 10 minutes", `exactly 600="10 minutes" each each-count:3 count:3`},
		{"work:", "20 minutes, en remuant toutes les 5 minutes", `exactly 1200="20 minutes"`},
		{"wait:", "une demi-heure", `exactly 1800="une demi-heure"`},
		{"again:", "cinq fois de plus", `none count:5`},
		{"again:", "encore deux fois", `none count:2`},
		{"again:", "encore une fois", `none count:1`},
		{"again:", "les deux autres pots", `none count:2`},
		{"left:jug", "ce qui reste", `rest`},
	},
	"de": {
		{"take:oil", "20 ml Öl, ganz langsam", `exactly 20="20 ml"`},
		{"take:oil", "20 ml Öl, vor allem langsam", `exactly 20="20 ml"`},
		{"take:wax", "550 g Wachs", `exactly 550="550 g"`},
		{"take:wax", "1,5 kg Sojawachs", `exactly 1500="1,5 kg"`},
		{"take:oil", "das ganze Duftöl", `all`},
		{"take:oil", "alles davon", `all`},
		{"take:wick", "alle 6 Dochte", `all 6="6 Dochte"`},
		{"take:wax", "den Rest des Wachses", `rest`},
		{"take:wax", "das restliche Wachs", `rest`},
		{"take:wax", "das übrige Wachs", `rest`},
		{"take:wax", "die Hälfte des Wachses", `part 1/2`},
		{"take:wax", "die Hälfte davon (275 g)", `part 1/2 275="275 g"`},
		{"take:wax", "die andere Hälfte", `rest`},
		{"take:wax", "ein Drittel des Beutels", `part 1/3 of-pack`},
		{"take:wax", "zwei Drittel vom Wachs", `part 2/3`},
		{"take:wax", "die halbe Packung", `part 1/2 of-pack`},
		{"take:wax", "50 % der Packung", `part 1/2 of-pack`},
		{"take:oil", "etwa 10 ml", `exactly 10="etwa 10 ml" about`},
		{"take:oil", "bis zu 5 ml", `exactly 5="bis zu 5 ml"`},
		{"take:oil", "insgesamt 10 ml", `exactly 10="10 ml" in-all`},
		{"take:wax", "20 g pro Glas", `exactly 20="20 g" each`},
		{"take:wax", "je 20 g", `exactly 20="20 g" each`},
		{"use:cord", "zwei Stücke von 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"use:cord", "3 Stücke Schnur, je 20 cm", `exactly 200="20 cm" each each-count:3 count:3`},
		{"take:wick", "zwei der Dochte", `exactly 2="zwei"`},
		{"place:wick?into=jar", "ein Docht in jedes der 3 Gläser", `none each each-count:3`},
		{"fill:jar", "jedes der 3 Gläser auf 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "jedes der 3 Gläser bis 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "jedes Glas mit 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "alle Gläser auf 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "3 Gläser mit je 190 g", `exactly 190="190 g" each count:3`},
		{"fill:jar", "die übrigen zwei bis 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "beide Gläser auf 190 g", `exactly 190="190 g" to count:2`},
		{"fill:jar", "das erste Glas auf 190 g", `exactly 190="190 g" to count:1`},
		{"fill:jar", "das Glas mit dem Rest", `rest`},
		{"move:jug", "alles", `all`},
		{"warm:", "auf 75 °C", `exactly 75="75 °C"`},
		{"warm:", "auf 75 bis 80 °C", `exactly 77.5="75 bis 80 °C"`},
		{"cool:", "um 5 °C", `exactly 5="um 5 °C" by`},
		{"cool:", "unter 60 °C", `exactly 60="unter 60 °C"`},
		{"work:", "dreimal 10 Minuten", `exactly 600="10 Minuten" each each-count:3 count:3`},
		{"work:", "20 Minuten, alle 5 Minuten umrühren", `exactly 1200="20 Minuten"`},
		{"wait:", "eine halbe Stunde", `exactly 1800="eine halbe Stunde"`},
		{"again:", "noch fünfmal", `none count:5`},
		{"again:", "noch fünf weitere Male", `none count:5`},
		{"again:", "noch einmal", `none count:1`},
		{"again:", "die anderen zwei Gläser", `none count:2`},
		{"left:jug", "was übrig ist", `rest`},
	},
	"es": {
		{"take:oil", "20 ml de aceite, a fuego medio", `exactly 20="20 ml"`},
		{"take:oil", "20 ml de aceite, removiendo todo el tiempo", `exactly 20="20 ml"`},
		{"take:wax", "550 g de cera", `exactly 550="550 g"`},
		{"take:wax", "1,5 kg de cera", `exactly 1500="1,5 kg"`},
		{"take:oil", "todo el aceite", `all`},
		{"take:wick", "las 6 mechas", `exactly 6="6 mechas"`},
		{"take:wick", "todas las mechas", `all`},
		{"take:wax", "el resto de la cera", `rest`},
		{"take:wax", "la cera restante", `rest`},
		{"take:wax", "lo que queda de cera", `rest`},
		{"take:wax", "la mitad de la cera", `part 1/2`},
		{"take:wax", "la mitad de la cera (275 g)", `part 1/2 275="275 g"`},
		{"take:wax", "la otra mitad", `rest`},
		{"take:wax", "un tercio de la bolsa", `part 1/3 of-pack`},
		{"take:wax", "dos tercios de la cera", `part 2/3`},
		{"take:wax", "media bolsa", `part 1/2 of-pack`},
		{"take:oil", "unos 10 ml", `exactly 10="unos 10 ml" about`},
		{"take:oil", "hasta 5 ml", `exactly 5="hasta 5 ml"`},
		{"take:oil", "10 ml en total", `exactly 10="10 ml" in-all`},
		{"take:wax", "20 g por vaso", `exactly 20="20 g" each`},
		{"take:wax", "20 g para cada vela", `exactly 20="20 g" each`},
		{"use:cord", "dos trozos de 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"take:wick", "dos de las mechas", `exactly 2="dos"`},
		{"take:wick", "las dos restantes", `rest 2="dos"`},
		{"place:wick?into=jar", "1 mecha en cada uno de los 3 vasos", `exactly 1="1 mecha" each each-count:3 count:3`},
		{"fill:jar", "cada uno de los 3 vasos hasta 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "cada vaso con 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "todos los vasos hasta 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "los dos restantes a 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "el primer vaso hasta 190 g", `exactly 190="190 g" to count:1`},
		{"fill:jar", "ambos vasos hasta 190 g", `exactly 190="190 g" to count:2`},
		{"move:jug", "todo", `all`},
		{"warm:", "a 75 °C", `exactly 75="75 °C"`},
		{"warm:", "hasta 75 °C", `exactly 75="75 °C"`},
		{"cool:", "por debajo de 60 °C", `exactly 60="por debajo de 60 °C"`},
		{"cool:", "en 5 °C", `exactly 5="5 °C" by`},
		{"work:", "20 minutos, removiendo cada 5 minutos", `exactly 1200="20 minutos"`},
		{"work:", "tres veces 10 minutos", `exactly 600="10 minutos" each each-count:3 count:3`},
		{"wait:", "media hora", `exactly 1800="media hora"`},
		{"again:", "otras cinco veces", `none count:5`},
		{"again:", "dos veces más", `none count:2`},
		{"again:", "una vez más", `none count:1`},
	},
	"nl": {
		{"take:oil", "20 ml olie, heel langzaam", `exactly 20="20 ml"`},
		{"take:oil", "20 ml olie, al roerend", `exactly 20="20 ml"`},
		{"take:oil", "al de olie", `all`},
		{"take:wax", "550 g was", `exactly 550="550 g"`},
		{"take:wax", "1,5 kg sojawas", `exactly 1500="1,5 kg"`},
		{"take:oil", "alle geurolie", `all`},
		{"take:oil", "de hele fles", `all`},
		{"take:wick", "alle 6 lonten", `all 6="6 lonten"`},
		{"take:wax", "de rest van de was", `rest`},
		{"take:wax", "de overige was", `rest`},
		{"take:wax", "wat over is", `rest`},
		{"take:wax", "de helft van de was", `part 1/2`},
		{"take:wax", "de helft van de was (275 g)", `part 1/2 275="275 g"`},
		{"take:wax", "de andere helft", `rest`},
		{"take:wax", "een derde van de zak", `part 1/3 of-pack`},
		{"take:wax", "twee derde van de was", `part 2/3`},
		{"take:wax", "de halve zak", `part 1/2 of-pack`},
		{"take:oil", "ongeveer 10 ml", `exactly 10="ongeveer 10 ml" about`},
		{"take:oil", "tot maximaal 5 ml", `exactly 5="tot maximaal 5 ml"`},
		{"take:oil", "10 ml in totaal", `exactly 10="10 ml" in-all`},
		{"take:wax", "20 g per pot", `exactly 20="20 g" each`},
		{"use:cord", "twee stukken van 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"take:wick", "twee van de lonten", `exactly 2="twee"`},
		{"place:wick?into=jar", "1 lont in elk van de 3 potten", `exactly 1="1 lont" each each-count:3 count:3`},
		{"fill:jar", "elk van de 3 potten tot 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "elke pot met 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "alle potten tot 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "de overige twee tot 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "beide potten tot 190 g", `exactly 190="190 g" to count:2`},
		{"fill:jar", "de eerste pot tot 190 g", `exactly 190="190 g" to count:1`},
		{"move:jug", "alles", `all`},
		{"warm:", "tot 75 °C", `exactly 75="75 °C"`},
		{"cool:", "met 5 °C", `exactly 5="met 5 °C" by`},
		{"cool:", "onder 60 °C", `exactly 60="onder 60 °C"`},
		{"work:", "20 minuten, elke 5 minuten roeren", `exactly 1200="20 minuten"`},
		{"work:", "driemaal 10 minuten", `exactly 600="10 minuten" each each-count:3 count:3`},
		{"wait:", "een half uur", `exactly 1800="een half uur"`},
		{"again:", "nog vijf keer", `none count:5`},
		{"again:", "nog een keer", `none count:1`},
		{"again:", "de andere twee potten", `none count:2`},
	},
	"it": {
		{"take:oil", "20 ml d'olio, mescolando tutto il tempo", `exactly 20="20 ml"`},
		{"take:wax", "550 g di cera", `exactly 550="550 g"`},
		{"take:wax", "1,5 kg di cera", `exactly 1500="1,5 kg"`},
		{"take:oil", "tutto l'olio", `all`},
		{"take:oil", "tutto l’olio profumato", `all`},
		{"take:wick", "tutti i 6 stoppini", `all 6="6 stoppini"`},
		{"take:wax", "il resto della cera", `rest`},
		{"take:wax", "la cera rimanente", `rest`},
		{"take:wax", "quel che resta", `rest`},
		{"take:oil", "metà dell'olio", `part 1/2`},
		{"take:wax", "metà della cera (275 g)", `part 1/2 275="275 g"`},
		{"take:wax", "l'altra metà", `rest`},
		{"take:wax", "un terzo della confezione", `part 1/3 of-pack`},
		{"take:wax", "due terzi della cera", `part 2/3`},
		{"take:wax", "mezza bustina", `part 1/2 of-pack`},
		{"take:oil", "circa 10 ml", `exactly 10="circa 10 ml" about`},
		{"take:oil", "10 ml circa", `exactly 10="10 ml" about`},
		{"take:oil", "fino a 5 ml", `exactly 5="fino a 5 ml"`},
		{"take:oil", "10 ml in tutto", `exactly 10="10 ml" in-all`},
		{"take:wax", "20 g per vasetto", `exactly 20="20 g" each`},
		{"take:wax", "20 g per ogni candela", `exactly 20="20 g" each`},
		{"use:cord", "due pezzi da 40 cm", `exactly 400="40 cm" each each-count:2 count:2`},
		{"take:wick", "due degli stoppini", `exactly 2="due"`},
		{"place:wick?into=jar", "1 stoppino in ciascuno dei 3 vasetti", `exactly 1="1 stoppino" each each-count:3 count:3`},
		{"fill:jar", "ciascuno dei 3 vasetti fino a 190 g", `exactly 190="190 g" each to each-count:3 count:3`},
		{"fill:jar", "ogni vasetto con 90 g", `exactly 90="90 g" each`},
		{"fill:jar", "tutti i vasetti a 190 g", `exactly 190="190 g" each to`},
		{"fill:jar", "i due restanti a 180 g", `exactly 180="180 g" to count:2`},
		{"fill:jar", "il primo vasetto a 190 g", `exactly 190="190 g" to count:1`},
		{"fill:jar", "entrambi i vasetti a 190 g", `exactly 190="190 g" to count:2`},
		{"move:jug", "tutto", `all`},
		{"warm:", "a 75 °C", `exactly 75="75 °C"`},
		{"warm:", "fino a 75 °C", `exactly 75="75 °C"`},
		{"cool:", "di 5 °C", `exactly 5="5 °C" by`},
		{"work:", "per 20 minuti", `exactly 1200="20 minuti"`},
		{"work:", "20 minuti, mescolando ogni 5 minuti", `exactly 1200="20 minuti"`},
		{"work:", "tre volte 10 minuti", `exactly 600="10 minuti" each each-count:3 count:3`},
		{"wait:", "mezz'ora", `exactly 1800="mezz'ora"`},
		{"again:", "altre cinque volte", `none count:5`},
		{"again:", "ancora due volte", `none count:2`},
		{"again:", "ancora una volta", `none count:1`},
	},
}

// What is meant in each language, as TestPhrases has it for English at length.
func TestPhrasesOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for tag, table := range sentences {
		t.Run(tag, func(t *testing.T) {
			if len(table) < 25 {
				t.Errorf("%d sentences are too few", len(table))
			}
			for _, test := range table {
				text := "## [Try](step:try)\n\n[" + test.text + "](" + test.destination + ")\n"
				translation, found := ReadTranslation(source.NewFile("method."+tag+".md", []byte(text)), k, tag)
				for _, f := range found {
					t.Errorf("%s %q: %s: %s", test.destination, test.text, f.Rule, f.Found)
				}
				operations := translation.Method.Steps()[0].Operations
				if len(operations) != 1 {
					t.Fatalf("%q: %d links", test.text, len(operations))
				}
				got := strings.ReplaceAll(toldPhrase(operations[0].Phrase), "\u2019", "'")
				if diff := cmp.Diff(test.want, got); diff != "" {
					t.Errorf("%s %q: %s", test.destination, test.text, diff)
				}
			}
		})
	}
}

// A translation calls the packs inside a pack by its own words for them.
func TestLotsOfLanguages(t *testing.T) {
	k := read(t, strings.Replace(candles, "packed: 3 m}", "packed: 2 skeins of 8 m}", 1))
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, text, want string }{
		{"fr", "un écheveau", `exactly 8000="un écheveau"`}, {"fr", "la moitié d'un écheveau", `exactly 4000="moitié d'un écheveau"`},
		{"de", "ein Strang", `exactly 8000="ein Strang"`}, {"de", "beide Stränge", `exactly 16000="beide Stränge" count:2`},
		{"es", "una madeja", `exactly 8000="una madeja"`}, {"nl", "een streng", `exactly 8000="een streng"`}, {"it", "due matasse", `exactly 16000="due matasse"`},
	} {
		text := "## [Try](step:try)\n\n[" + test.text + "](use:cord)\n"
		translation, found := ReadTranslation(source.NewFile("method.xx.md", []byte(text)), k, test.tag)
		got := toldPhrase(translation.Method.Steps()[0].Operations[0].Phrase)
		if len(found) > 0 || got != test.want {
			t.Errorf("%s %q: %s, want %s; %v", test.tag, test.text, got, test.want, toldFindings(found))
		}
	}
}

// What a link leaves open is found in every language.
func TestUnreadableAmountsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, destination, text string }{
		{"fr", "take:wax", "un peu de cire"}, {"fr", "take:wax", "550 de cire"}, {"fr", "take:wax", "la cire"},
		{"fr", "fill:jar", "chaque pot jusqu'au bord"}, {"fr", "warm:", "doucement"}, {"fr", "again:", "autant qu'il faut"},
		{"fr", "fill:jar", "deux des six pots à 200 g"}, {"fr", "take:wax", "la moitié des 20 g de cire"},
		{"de", "take:wax", "etwas Wachs"}, {"de", "fill:jar", "jedes Glas bis zum Rand"}, {"de", "take:wax", "550 vom Wachs"},
		{"de", "fill:jar", "zwei der sechs Gläser auf 200 g"}, {"de", "wait:", "über Nacht"},
		{"es", "take:wax", "un poco de cera"}, {"es", "fill:jar", "cada vaso hasta el borde"}, {"es", "wait:", "toda la noche"},
		{"nl", "take:wax", "een beetje was"}, {"nl", "fill:jar", "elke pot tot de rand"},
		{"it", "take:wax", "un po' di cera"}, {"it", "fill:jar", "ogni vasetto fino all'orlo"},
	} {
		text := "## [Try](step:try)\n\n[" + test.text + "](" + test.destination + ")\n"
		_, found := ReadTranslation(source.NewFile("method."+test.tag+".md", []byte(text)), k, test.tag)
		if len(found) != 1 || found[0].Rule != unreadableAmount {
			t.Errorf("%s %q: %v", test.tag, test.text, toldFindings(found))
		}
	}
}

// Tools and containers are named in the cases and plurals of a language.
func TestMentionsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, text, want string }{
		{"fr", "Posez les pots en verre près du pichet.", "jar:pots en verre jug:pichet"},
		{"fr", "L’eau du pot et la cuillère en bois", "jar:pot ladle:cuillère en bois"},
		{"de", "Stell die Gläser neben die Kanne.", "jar:Gläser jug:Kanne"},
		{"de", "Rühr mit dem hölzernen Löffel in der Schmelzkanne.", "ladle:hölzernen Löffel jug:Schmelzkanne"},
		{"es", "Pon los vasos junto a la jarra.", "jar:vasos jug:jarra"},
		{"nl", "Zet de potten naast de kan, met de houten lepels.", "jar:potten jug:kan ladle:houten lepels"},
		{"it", "Metti i vasetti accanto alla caraffa.", "jar:vasetti jug:caraffa"},
		{"it", "l'acqua del vasetto", "jar:vasetto"},
	} {
		translation, _ := ReadTranslation(source.NewFile("method.xx.md", []byte("## [Try](step:try)\n\n"+test.text+"\n")), k, test.tag)
		var told []string
		for _, m := range translation.Method.Steps()[0].Mentions {
			told = append(told, m.Key+":"+m.Span.Text())
		}
		if got := strings.Join(told, " "); got != test.want {
			t.Errorf("%s %q: %s, want %s", test.tag, test.text, got, test.want)
		}
	}
}

// The signal words of ISO 3864-2 and ANSI Z535.6 in each language; from memory.
func TestSignalWordsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try)\n")), k, load.Amounts(k))
	for _, test := range []struct {
		tag, text string
		want      kit.Signal
	}{
		{"fr", "DANGER : brûlant.", kit.Danger}, {"fr", "AVERTISSEMENT : brûlant.", kit.Warning}, {"fr", "Attention\u00a0: chaud.", kit.CautionWord},
		{"fr", "Attention à la vapeur.", ""}, {"de", "GEFAHR: heiß.", kit.Danger}, {"de", "Warnung: heiß.", kit.Warning},
		{"de", "VORSICHT: heiß.", kit.CautionWord}, {"de", "HINWEIS: Deck den Tisch ab.", kit.Notice}, {"de", "CAUTION: heiß.", kit.CautionWord},
		{"es", "PELIGRO: quema.", kit.Danger}, {"es", "ADVERTENCIA: quema.", kit.Warning}, {"es", "PRECAUCIÓN: quema.", kit.CautionWord},
		{"nl", "WAARSCHUWING: heet.", kit.Warning}, {"nl", "LET OP: heet.", kit.Notice}, {"it", "ATTENZIONE: scotta.", kit.CautionWord},
		{"it", "AVVERTENZA: scotta.", kit.Warning},
	} {
		translation, _ := ReadTranslation(source.NewFile("method.xx.md", []byte("## [Try](step:try)\n\n> "+test.text+"\n")), k, test.tag)
		var got kit.Signal
		for _, c := range translation.Method.Steps()[0].Cautions {
			got = c.Signal
		}
		if got != test.want {
			t.Errorf("%s %q: %q, want %q", test.tag, test.text, got, test.want)
		}
	}
}

// Every phrase of a language is cut into words as the text of a link is, else it
// would never be found.
func TestPhrasesAreCutAsTextsAre(t *testing.T) {
	for _, l := range languages {
		for _, all := range []phrases{l.articles, l.indefinite, l.of, l.ofThe, l.ofThem, l.each, l.every, l.per, l.inAll, l.about,
			l.aboutBehind, l.exactly, l.to, l.upTo, l.fillTo, l.by, l.byHead, l.both, l.times, l.more, l.again, l.all, l.whole, l.rest, l.notAll, l.halves,
			l.notHalf, l.last, l.second, l.remaining, l.lotsOf, l.ordinals, l.rims, l.labels, l.joins} {
			for _, phrase := range all.all {
				text := strings.ReplaceAll(strings.Join(phrase, " "), "' ", "'")
				var words []string
				for _, word := range plainWords(text+" x", 0, len(text), l) {
					words = append(words, word.text)
				}
				if diff := cmp.Diff(phrase, words); diff != "" {
					t.Errorf("%s %q: %s", l.tag, text, diff)
				}
			}
		}
	}
}
