package card

import "stillair/export/shown"

// book is the words of the card in one language.
type book struct{ at int }

func wordsOf(l shown.Language) book {
	if l == shown.German {
		return book{1}
	}
	return book{0}
}

func (b book) say(key string) string { return catalogue()[key][b.at] }

// checks stand on the card in this order.
var checks = [...]string{"check_warm", "check_pressure", "check_phone", "check_weight", "check_seat", "check_brakes"}

// catalogue is the card's words, English and German.
func catalogue() map[string][2]string {
	return map[string][2]string{
		"coasts":         {"Rolling free, clutch in, there and back,", "Ausrollen mit gezogener Kupplung, hin und zurück,"},
		"pulls":          {"Full throttle in one gear, there and back,", "Vollgas in einem Gang, hin und zurück,"},
		"launches":       {"Launches, there and back", "Starts, hin und zurück"},
		"roll-ons":       {"Full throttle in one gear, there and back,", "Vollgas in einem Gang, hin und zurück,"},
		"up_from_to":     {"from %s to %s", "von %s bis %s"},
		"title":          {"Test card", "Versuchskarte"},
		"pairs":          {"%d pairs with each setup", "%d Paare mit jedem Aufbau"},
		"minutes":        {"about %.0f min", "etwa %.0f min"},
		"speeds":         {"from %s down to %s", "von %s bis %s"},
		"road":           {"Straight, level road", "Gerade, ebene Straße"},
		"up":             {"to get up to speed, and to stop from it", "zum Beschleunigen und wieder zum Anhalten"},
		"run":            {"for the run", "für den Lauf"},
		"stop":           {"to stop after the run (%s with a margin), and to get up to speed on the way back", "zum Anhalten nach dem Lauf (%s mit Reserve) und zum Beschleunigen auf dem Rückweg"},
		"both":           {"The same stretch both ways; begin at the same places.", "Dasselbe Stück in beiden Richtungen; an denselben Stellen beginnen."},
		"before":         {"Before riding", "Vor der Fahrt"},
		"order":          {"In this order", "In dieser Reihenfolge"},
		"number":         {"Run", "Lauf"},
		"setup":          {"Setup", "Aufbau"},
		"pair":           {"Pair", "Paar"},
		"notes":          {"Notes: wind, traffic, anything odd", "Notizen: Wind, Verkehr, Auffälliges"},
		"there":          {"there", "hin"},
		"back":           {"back", "zurück"},
		"change":         {"Change the setup", "Aufbau wechseln"},
		"weigh":          {"weight as ridden, tyres, what was changed", "Gewicht fahrfertig, Reifen, was geändert wurde"},
		"cautions":       {"Take care", "Vorsicht"},
		"room":           {"Air temperature, pressure, wind; who was there", "Lufttemperatur, Luftdruck, Wind; wer dabei war"},
		"check_warm":     {"Ten minutes ridden, tyres and oil warm", "Zehn Minuten gefahren, Reifen und Öl warm"},
		"check_pressure": {"Tyre pressures set cold, the same for all setups", "Reifendruck kalt eingestellt, für alle Aufbauten gleich"},
		"check_phone":    {"Phone firmly fixed, recording, satellites good", "Telefon fest, Aufzeichnung läuft, Satelliten gut"},
		"check_weight":   {"Weight with each setup known", "Gewicht mit jedem Aufbau bekannt"},
		"check_seat":     {"Same posture, same clothes, every run", "Gleiche Haltung, gleiche Kleidung, in jedem Lauf"},
		"check_brakes":   {"Brakes checked, road walked or ridden once, nobody on it", "Bremsen geprüft, Strecke einmal abgegangen oder abgefahren, niemand darauf"},
	}
}

// Ridden is the kind of run: the name of a push in package plan, or "coasts".
func Ridden(what string, l shown.Language) string { return wordsOf(l).say(what) }
