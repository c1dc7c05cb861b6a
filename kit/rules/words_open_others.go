package rules

// Phrases that leave a time, a heat or a place open, in the languages beside English.
// Common practice, no source.

var frenchOpen = openTable{
	phrases: []openPhrase{
		{phrase: "un moment", after: []string{"bon", "long", "petit"}}, {phrase: "un bon moment"}, {phrase: "un petit moment"}, {phrase: "quelque temps"},
		{phrase: "un certain temps"}, {phrase: "le temps nécessaire"}, {phrase: "le temps qu'il faut"}, {phrase: "assez longtemps", unless: []string{"pour"}},
		{phrase: "jusqu'à ce que ce soit prêt"}, {phrase: "jusqu'à ce que ce soit fini"},
		{phrase: "feu doux", kind: openHeat}, {phrase: "feu moyen", kind: openHeat}, {phrase: "feu vif", kind: openHeat}, {phrase: "four chaud", kind: openHeat},
		{phrase: "la bonne température", kind: openHeat}, {phrase: "la température voulue", kind: openHeat},
		{phrase: "à l'endroit voulu", kind: openPlace}, {phrase: "au bon endroit", kind: openPlace}, {phrase: "la taille voulue", kind: openPlace},
		{phrase: "la longueur voulue", kind: openPlace}, {phrase: "la bonne longueur", kind: openPlace}, {phrase: "un récipient adapté", kind: openPlace},
		{phrase: "un endroit chaud", kind: openPlace}, {phrase: "là où il faut", kind: openPlace},
	},
	ends:  []string{"jusqu", "dès", "quand", "lorsque", "avant", "tant"},
	likes: []string{"comme", "tel", "tels", "telle", "près", "sous", "sur", "entre", "au", "en", "de", "du", "d", "pour", "avec", "où", "que", "marqué", "indiqué"},
}

var germanOpen = openTable{
	phrases: []openPhrase{
		{phrase: "eine weile"}, {phrase: "eine zeit lang"}, {phrase: "eine zeitlang"}, {phrase: "einige zeit"}, {phrase: "etwas zeit", unless: []string{"zum", "für", "zur"}},
		{phrase: "lange genug", unless: []string{"um"}}, {phrase: "so lange wie nötig"}, {phrase: "bis es fertig ist"}, {phrase: "bis alles fertig ist"}, {phrase: "bis es gut aussieht"},
		{phrase: "mittlere hitze", kind: openHeat}, {phrase: "mittlerer hitze", kind: openHeat}, {phrase: "niedriger hitze", kind: openHeat},
		{phrase: "schwacher hitze", kind: openHeat}, {phrase: "starker hitze", kind: openHeat}, {phrase: "heißen ofen", kind: openHeat},
		{phrase: "die richtige temperatur", kind: openHeat}, {phrase: "die gewünschte temperatur", kind: openHeat}, {phrase: "der richtigen temperatur", kind: openHeat},
		{phrase: "an geeigneter stelle", kind: openPlace}, {phrase: "an der richtigen stelle", kind: openPlace}, {phrase: "die gewünschte größe", kind: openPlace},
		{phrase: "die gewünschte länge", kind: openPlace}, {phrase: "die richtige länge", kind: openPlace}, {phrase: "ein geeignetes gefäß", kind: openPlace},
		{phrase: "einen warmen ort", kind: openPlace}, {phrase: "einem warmen ort", kind: openPlace}, {phrase: "wo nötig", kind: openPlace},
	},
	ends:  []string{"bis", "sobald", "wenn", "bevor"},
	likes: []string{"wie", "etwa", "nahe", "neben", "über", "unter", "zwischen", "auf", "an", "am", "bei", "von", "vom", "für", "mit", "der", "den", "die", "das", "markiert"},
}

var spanishOpen = openTable{
	phrases: []openPhrase{
		{phrase: "un rato"}, {phrase: "un buen rato"}, {phrase: "un tiempo", after: []string{"mismo"}}, {phrase: "algún tiempo"}, {phrase: "el tiempo necesario"},
		{phrase: "hasta que esté listo"}, {phrase: "hasta que esté hecho"},
		{phrase: "fuego lento", kind: openHeat}, {phrase: "fuego medio", kind: openHeat}, {phrase: "fuego fuerte", kind: openHeat}, {phrase: "horno caliente", kind: openHeat},
		{phrase: "la temperatura adecuada", kind: openHeat}, {phrase: "la temperatura deseada", kind: openHeat},
		{phrase: "un lugar adecuado", kind: openPlace}, {phrase: "el lugar adecuado", kind: openPlace}, {phrase: "el tamaño deseado", kind: openPlace},
		{phrase: "la longitud deseada", kind: openPlace}, {phrase: "un recipiente adecuado", kind: openPlace}, {phrase: "donde sea necesario", kind: openPlace},
	},
	ends:  []string{"hasta", "cuando", "antes"},
	likes: []string{"como", "cerca", "bajo", "sobre", "entre", "en", "de", "del", "para", "con", "que", "donde", "marcado", "indicado"},
}

var dutchOpen = openTable{
	phrases: []openPhrase{
		{phrase: "een tijdje"}, {phrase: "een poosje"}, {phrase: "enige tijd"}, {phrase: "lang genoeg", unless: []string{"om"}}, {phrase: "zo lang als nodig"},
		{phrase: "tot het klaar is"}, {phrase: "tot alles klaar is"},
		{phrase: "laag vuur", kind: openHeat}, {phrase: "middelhoog vuur", kind: openHeat}, {phrase: "hoog vuur", kind: openHeat}, {phrase: "hete oven", kind: openHeat},
		{phrase: "de juiste temperatuur", kind: openHeat}, {phrase: "de gewenste temperatuur", kind: openHeat},
		{phrase: "op de juiste plaats", kind: openPlace}, {phrase: "de gewenste maat", kind: openPlace}, {phrase: "de gewenste lengte", kind: openPlace},
		{phrase: "de juiste lengte", kind: openPlace}, {phrase: "een geschikte kom", kind: openPlace}, {phrase: "een warme plek", kind: openPlace}, {phrase: "waar nodig", kind: openPlace},
	},
	ends:  []string{"tot", "totdat", "zodra", "wanneer", "als", "voordat"},
	likes: []string{"zoals", "bij", "naast", "boven", "onder", "tussen", "op", "aan", "in", "van", "voor", "met", "die", "dat", "waar", "aangegeven"},
}

var italianOpen = openTable{
	phrases: []openPhrase{
		{phrase: "un po' di tempo"}, {phrase: "per un po'"}, {phrase: "qualche tempo"}, {phrase: "il tempo necessario"}, {phrase: "finché non è pronto"}, {phrase: "finché è pronto"},
		{phrase: "fuoco basso", kind: openHeat}, {phrase: "fuoco lento", kind: openHeat}, {phrase: "fuoco medio", kind: openHeat}, {phrase: "fuoco vivo", kind: openHeat},
		{phrase: "forno caldo", kind: openHeat}, {phrase: "la temperatura giusta", kind: openHeat}, {phrase: "la temperatura desiderata", kind: openHeat},
		{phrase: "un luogo adatto", kind: openPlace}, {phrase: "nel posto giusto", kind: openPlace}, {phrase: "la misura desiderata", kind: openPlace},
		{phrase: "la lunghezza desiderata", kind: openPlace}, {phrase: "un recipiente adatto", kind: openPlace}, {phrase: "dove serve", kind: openPlace},
	},
	ends:  []string{"finché", "fino", "quando", "prima", "appena"},
	likes: []string{"come", "vicino", "sotto", "sopra", "tra", "fra", "su", "in", "di", "del", "della", "per", "con", "che", "dove", "segnato", "indicato"},
}
