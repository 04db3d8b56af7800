package words

import (
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofReport holds the texts of the report of a ride that are not findings.
func ofReport() []Entry {
	return slices.Concat(ofReportHead(), ofReportRuns(), ofReportLoads(), ofReportAdvice(), ofReportPowers(), ofReportFoot(), ofFigures(), ofDefaults())
}

func ofReportHead() []Entry {
	two := args(finding.Text("b", "tall screen"), finding.Text("a", "bare"))
	return []Entry{
		{"report.title", nil, "A ride, measured", "Eine Fahrt, gemessen"},
		{"report.invented", nil, "Invented ride: simulated, not ridden", "Erfundene Fahrt: simuliert, nicht gefahren"},
		{"report.bike", nil, "Bike", "Motorrad"},
		{"report.date", nil, "Date", "Datum"},
		{"report.lasted", nil, "Duration", "Dauer"},
		{"report.distance", nil, "Distance", "Strecke"},
		{"report.fastest", nil, "Top speed", "Höchsttempo"},
		{"report.lag", nil, "GPS delay", "GPS-Verzögerung"},
		{"report.lag_found", args(finding.Time("lag", 0.31).With(0.02)), "{lag±}, found from the ride", "{lag±}, aus der Fahrt bestimmt"},
		{"report.lag_assumed", args(finding.Time("lag", 0.2)), "{lag.2}, assumed: the ride does not show it", "{lag.2}, angenommen: die Fahrt zeigt sie nicht"},
		{"report.mass", nil, "Mass as ridden", "Masse, fahrfertig mit Fahrer"},
		{"report.setups", nil, "Setups", "Aufbauten"},
		{"report.as_ridden", nil, "as ridden", "wie gefahren"},
		{"report.helped", nil, "Did it help?", "Hat es geholfen?"},
		{"report.against", two, "{b} against {a}", "{b} gegen {a}"},
		{"report.difference", nil, "difference", "Unterschied"},
		{"report.change", nil, "change", "Änderung"},
		{"report.interval", nil, "95 % interval", "95-%-Intervall"},
		{"report.to", nil, "to", "bis"},
		{"report.answer", nil, "answer", "Antwort"},
		{"report.no_difference", nil, "no difference", "kein Unterschied"},
		{"report.p", nil, "p is the chance of a difference this large by luck alone, with the number of comparisons allowed for.",
			"p ist die Wahrscheinlichkeit, dass ein so großer Unterschied allein durch Zufall entsteht; die Zahl der Vergleiche ist berücksichtigt."},
		{"report.takes_more", args(finding.Speed("speed", 100*units.KMH), finding.Power("power", 820).With(150), finding.Text("b", "tall screen")),
			"{speed} takes {power±} more at the tyre with {b}", "{speed} kosten am Reifen {power±} mehr mit {b}"},
		{"report.takes_less", args(finding.Speed("speed", 100*units.KMH), finding.Power("power", 820).With(150), finding.Text("b", "tall screen")),
			"{speed} takes {power±} less at the tyre with {b}", "{speed} kosten am Reifen {power±} weniger mit {b}"},
		{"report.know", nil, "Read this first", "Vorab wichtig"},
		{"report.ride", nil, "The ride", "Die Fahrt"},
		{"report.noted", nil, "Your notes", "Notizen"},
	}
}

func ofReportRuns() []Entry {
	run := finding.Count("run", 3)
	return []Entry{
		{"report.best", nil, "Best of the ride", "Bestwerte der Fahrt"},
		{"report.from_movement", args(run), "from first movement, run {run~}", "ab der ersten Bewegung, Lauf {run~}"},
		{"report.after_rollout", args(run, finding.Time("moving", 4.31).With(0.02)), "after one foot of rollout, run {run~}; {moving±} from first movement",
			"nach 1 Fuß, Lauf {run~}; {moving±} ab der ersten Bewegung"},
		{"report.through_at", args(finding.Speed("speed", 52)), "through at {speed}", "Durchfahrt mit {speed}"},
		{"report.rolling", args(run), "rolling, run {run~}", "rollend, Lauf {run~}"},
		{"report.launches", nil, "Launches", "Starts"},
		{"report.launches_lead", nil, "Seconds from one foot (0.3048 m) of rollout, where a drag strip's clock starts, and, as “moving”, from first movement, which is known less well. ± is half of the 95 % interval. Speeds at 1/8 and 1/4 mile are the mean over the last 66 feet.",
			"Sekunden ab 1 Fuß (0,3048 m), wo die Uhr am Dragstrip beginnt, und als „bewegt“ ab der ersten Bewegung, die weniger genau bekannt ist. ± ist die Hälfte des 95-%-Intervalls. Das Tempo bei 1/8 und 1/4 Meile ist das Mittel der letzten 66 Fuß."},
		{"report.mark", nil, "mark", "Marke"},
		{"report.run_seconds", args(run), "run {run~}, s", "Lauf {run~}, s"},
		{"report.moving", nil, "moving", "bewegt"},
		{"report.at", args(finding.Speed("speed", 52)), "at {speed.1}", "mit {speed.1}"},
		{"report.roll_ons", nil, "Roll-ons", "Durchzüge"},
		{"report.roll_ons_note", nil, "One direction is ridden with wind and slope, the other against them: the mean of both is the fairer figure.",
			"Einmal mit Wind und Gefälle, einmal dagegen: das Mittel beider Richtungen ist der gerechtere Wert."},
		{"report.gear", args(finding.Text("gear", "4")), "gear {gear}", "Gang {gear}"},
		{"report.passes", nil, "Flying passes", "Messfahrten mit fliegendem Start"},
		{"report.passes_lead", nil, "The same road ridden in both directions at a steady speed: distance over time, both over the same metres, and the mean of the two speeds.",
			"Dieselbe Straße in beiden Richtungen mit gleichbleibendem Tempo: Strecke durch Zeit, beide Male über dieselben Meter, und das Mittel der beiden Geschwindigkeiten."},
		{"report.passes_note", nil, "Wind and slope add half the difference to one direction and take it from the other; in the mean they largely cancel. No recording shows whether the throttle was fully open.",
			"Wind und Gefälle bringen in der einen Richtung die halbe Differenz und kosten sie in der anderen; im Mittel heben sie sich größtenteils auf. Ob das Gas ganz offen war, zeigt keine Aufzeichnung."},
		{"report.pass_rejected", args(finding.Text("at", "4:12.7"), finding.Text("over", "1 km"), finding.Speed("speed", 50)), "Not counted: at {at}, {speed.1} over {over}, mean of both directions.",
			"Zählt nicht: bei {at}, {speed.1} über {over}, Mittel beider Richtungen."},
		{"report.mean_both", nil, "mean of both", "Mittel beider"},
		{"report.there", nil, "there", "hin"},
		{"report.back", nil, "back", "zurück"},
		{"report.half_difference", nil, "half the difference", "halbe Differenz"},
		{"report.passes_apart", nil, "apart", "Abstand"},
		{"report.stops", nil, "Stops", "Bremsungen"},
		{"report.run", nil, "run", "Lauf"},
		{"report.speed", nil, "speed", "Tempo"},
		{"report.way", nil, "distance", "Strecke"},
		{"report.time", nil, "time", "Zeit"},
		{"report.every_run", nil, "Every run", "Alle Läufe"},
		{"report.found", args(finding.Count("n", 12)), "{n|one run|# runs} found.", "{n|ein Lauf|# Läufe} gefunden."},
		{"report.found_rejected", args(finding.Count("n", 12), finding.Count("rejected", 2)), "{n|one run|# runs} found, {rejected~} rejected. A rejected run stays here with its reason and is not used.",
			"{n|ein Lauf|# Läufe} gefunden, {rejected~} verworfen. Ein verworfener Lauf bleibt mit seinem Grund hier stehen und zählt nicht."},
		{"report.no", nil, "no.", "Nr."},
		{"report.what", nil, "what", "was"},
		{"report.when", nil, "at", "bei"},
		{"report.speeds", nil, "speeds", "Tempo"},
		{"report.outcome", nil, "outcome", "Ergebnis"},
		{"report.pair", args(finding.Count("pair", 2)), "pair {pair~}", "Paar {pair~}"},
		{"report.counts", nil, "counts", "zählt"},
		{"report.counts_caution", nil, "counts, with a caution", "zählt, mit Vorbehalt"},
		{"report.rejected", nil, "rejected", "verworfen"},
		{"kind.launch", nil, "launch", "Start"},
		{"kind.roll-on", nil, "roll-on", "Durchzug"},
		{"kind.pull", nil, "pull", "Volllast"},
		{"kind.coast-down", nil, "coast-down", "Ausrollen"},
		{"kind.stop", nil, "stop", "Bremsung"},
	}
}

func ofReportLoads() []Entry {
	return []Entry{
		{"report.loads", nil, "Drag and rolling resistance", "Luft- und Rollwiderstand"},
		{"report.drag_area", nil, "drag area", "Luftwiderstandsfläche"},
		{"report.rolling_resistance", nil, "rolling resistance", "Rollwiderstand"},
		{"report.interval_of", args(finding.Text("low", "0.53"), finding.Text("high", "0.57 m²")), "95 % interval from {low} to {high}", "95-%-Intervall von {low} bis {high}"},
		{"report.basis", args(finding.Count("pairs", 5), finding.Count("runs", 10)), "From {pairs|one pair|# pairs} there and back, {runs~} coast-downs. On a level road without wind",
			"Aus {pairs|einem Paar|# Paaren} hin und zurück, {runs~} Ausrollversuchen. Auf ebener Straße ohne Wind"},
		{"report.takes", args(finding.Speed("speed", 100*units.KMH), finding.Power("power", 9300).With(200), finding.Share("air", 0.78)),
			"{speed} takes {power±} at the tyre, {air} of it for air drag", "{speed} kosten am Reifen {power±}, davon {air} für den Luftwiderstand"},
		{"report.formula", args(finding.Num("a", 51.5).With(1.1), finding.Num("c", 0.334).With(0.005)), "F = {a±} N + {c±} N/(m/s)² · v² at 20 °C and 982.1 hPa, v in m/s",
			"F = {a±} N + {c±} N/(m/s)² · v² bei 20 °C und 982,1 hPa, v in m/s"},
		{"report.meaning", nil, "What the figures mean", "Was die Werte bedeuten"},
		{"report.mean_cda", nil, "CdA, the drag area, says how much air bike and rider push aside. Air drag grows with it and with the square of the speed, so it matters most on the open road. Less is better.",
			"CdA, die Luftwiderstandsfläche (cW·A), sagt, wie viel Luft Maschine und Fahrer verdrängen. Der Luftwiderstand wächst mit ihr und mit dem Quadrat des Tempos; auf der Landstraße zählt sie am meisten. Weniger ist besser."},
		{"report.mean_crr", nil, "Crr, the rolling resistance, is the share of the weight lost to tyres, bearings and chain, extrapolated to standstill. It matters most in town. Tyre pressure, tyre temperature and the road's surface change it.",
			"Crr, der Rollwiderstandsbeiwert, ist der Anteil des Gewichts, den Reifen, Lager und Kette kosten, auf Stillstand hochgerechnet. Er zählt am meisten in der Stadt. Reifendruck, Reifentemperatur und Straßenbelag ändern ihn."},
		{"report.mean_interval", nil, "The ± is half of a 95 % interval: were the whole test repeated many times, 95 of 100 such intervals would hold the true figure. It allows for gusts, the road, the receiver's errors and how well the mass is known, but not for a mass that was entered wrongly.",
			"Das ± ist die Hälfte eines 95-%-Intervalls: Würde man den ganzen Versuch oft wiederholen, enthielten 95 von 100 solchen Intervallen den wahren Wert. Böen, Straße, Empfängerfehler und die Unsicherheit der Masse sind darin, eine falsch eingegebene Masse nicht."},
		{"report.mean_difference", nil, "Do not read the difference of two setups off their intervals: they share part of their errors, so the difference, given above, is known better than either.",
			"Den Unterschied zweier Aufbauten nicht aus ihren Intervallen ablesen: Ein Teil der Fehler ist beiden gemeinsam, daher ist der oben genannte Unterschied genauer bekannt als jeder der beiden Werte."},
	}
}

func ofReportAdvice() []Entry {
	return []Entry{
		{"report.limits", nil, "What limits the certainty of CdA", "Was die Genauigkeit von CdA begrenzt"},
		{"report.improve", args(finding.Of("cause", finding.New("limit.gusts")), finding.Of("help", finding.New("help.gusts"))), "Mostly {cause}. To improve it: {help}.", "Vor allem {cause}. Zum Verbessern: {help}."},
		{"help.gusts", nil, "a calmer hour helps most, early in the morning or late; longer rolls help too",
			"am meisten hilft eine ruhigere Stunde, früh oder spät am Tag; längeres Ausrollen hilft auch"},
		{"help.wind", nil, "more pairs, each there and back within minutes, or a calmer hour", "mehr Paare, jedes innerhalb weniger Minuten hin und zurück, oder eine ruhigere Stunde"},
		{"help.receiver", nil, "open sky over the phone, and longer rolls; a receiver with more fixes per second helps too",
			"freier Himmel über dem Telefon und längeres Ausrollen; ein Empfänger mit mehr Messungen pro Sekunde hilft auch"},
		{"help.road", nil, "in each pair, pull the clutch in some 200 m farther on than in the one before, there and back, and at the same places with every setup; a smoother stretch helps too",
			"in jedem Paar rund 200 m später auskuppeln als im vorigen, hin wie zurück, und mit jedem Aufbau an denselben Stellen; eine glattere Strecke hilft auch"},
		{"help.slope", nil, "look for a more level stretch, and roll it both ways from the same points", "eine ebenere Strecke suchen und in beide Richtungen von denselben Stellen aus rollen"},
		{"help.posture", nil, "keep head, elbows and knees in the same place in every run; more pairs help too", "Kopf, Ellbogen und Knie in jedem Lauf gleich halten; mehr Paare helfen auch"},
		{"help.mass", nil, "weigh bike and rider as ridden, on a truck scale", "Maschine und Fahrer fahrfertig auf einer Fahrzeugwaage wiegen"},
		{"help.air", nil, "enter the temperature and pressure of the hour, or let a barometer measure the pressure", "Temperatur und Luftdruck der Stunde angeben oder den Druck von einem Barometer messen lassen"},
		{"help.assumed", nil, "ride in calm air or enter the wind of a weather station, with warm tyres and in one posture; more pairs do not make it smaller, and most of it cancels between two setups",
			"bei Windstille fahren oder den Wind einer Wetterstation angeben, mit warmen Reifen und in einer Haltung; mehr Paare verkleinern das nicht, und zwischen zwei Aufbauten hebt sich das meiste auf"},
		{"help.days", nil, "ride both setups on one day, A/B/B/A on the same road: then what differs between days cancels", "beide Aufbauten an einem Tag fahren, A/B/B/A auf derselben Straße: dann hebt sich auf, was zwischen den Tagen anders ist"},
	}
}

func ofReportPowers() []Entry {
	power, speed := finding.Power("power", 58e3).With(900), finding.Speed("speed", 45)
	pulls := finding.Count("pulls", 4)
	return []Entry{
		{"report.powers", nil, "Power at the road", "Leistung an der Straße"},
		{"report.powers_lead", nil, "What arrives at the rear tyre on full throttle, in still air on the level.",
			"Was bei Vollgas am Hinterreifen ankommt, ohne Wind auf ebener Straße."},
		{"report.no_dynamometer", nil, "Power at the road is calculated from weight, acceleration and road load. It does not replace a dynamometer.",
			"Leistung an der Straße ist aus Gewicht, Beschleunigung und Fahrwiderstand berechnet. Sie ersetzt keinen Prüfstand."},
		{"report.peak", args(power, speed, pulls), "at most {power±} at {speed}; from {pulls|one pull|# pulls}", "höchstens {power±} bei {speed}; aus {pulls|einem Versuch|# Versuchen}"},
		{"report.peak_at_end", args(power, speed, pulls), "at most {power±} at {speed}, where the pulls ended: the peak may lie beyond; from {pulls|one pull|# pulls}",
			"höchstens {power±} bei {speed}, wo die Versuche endeten: die Spitze kann darüber liegen; aus {pulls|einem Versuch|# Versuchen}"},
		{"report.engine_speed", args(finding.EngineSpeed("revs", 9200)), "engine speed there {revs}", "Drehzahl dort {revs}"},
		{"report.standard", args(finding.Num("sae", 1.012), finding.Num("iso", 1.011)), "Shown as ridden, in the air of the day. To standard air: × {sae.3} according to SAE J1349, × {iso.3} according to ISO 1585",
			"Wie gefahren, in der Luft des Tages. Auf Normluft: × {sae.3} nach SAE J1349, × {iso.3} nach ISO 1585"},
		{"report.standard_far", nil, "the day was further from standard air than the standards are meant for", "der Tag lag weiter von der Normluft weg, als die Normen vorsehen"},
	}
}

func ofReportFoot() []Entry {
	return []Entry{
		{"report.assumed", nil, "Assumed (not entered)", "Angenommen (nicht eingegeben)"},
		{"report.left_out", nil, "Left out or corrected in the recording", "In der Aufzeichnung ausgelassen oder korrigiert"},
		{"report.cautions", nil, "Cautions", "Vorsicht"},
		{"report.caution_traffic", nil, "Full throttle, hard braking and rolling free with the clutch in are dangerous in traffic and illegal on many roads. Local law comes first; a closed course with a qualified instructor is the place to learn them.",
			"Vollgas, hartes Bremsen und Rollen mit gezogener Kupplung sind im Verkehr gefährlich und auf vielen Straßen verboten. Das örtliche Recht geht vor; üben lässt sich das auf gesperrter Strecke mit Leuten vom Fach."},
		{"report.caution_phone", nil, "Never look at or touch the phone while moving. Everything here is measured without that.",
			"Während der Fahrt nie auf das Telefon schauen oder es berühren. Alles hier wird ohne das gemessen."},
		{"report.caution_coast", nil, "Coast down with the engine running and both hands on the bars; in neutral or with the clutch in there is no engine braking to help you.",
			"Mit laufendem Motor und beiden Händen am Lenker ausrollen; im Leerlauf oder mit gezogener Kupplung bremst der Motor nicht mit."},
		{"report.caution_estimate", nil, "These figures are estimates from a phone. They prove nothing in court, in a sale, for homologation or for a record.",
			"Diese Werte sind Schätzungen eines Telefons. Sie sind kein Beweis vor Gericht, beim Verkauf, für eine Zulassung oder einen Rekord."},
		{"report.written_by", args(finding.Text("program", "Stillair 1")), "Written by {program}.", "Geschrieben von {program}."},
		{"report.method", nil, "How it was computed", "Wie gerechnet wurde"},
		{"report.method_text", nil, "Speed and acceleration come from the satellite receiver and the accelerometer together, through a forward-backward smoother that also finds the receiver's delay and how the phone was fixed. The road load is fitted to the speed curves of all coast-downs of a setup at once, F = ½ρ·CdA·u|u| + m·g·Crr(1 + k·v) + m·g·sin θ, with wind and slope of each pair as unknowns and with the errors that gusts and the receiver leave. Intervals are 95 %.",
			"Tempo und Beschleunigung stammen gemeinsam vom Satellitenempfänger und vom Beschleunigungssensor, über einen vorwärts und rückwärts laufenden Glätter, der auch die Verzögerung des Empfängers und die Lage des Telefons findet. Der Fahrwiderstand wird an die Tempokurven aller Ausrollversuche eines Aufbaus zugleich angepasst, F = ½ρ·CdA·u|u| + m·g·Crr(1 + k·v) + m·g·sin θ, mit Wind und Gefälle jedes Paars als Unbekannten und mit den Fehlern, die Böen und Empfänger hinterlassen. Intervalle gelten für 95 %."},
	}
}

// ofFigures holds what stands on and under the figures.
func ofFigures() []Entry {
	unit := finding.Text("unit", "units")
	run := finding.Count("run", 3)
	return []Entry{
		{"figure.coast_downs", args(finding.Text("setup", "bare")), "Coast-downs, {setup}", "Ausrollversuche, {setup}"},
		{"figure.coast_downs_caption", args(finding.Count("n", 10)), "{n|one coast-down|# coast-downs}, measured (dots one way, triangles the other) and fitted with drag and rolling resistance (lines). Below, the residual: measured minus fitted.",
			"{n|ein Ausrollversuch|# Ausrollversuche}, gemessen (Punkte hin, Dreiecke zurück) und mit Luft- und Rollwiderstand angepasst (Linien). Darunter das Residuum: gemessen minus angepasst."},
		{"figure.speed", args(unit), "speed, {unit}", "Tempo, {unit}"},
		{"figure.since_clutch", nil, "seconds since the clutch was pulled", "Sekunden seit dem Ziehen der Kupplung"},
		{"figure.residual", args(unit), "residual, {unit}", "Residuum, {unit}"},
		{"figure.launch", args(run), "Launch, run {run~}", "Start, Lauf {run~}"},
		{"figure.launch_caption", args(run), "Run {run~}: speed since first movement. Dots: speeds reached; triangles: distances covered.",
			"Lauf {run~}: Tempo seit der ersten Bewegung. Punkte: erreichtes Tempo; Dreiecke: zurückgelegte Strecke."},
		{"figure.since_movement", nil, "seconds from first movement", "Sekunden ab der ersten Bewegung"},
		{"figure.power", args(unit), "power at the road, {unit}", "Leistung an der Straße, {unit}"},
		{"figure.power_caption", nil, "Power at the road in still air on the level, as measured on full throttle, with its 95 % interval. At the crank it is higher by the losses in gearbox, chain and tyre.",
			"Leistung an der Straße bei Windstille in der Ebene, wie bei Vollgas gemessen, mit 95-%-Intervall. An der Kurbelwelle ist sie um die Verluste in Getriebe, Kette und Reifen höher."},
		{"figure.minutes", nil, "minutes", "Minuten"},
		{"figure.acceleration", nil, "acceleration, m/s²", "Beschleunigung, m/s²"},
		{"figure.ride_caption", args(finding.Text("long", "13 min 43 s")), "Speed and acceleration over the ride of {long}, and below them the runs that were found in it. Hollow: rejected.",
			"Tempo und Beschleunigung über die Fahrt von {long}, darunter die Läufe, die darin gefunden wurden. Hohl: verworfen."},
		{"figure.steady_speed", args(unit), "steady speed, {unit}", "gleichmäßiges Tempo, {unit}"},
		{"figure.tyres", nil, "tyres", "Reifen"},
		{"figure.air", nil, "air", "Luft"},
		{"figure.force", args(finding.Text("setup", "bare")), "force, {setup}", "Kraft, {setup}"},
		{"figure.force_axis", args(unit), "force, {unit}", "Kraft, {unit}"},
		{"figure.force_caption", nil, "Force at a steady speed on a level road without wind: rolling resistance, and air drag on top. Dashed: the 95 % interval of the sum.",
			"Kraft bei gleichmäßigem Tempo auf ebener Straße ohne Wind: Rollwiderstand und darüber Luftwiderstand. Gestrichelt: das 95-%-Intervall der Summe."},
		{"figure.needed", args(finding.Text("setup", "bare")), "power, {setup}", "Leistung, {setup}"},
		{"figure.needed_axis", args(unit), "power, {unit}", "Leistung, {unit}"},
		{"figure.needed_caption", nil, "Power at a steady speed on a level road without wind: rolling resistance, and air drag on top. Dashed: the 95 % interval of the sum.",
			"Leistung bei gleichmäßigem Tempo auf ebener Straße ohne Wind: Rollwiderstand und darüber Luftwiderstand. Gestrichelt: das 95-%-Intervall der Summe."},
	}
}

// ofDefaults says which value stands for a field of ride.json that was not
// entered.
func ofDefaults() []Entry {
	return []Entry{
		{"default.mass_kg", args(finding.Mass("x", 280)), "mass as ridden: {x} (mass_kg)", "Masse, fahrfertig mit Fahrer: {x} (mass_kg)"},
		{"default.mass_sd_kg", args(finding.Mass("x", 118)), "uncertainty of the mass: ± {x} (mass_sd_kg)", "Unsicherheit der Masse: ± {x} (mass_sd_kg)"},
		{"default.rotating_mass_kg", args(finding.Mass("x", 11.2)), "what the wheels add to the inertia: {x.1} (rotating_mass_kg)", "was die Räder zur Trägheit beitragen: {x.1} (rotating_mass_kg)"},
		{"default.wind_sd_mps", args(finding.Wind("x", 1.5)), "how much the wind differs from pair to pair: {x.1} (wind_sd_mps)", "wie sehr sich der Wind von Paar zu Paar ändert: {x.1} (wind_sd_mps)"},
		{"default.air.temperature_c", args(finding.Temperature("x", 15)), "air temperature: {x} (air.temperature_c)", "Lufttemperatur: {x} (air.temperature_c)"},
		{"default.air.pressure_hpa", args(finding.Pressure("x", 101325)), "air pressure: {x} (air.pressure_hpa)", "Luftdruck: {x} (air.pressure_hpa)"},
		{"default.air.humidity_pct", args(finding.Share("x", 0.5)), "relative humidity: {x} (air.humidity_pct)", "relative Luftfeuchte: {x} (air.humidity_pct)"},
	}
}
