package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// saidIn gives what the rules say, by rule, of a kit in a language with one more
// sentence in its method. The links themselves are told in figures and keys.
func saidIn(t *testing.T, tag, sentence string) map[string]diag.Finding {
	t.Helper()
	yaml := strings.Replace(wordsKit, "density: 0.91 g/mL", "density: 91 g per 100 mL", 1)
	files := fstest.MapFS{
		"kit.yaml": {Data: []byte("language: " + tag + "\n" + yaml)},
		"method.md": {Data: []byte("## [Mix](step:mixing?in=bowl)\n\n[100 mL](take:oil) [bowl](vessel:bowl). " + sentence +
			"\n\n## [Fill](step:filling?in=bowl)\n\n[1 jar](fill:jar) [5 min](work:).\n")},
	}
	k, _ := instructions.Open(files, "words")
	if k == nil || len(k.Method.Steps()) != 2 {
		t.Fatalf("%s %s: cannot be read", tag, sentence)
	}
	found := map[string]diag.Finding{}
	for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
		found[f.Rule] = f
	}
	return found
}

// Common practice, no source: sentences as leaflets have them.
func TestVaguePhrasesOfLanguages(t *testing.T) {
	for _, test := range []struct{ tag, sentence, phrase string }{
		{"fr", "Ajoutez un peu de vinaigre.", "un peu de"}, {"fr", "Ajoutez un peu d’eau.", "un peu d"}, {"fr", "Versez quelques gouttes de colorant.", "quelques gouttes"},
		{"fr", "Ajoutez une bonne dose de sel.", "une bonne dose"}, {"fr", "Mettez suffisamment d'eau.", "suffisamment d"},
		{"fr", "Sucrez à votre goût.", "à votre goût"}, {"fr", "Remplissez le moule presque jusqu’au bord.", "presque jusqu’au bord"},
		{"fr", "Jetez une poignée de pétales.", "une poignée de"},
		{"de", "Gib etwas Essig dazu.", "etwas"}, {"de", "Etwas Essig hinzufügen.", "Etwas"}, {"de", "Nimm eine Prise Salz.", "eine Prise"},
		{"de", "Gieß einen Schuss Essig hinein.", "einen Schuss"}, {"de", "Ein paar Tropfen Farbe genügen.", "Ein paar Tropfen"},
		{"de", "Streu reichlich Salz darüber.", "reichlich"}, {"de", "Füll die Form bis fast voll: fast voll reicht.", "fast voll"},
		{"de", "Süße es nach Geschmack.", "nach Geschmack"},
		{"es", "Añade un poco de vinagre.", "un poco de"}, {"es", "Echa un chorrito de aceite.", "un chorrito de"}, {"es", "Pon suficiente sal.", "suficiente"},
		{"es", "Añade sal al gusto.", "al gusto"}, {"es", "Ponga unas gotas de color.", "unas gotas"},
		{"nl", "Voeg een beetje azijn toe.", "een beetje"}, {"nl", "Doe een snufje zout erbij.", "een snufje"}, {"nl", "Giet voldoende water erbij.", "voldoende"},
		{"nl", "Vul de vorm tot hij bijna vol is.", "bijna vol"},
		{"it", "Aggiungi un po' di aceto.", "un po' di"}, {"it", "Aggiungi un po’ d’acqua.", "un po’ d"}, {"it", "Versa qualche goccia di colore.", "qualche goccia"},
		{"it", "Metti abbastanza sale.", "abbastanza"}, {"it", "Sale quanto basta.", "quanto basta"},
	} {
		finding, ok := saidIn(t, test.tag, test.sentence)["vague-amount"]
		if !ok || finding.Where.Text() != test.phrase {
			t.Errorf("%s %q: want “%s” told, got “%s”", test.tag, test.sentence, test.phrase, finding.Where.Text())
		}
	}
}

func TestPhrasesThatAreNotVagueInLanguages(t *testing.T) {
	for _, test := range []struct{ tag, sentence string }{
		{"fr", "Prenez assez de temps et un peu de patience."}, {"fr", "Attendez quelques minutes."}, {"fr", "Tournez-le de quelques degrés."},
		{"fr", "Laissez suffisamment d'espace sous le bord."}, {"fr", "Il est presque plein maintenant."}, {"fr", "Ajoutez l'huile petit à petit."},
		{"fr", "Ajoutez un peu (15 mL) de vinaigre."},
		{"de", "Warte etwas länger."}, {"de", "Lass es etwas abkühlen."}, {"de", "Nimm dir genug Zeit."}, {"de", "Lass genügend Platz."},
		{"de", "Es wird etwas heller."}, {"de", "Wende es ein paar Mal."}, {"de", "Das Glas ist jetzt fast voll."},
		{"es", "Tómate suficiente tiempo."}, {"es", "Espera unos minutos."}, {"es", "Deja bastante espacio."},
		{"nl", "Neem voldoende tijd."}, {"nl", "Wacht een beetje langer."}, {"nl", "Laat genoeg ruimte over."},
		{"it", "Prendi abbastanza tempo."}, {"it", "Aspetta qualche minuto."}, {"it", "Con un po' di pazienza riesce."},
	} {
		if finding, ok := saidIn(t, test.tag, test.sentence)["vague-amount"]; ok {
			t.Errorf("%s %q: want silence, got:\n%s", test.tag, test.sentence, told(diag.List{finding}))
		}
	}
}

func TestToolsInProseOfLanguages(t *testing.T) {
	for _, test := range []struct{ tag, sentence, tool string }{
		{"fr", "Coupez le cordon aux ciseaux.", "ciseaux"}, {"fr", "Mélangez au fouet.", "fouet"}, {"fr", "Posez l'entonnoir sur le pot.", "entonnoir"},
		{"fr", "Chauffez-le au micro-ondes.", "micro-ondes"}, {"fr", "Mesurez avec un thermomètre.", "thermomètre"},
		{"de", "Schneid die Schnur mit einer Schere ab.", "Schere"}, {"de", "Miss mit dem Thermometer nach.", "Thermometer"},
		{"de", "Gieß es durch ein feines Sieb.", "Sieb"}, {"de", "Erwärme es in der Mikrowelle.", "Mikrowelle"}, {"de", "Setz den Trichter auf.", "Trichter"},
		{"es", "Corta el cordón con tijeras.", "tijeras"}, {"es", "Pon un embudo.", "embudo"}, {"es", "Caliéntalo en el microondas.", "microondas"},
		{"nl", "Knip het koord met een schaar.", "schaar"}, {"nl", "Zet een trechter op de pot.", "trechter"},
		{"it", "Taglia il cordino con le forbici.", "forbici"}, {"it", "Usa un imbuto.", "imbuto"}, {"it", "Scaldalo nel microonde.", "microonde"},
	} {
		finding, ok := saidIn(t, test.tag, test.sentence)["tool-not-listed"]
		if !ok || finding.Where.Text() != test.tool {
			t.Errorf("%s %q: want “%s” told, got “%s”", test.tag, test.sentence, test.tool, finding.Where.Text())
		}
	}
	for _, test := range []struct{ tag, sentence string }{
		{"fr", "Il ne faut pas de four."}, {"fr", "Mettez des gants de four."}, {"fr", "Remuez à la main ou au fouet."}, {"de", "Du brauchst keinen Backofen."},
		{"de", "Rühr ohne Mixer."}, {"es", "Ponte guantes de horno."}, {"nl", "Je hebt geen oven nodig."}, {"it", "Metti i guanti da forno."},
	} {
		if finding, ok := saidIn(t, test.tag, test.sentence)["tool-not-listed"]; ok {
			t.Errorf("%s %q: want silence, got:\n%s", test.tag, test.sentence, told(diag.List{finding}))
		}
	}
}

// An amount typed beside the name of a thing is compared in every language.
func TestAmountsTypedInProseOfLanguages(t *testing.T) {
	for _, test := range []struct{ tag, name, wrong, right string }{
		{"fr", "Huile d'amande", "Prenez les 80 mL d'huile d'amande.", "Prenez les 100 mL d'huile d'amande."},
		{"de", "Mandelöl", "Nimm die 80 ml Mandelöl.", "Nimm die 100 ml Mandelöl."},
		{"es", "Aceite de almendra", "Toma los 80 ml de aceite de almendra.", "Toma los 100 ml de aceite de almendra."},
		{"nl", "Amandelolie", "Neem de 80 ml amandelolie.", "Neem de 100 ml amandelolie."},
		{"it", "Olio di mandorle", "Prendi gli 80 ml di olio di mandorle.", "Prendi i 100 ml di olio di mandorle."},
	} {
		told := func(sentence string) bool {
			files := fstest.MapFS{
				"kit.yaml": {Data: []byte("language: " + test.tag + "\n" + strings.NewReplacer("Almond oil", test.name, "0.91 g/mL", "91 g per 100 mL").Replace(wordsKit))},
				"method.md": {Data: []byte("## [Mix](step:mixing?in=bowl)\n\n[100 mL](take:oil) [bowl](vessel:bowl). " + sentence +
					"\n\n## [Fill](step:filling?in=bowl)\n\n[1 jar](fill:jar) [5 min](work:).\n")},
			}
			k, _ := instructions.Open(files, "words")
			for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
				if f.Rule == "typed-amount-disagrees" {
					return true
				}
			}
			return false
		}
		if !told(test.wrong) || told(test.right) {
			t.Errorf("%s: %q %v, want told; %q %v, want silence", test.tag, test.wrong, told(test.wrong), test.right, told(test.right))
		}
	}
}

// Times, heats and places left open, and sentences that come near.
func TestOpenPhrasesOfLanguages(t *testing.T) {
	for _, test := range []struct{ tag, sentence, phrase string }{
		{"fr", "Laissez reposer un moment.", "un moment"}, {"fr", "Chauffez à feu moyen.", "feu moyen"}, {"fr", "Coupez à la longueur voulue.", "la longueur voulue"},
		{"fr", "Laissez reposer un moment, jusqu'à ce que le bord durcisse.", ""}, {"fr", "Attendez [5 min](wait:), un bon moment.", ""},
		{"de", "Lass es eine Weile stehen.", "eine Weile"}, {"de", "Erhitze es bei mittlerer Hitze.", "mittlerer Hitze"}, {"de", "Schneid es auf die richtige Länge.", "die richtige Länge"},
		{"de", "Lass es eine Weile stehen, bis der Rand fest ist.", ""}, {"de", "Schneid es auf die richtige Länge, 40 cm.", ""},
		{"es", "Espera un rato.", "un rato"}, {"es", "Calienta a fuego medio.", "fuego medio"}, {"es", "Espera un rato, hasta que cuaje.", ""},
		{"nl", "Wacht een tijdje.", "een tijdje"}, {"nl", "Verwarm op laag vuur.", "laag vuur"}, {"nl", "Wacht een tijdje, tot de rand stevig is.", ""},
		{"it", "Scalda a fuoco medio.", "fuoco medio"}, {"it", "Aspetta il tempo necessario.", "il tempo necessario"}, {"it", "Aspetta il tempo necessario, finché si rapprende.", ""},
	} {
		finding, ok := saidIn(t, test.tag, test.sentence)["vague-instruction"]
		if ok != (test.phrase != "") || ok && finding.Where.Text() != test.phrase {
			t.Errorf("%s %q: got “%s”, want “%s”", test.tag, test.sentence, finding.Where.Text(), test.phrase)
		}
	}
}
