package text

import (
	"maps"
	"regexp"
	"strings"
)

// number is a number inside a sentence of the analysis.
var number = regexp.MustCompile(`\d+(?:\.\d+)?`)

// Say gives what the analysis said in this language. The sentences come in
// English with numbers in them; they are looked up with each number replaced
// by "#", and the numbers are put back in their order. "A: b" is looked up in
// parts where it is not known as a whole. What is not known stays as it is.
func (b *Book) Say(english string) string {
	if s, ok := b.say(english); ok {
		return s
	}
	head, tail, ok := strings.Cut(english, ": ")
	if !ok {
		return english
	}
	h, okHead := b.say(head + ": …")
	t, okTail := b.say(tail)
	if !okHead || !okTail {
		return english
	}
	return strings.Replace(h, "…", t, 1)
}

func (b *Book) say(english string) (string, bool) {
	s, ok := b.said[number.ReplaceAllString(english, "#")]
	if !ok {
		return "", false
	}
	for _, n := range number.FindAllString(english, -1) {
		s = strings.Replace(s, "#", strings.ReplaceAll(n, ".", map[string]string{"en": ".", "de": ","}[b.Tag]), 1)
	}
	return s, true
}

// germanSaid holds what the analysis says.
func germanSaid() map[string]string {
	all := germanSaidOfRuns()
	maps.Copy(all, germanSaidCompared())
	return all
}

// germanSaidOfRuns holds what packages runs, detect and pairing say of a run.
func germanSaidOfRuns() map[string]string {
	return map[string]string{
		"#/# mile": "#/# Meile", "# ft": "# Fuß",
		"too short: it covers # km/h, # are needed":                                                   "zu kurz: es reicht über # km/h, nötig sind #",
		"only a part is used: …":                                                                      "nur ein Teil wird verwendet: …",
		"the brake was touched at # km/h":                                                             "bei # km/h wurde gebremst",
		"it was disturbed":                                                                            "etwas hat gestört",
		"no satellite fixes for # s":                                                                  "# s lang keine Satelliten",
		"the recording has a hole of # s":                                                             "in der Aufzeichnung fehlen # s",
		"the recording has a hole of # s at the start":                                                "am Anfang fehlen in der Aufzeichnung # s",
		"the recording has a hole of # s: the ± of the times allows for it":                           "in der Aufzeichnung fehlen # s: das ± der Zeiten rechnet damit",
		"the phone moved in its mount":                                                                "das Telefon ist in der Halterung verrutscht",
		"its speed is no smooth curve":                                                                "die Geschwindigkeit verläuft nicht glatt",
		"the road bends, by #° in all":                                                                "die Straße biegt ab, um # ° insgesamt",
		"there is no run the other way with the same setup":                                           "mit diesem Aufbau gibt es keine Fahrt in der Gegenrichtung",
		"something pushed the bike at # km/h: the throttle, or a vehicle passing":                     "bei # km/h hat etwas geschoben: Gas oder ein überholendes Fahrzeug",
		"it slowed as if rolling resistance were #: a gear was left in, or the brake dragged":         "es bremste wie bei einem Rollwiderstand von #: ein Gang war drin, oder die Bremse schleifte",
		"it slowed too little at low speed: the road falls, or the throttle was not closed":           "unten wurde es zu wenig langsamer: die Straße fällt, oder das Gas war nicht zu",
		"it slowed too much at high speed for air drag: the brake was on, or the engine held it back": "oben wurde es für Luft allein zu schnell langsamer: Bremse oder Motor hielten zurück",
		"it slowed too little at high speed for air drag: the throttle was not closed":                "oben wurde es für Luft zu wenig langsamer: das Gas war nicht zu",
		"not braked hard all the way: # m/s² on average, # are needed":                                "nicht durchgehend stark gebremst: im Mittel # m/s², nötig sind #",
		"too short: it ends at # km/h, # are needed":                                                  "zu kurz: es endet bei # km/h, nötig sind #",
		"not full throttle: # km/h took # s, where this bike can do it in # s":                        "kein Vollgas: # km/h dauerten # s, diese Maschine kann es in # s",
		"the throttle was not held open at # km/h":                                                    "bei # km/h war das Gas nicht ganz offen",
		"its direction is not known: the fixes have neither positions nor a course":                   "die Richtung ist unbekannt: die Satelliten lieferten weder Ort noch Kurs",
		"the nearest run the other way is # min off: the wind may have changed":                       "die nächste Gegenrichtung liegt # min entfernt: der Wind kann sich geändert haben",
		"every run the other way already belongs to another pair":                                     "jede Gegenrichtung gehört schon zu einem anderen Paar",
		"there is no run the other way over the same stretch of road":                                 "auf demselben Stück Straße gibt es keine Gegenrichtung",
	}
}
