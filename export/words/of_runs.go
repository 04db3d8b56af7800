package words

import (
	"slices"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofRuns holds what package runs and its packages say about runs, pairs, power
// and the engine.
func ofRuns() []Entry {
	return slices.Concat(ofPushes(), ofPasses(), ofCoasts(), ofRecordedRuns(), ofLoads(), ofCompared(), ofPairs(), ofPower(), ofEngine(), ofEntries())
}

func at(kmh float64) finding.Arg { return finding.Speed("at", kmh*units.KMH) }

func ofPushes() []Entry {
	return []Entry{
		{"launch.too_short", args(at(48), finding.Speed("needed", 60*units.KMH)),
			"too short: it ends at {at}, and {needed} is needed", "zu kurz: endet bei {at}, nötig sind {needed}"},
		{"launch.part_throttle", args(finding.Speed("speed", 60*units.KMH), finding.Time("took", 7.1), finding.Time("best", 3.2)),
			"not full throttle: {took.1} to {speed}; this bike's best on this ride is {best.1}",
			"kein Vollgas: {took.1} bis {speed}; der beste Start dieser Fahrt brauchte {best.1}"},
		{"launch.creep", args(finding.Speed("at", 3*units.KMH)), "the bike was already rolling at {at} when the launch began: where the first foot begins is not certain, and the ± allows for that. Stand still before a launch",
			"das Motorrad rollte schon mit {at}, als der Start begann: wo der erste Fuß beginnt, ist nicht sicher, und das ± berücksichtigt das. Vor einem Start stillstehen"},
		{"launch.wheelie", args(finding.Angle("by", 0.24), finding.Time("after", 1.3)), "the front came up by {by}, {after.1} after the start (or the phone tilted): the ± allows for that. Keep both wheels on the ground",
			"das Motorrad stieg {after.1} nach dem Start vorn um {by} (oder das Telefon kippte): Das ± berücksichtigt das. Beide Räder am Boden lassen"},
		{"launch.thrust_dropped", args(finding.Share("by", 0.4), finding.Time("for", 0.6), finding.Time("after", 1.2)),
			"{after.1} after the start {by} of the thrust was missing for {for.1}: the rear wheel spun or hopped, the throttle was eased, or a gear change took long. The times are correct, but the bike can be quicker",
			"{after.1} nach dem Start fehlten {for.1} lang {by} der Schubkraft: Das Hinterrad drehte durch oder sprang, das Gas wurde zurückgenommen, oder ein Gangwechsel dauerte lange. Die Zeiten stimmen, aber das Motorrad kann es schneller"},
		{"launch.slow", args(finding.Speed("speed", 60*units.KMH), finding.Time("took", 7.1), finding.Time("most", 5.8)),
			"slower than any launch that counts: {took.1} to {speed}, where at most {most.1} counts",
			"langsamer als jeder Start, der zählt: {took.1} bis {speed}, höchstens {most.1} zählen"},
		{"launch.outdone", nil, "the throttle was only part open: at the same speeds the bike pulled clearly harder in one gear",
			"das Gas war nur teilweise offen: Bei gleichem Tempo zog das Motorrad in einem Gang deutlich stärker"},
		{"rollon.too_short", args(finding.Speed("from", 62*units.KMH), finding.Speed("to", 95*units.KMH), finding.Text("pair", "40-60 mph")),
			"too short: from {from} to {to} it misses part of {pair}", "zu kurz: von {from} bis {to} fehlt ein Teil von {pair}"},
		{"throttle.below", nil, "the throttle was only part open: in this ride the bike pulled clearly harder at the same engine speed",
			"das Gas war nur teilweise offen: In dieser Fahrt zog das Motorrad bei gleicher Drehzahl deutlich stärker"},
		{"throttle.unproven", nil, "nothing in this ride shows that the throttle was fully open: repeat it in the same gear, at least twice",
			"nichts in dieser Fahrt zeigt, dass das Gas ganz offen war: mindestens zweimal im selben Gang wiederholen"},
		{"throttle.eased", args(at(85)), "the throttle was not held open at {at}", "bei {at} war das Gas nicht ganz offen"},
		{"stop.weak", args(finding.Acceleration("mean", 3.8), finding.Acceleration("needed", 4)),
			"not braked hard all the way: {mean.1} on average, {needed.0} is needed", "nicht durchgehend stark gebremst: im Mittel {mean.1}, nötig sind {needed.0}"},
	}
}

func ofPasses() []Entry {
	return []Entry{
		{"pass.eased", nil, "the bike was still gaining speed when the throttle was eased, or a limiter held it: it may go faster",
			"das Motorrad wurde noch schneller, als das Gas zurückgenommen wurde oder ein Begrenzer eingriff: es geht vielleicht schneller"},
		{"pass.unseen", nil, "the ride does not show one long pull up to this speed in both directions, so it may go faster",
			"die Fahrt zeigt nicht in beiden Richtungen ein langes Beschleunigen bis zu diesem Tempo: vielleicht geht es schneller"},
		{"pass.run_up", nil, "it was the run-up to a coast-down, which is often ridden at part throttle: for a pass keep the throttle open, and slow down gently only beyond the stretch",
			"es war der Anlauf zu einem Ausrollversuch, der oft mit wenig Gas gefahren wird: für eine Messfahrt das Gas offen halten und erst hinter der Strecke sanft bremsen"},
		{"pass.apart", args(finding.Speed("apart", 40*units.KMH)), "the two directions are {apart} apart, more than wind and slope explain",
			"die beiden Richtungen liegen {apart} auseinander, mehr als Wind und Gefälle erklären"},
	}
}

func ofCoasts() []Entry {
	return []Entry{
		{"coast.too_short", args(finding.Speed("span", 30*units.KMH), finding.Speed("needed", 40*units.KMH)),
			"too short: it covers {span}, and {needed} is needed", "zu kurz: der Lauf umfasst {span}, nötig sind {needed}"},
		{"coast.not_smooth", nil, "its speed is not a smooth curve", "die Geschwindigkeit verläuft nicht glatt"},
		{"coast.too_hard", nil, "it slowed harder than air and tyres can explain: a gear was left in, or the brake dragged",
			"es verlor mehr Tempo, als Luft und Reifen erklären: ein Gang war drin, oder die Bremse schleifte"},
		{"coast.too_little", nil, "it slowed less than air and tyres can explain: the road falls, or the throttle was not closed",
			"es verlor weniger Tempo, als Luft und Reifen erklären: die Straße fällt, oder das Gas war nicht zu"},
		{"coast.too_hard_fast", nil, "it slowed too much at high speed for air drag: the brake was on, or the engine held it back",
			"bei hohem Tempo verlor es mehr Tempo, als der Luftwiderstand erklärt: Bremse oder Motor hielten zurück"},
		{"coast.too_little_fast", nil, "it slowed too little at high speed for air drag: the throttle was not closed, or a gear was left in",
			"bei hohem Tempo verlor es weniger Tempo, als der Luftwiderstand erklärt: das Gas war nicht zu, oder ein Gang war drin"},
		{"coast.too_little_slow", nil, "it slowed too little at low speed: the road falls, or the throttle was not closed",
			"bei niedrigem Tempo verlor es zu wenig Tempo: die Straße fällt, oder das Gas war nicht zu"},
		{"coast.in_gear", args(finding.Share("chance", 0.8)), "with a probability of {chance.0} a gear was left in or the brake dragged, judged by all runs of the ride",
			"mit {chance.0} Wahrscheinlichkeit war ein Gang drin oder die Bremse schleifte; das zeigen alle Versuche der Fahrt zusammen"},
		{"coast.engine_turns", nil, "the vibration shows the engine turning with the wheels: a gear was left in", "die Vibration zeigt, dass sich der Motor mit den Rädern drehte: ein Gang war drin"},
		{"coast.held_by_drive", nil, "the drive of this bike turns with the wheel and holds it back, by a force that is not known, so this says nothing about air and tyres",
			"der Antrieb dieses Motorrads dreht sich mit dem Rad und bremst es mit einer Kraft, die nicht bekannt ist; über Luft und Reifen sagt das nichts"},
		{"coast.unlike_others", nil, "it begins and ends as the coast-downs of this ride do, but something held it back all the way: a gear was left in, or the brake was on",
			"es beginnt und endet wie die Ausrollversuche dieser Fahrt, wurde aber die ganze Zeit gebremst: ein Gang war drin, oder die Bremse zog"},
		{"coast.bends", args(finding.Angle("by", 0.7), finding.Share("cost", 0.08)), "the road bends, by {by} in all, and bends take {cost.0} of what slows it",
			"die Straße macht Kurven, insgesamt {by}, und Kurven machen {cost.0} der Verzögerung aus"},
		{"coast.some_bends", args(finding.Share("cost", 0.03)), "bends take about {cost.0} of what slows it", "Kurven machen etwa {cost.0} der Verzögerung aus"},
		{"coast.part", args(finding.Of("why", finding.New("coast.braked", at(70)))),
			"only a part is used: {why}", "nur ein Teil wird verwendet: {why}"},
		{"coast.braked", args(at(62)), "something held the bike back at {at}: the brake, or a gust",
			"bei {at} hat etwas gebremst: die Bremse oder eine Bö"},
		{"coast.pushed", args(at(62)), "something pushed the bike at {at}: the throttle, or a vehicle passing",
			"bei {at} hat etwas geschoben: Gas oder ein überholendes Fahrzeug"},
		{"coast.disturbed", nil, "it was disturbed", "etwas hat gestört"},
	}
}

func ofRecordedRuns() []Entry {
	return []Entry{
		{"run.no_fixes", args(finding.Time("for", 6)), "no satellite fixes for {for.0}", "{for.0} lang kein Satellitenempfang"},
		{"run.hole", args(finding.Time("for", 2.5)), "the recording has a gap of {for.1}", "in der Aufzeichnung fehlen {for.1}"},
		{"run.hole_at_start", args(finding.Time("for", 0.4)), "the recording has a gap of {for.1} at the start", "am Anfang fehlen in der Aufzeichnung {for.1}"},
		{"run.hole_bridged", args(finding.Time("for", 0.4)), "the recording has a gap of {for.1}: the ± allows for it",
			"in der Aufzeichnung fehlen {for.1}: das ± berücksichtigt das"},
		{"run.satellites_alone", args(finding.Of("why", finding.New("mount.no_direction"))),
			"timed by GPS alone, which shows neither when it began nor whether the throttle stayed open: {why}",
			"allein vom GPS gemessen, das weder den Beginn zeigt noch, ob das Gas offen blieb: {why}"},
		{"run.not_felt", args(finding.Speed("gained", 30), finding.Speed("felt", 2)),
			"the speed changed by {gained}, but the accelerometer shows only {felt}: the GPS speeds are wrong there",
			"das Tempo änderte sich um {gained}, der Beschleunigungssensor zeigt aber nur {felt}: Dort stimmen die GPS-Geschwindigkeiten nicht"},
		{"run.phone_moved", nil, "the phone moved in its mount", "das Telefon ist in der Halterung verrutscht"},
		{"ride.usual_lag", nil, "how late the satellite fixes arrive is not clear from this ride, so the usual value was used",
			"wie spät die Satellitendaten ankommen, geht aus dieser Fahrt nicht hervor; der übliche Wert wurde verwendet"},
		{"ride.maybe_pounds", args(finding.Mass("entered", 639), finding.Mass("pounds", 289.8)),
			"hardly any motorcycle weighs {entered} with its rider. If the number was in pounds, enter {pounds}",
			"{entered} wiegt kaum ein Motorrad mit Fahrer. Falls die Zahl in Pfund gemeint war, {pounds} eingeben"},
		{"ride.usual_mass", args(finding.Mass("mass", 280).With(60)),
			"no mass was entered, so {mass±} was assumed: drag area and power are as uncertain as that, though setups compare well. Weigh bike and rider",
			"keine Masse eingegeben, daher {mass±} angenommen: Luftwiderstandsfläche und Leistung sind ebenso unsicher, Aufbauten lassen sich aber gut vergleichen. Motorrad und Fahrer wiegen"},
		{"ride.no_course", nil, "the fixes carry neither position nor direction, so coast-downs cannot be paired",
			"die Satellitendaten enthalten weder Ort noch Richtung, daher lassen sich Ausrollversuche nicht zu Paaren ordnen"},
	}
}

func ofLoads() []Entry {
	return []Entry{
		{"load.impossible", args(finding.Text("setup", "tall screen"), finding.Area("cda", 0.43).With(0.04), finding.Num("crr", 0.071).With(0.004)),
			"no road load for setup {setup}: its coast-downs give CdA {cda±} and Crr {crr±}, which no motorcycle has. Pull the clutch all the way in, keep off the brakes, and check the mass",
			"kein Fahrwiderstand für Aufbau {setup}: die Ausrollversuche ergeben CdA {cda±} und Crr {crr±}, das hat kein Motorrad. Kupplung ganz ziehen, nicht bremsen, Masse prüfen"},
		{"load.rolling_high", args(finding.Num("crr", 0.031).With(0.002)),
			"the rolling resistance of {crr±} is higher than most motorcycles have: if a gear was left in or a brake dragged in all coast-downs, this result is wrong. Ride some again to be sure, with the clutch pulled all the way in",
			"der Rollwiderstand von {crr±} ist höher als bei den meisten Motorrädern: war bei allen Ausrollversuchen ein Gang drin, oder schleifte eine Bremse, dann ist dieses Ergebnis falsch. Zur Sicherheit einige mit ganz gezogener Kupplung wiederholen"},
		{"coast.impossible_outcome", nil, "with the other runs of its setup it gives a road load that no motorcycle has: a gear was left in, the brake dragged, or the mass is wrong",
			"zusammen mit den anderen Läufen dieses Aufbaus ergibt er einen Fahrwiderstand, den kein Motorrad hat: ein Gang war drin, die Bremse schleifte, oder die Masse stimmt nicht"},
		{"load.changed_on_the_way", args(finding.Text("setup", "tall screen"), finding.Speed("at", 14.0)),
			"no road load for setup {setup}: in all its coast-downs the resistance changed abruptly at around {at}, as when a gear stays in until the engine idles. Pull the clutch all the way in from the start, and keep off the brakes",
			"kein Fahrwiderstand für Aufbau {setup}: in allen Ausrollversuchen änderte sich der Widerstand bei etwa {at} sprunghaft, wie wenn ein Gang drin bleibt, bis der Motor im Leerlauf dreht. Kupplung von Anfang an ganz ziehen, nicht bremsen"},
		{"coast.changed_on_the_way", nil, "as in the other runs of its setup, the resistance changed abruptly on the way: a gear was left in until the engine idled, or a brake was released",
			"wie in den anderen Läufen dieses Aufbaus änderte sich der Widerstand unterwegs sprunghaft: ein Gang war drin, bis der Motor im Leerlauf drehte, oder eine Bremse wurde losgelassen"},
		{"load.none", args(finding.Of("why", finding.New("pair.all_taken"))), "no road load: {why}", "kein Fahrwiderstand: {why}"},
		{"load.not_measured", args(finding.Text("setup", "tall screen")), "the road load of {setup} was not measured: ride coast-downs with it in both directions",
			"der Fahrwiderstand von {setup} wurde nicht gemessen: damit in beide Richtungen ausrollen"},
	}
}

func ofCompared() []Entry {
	return []Entry{
		{"compare.few_rides", nil, "fewer than two of these rides have a road load: each needs coast-downs in both directions",
			"weniger als zwei dieser Fahrten haben einen Fahrwiderstand: jede braucht Ausrollversuche in beide Richtungen"},
		{"compare.other_day", nil, "from different rides, so whatever changed between them is part of the difference: weaker than A/B/B/A on one day",
			"aus verschiedenen Fahrten, also steckt im Unterschied alles, was sich dazwischen geändert hat: schwächer als A/B/B/A an einem Tag"},
		{"compare.same_recording", args(finding.Text("a", "may.jsonl.gz"), finding.Text("b", "may-copy.jsonl.gz")),
			"{a} and {b} are the same recording, so nothing can differ", "{a} und {b} sind dieselbe Aufzeichnung, da kann sich nichts unterscheiden"},
		{"compare.two_recordings", nil, "choose two different rides; the setups of one ride are compared within it",
			"zwei verschiedene Fahrten wählen; die Aufbauten einer Fahrt werden innerhalb der Fahrt verglichen"},
		{"compare.different_bikes", args(finding.Text("a", "naked 700"), finding.Text("b", "tourer 1200")),
			"these are different bikes, {a} and {b}, so the difference would not be the setup's",
			"das sind verschiedene Motorräder, {a} und {b}, der Unterschied läge also nicht am Aufbau"},
		{"compare.one_bike", nil, "choose rides of one bike; if it is one bike, give it the same name in both",
			"Fahrten eines Motorrads wählen; ist es dasselbe, in beiden denselben Namen eintragen"},
		{"compare.other_bike", args(finding.Text("a", "naked 700"), finding.Text("b", "tourer 1200")),
			"different bikes, {a} and {b}: the difference is between the bikes, not only between setups",
			"verschiedene Motorräder, {a} und {b}: der Unterschied liegt zwischen den Motorrädern, nicht nur zwischen den Aufbauten"},
		{"compare.tyres_alike", nil, "drag was compared assuming the same rolling resistance in both setups; note it in the setup if tyres or pressures differ",
			"der Luftwiderstand wurde mit gleichem Rollwiderstand in beiden Aufbauten verglichen; andere Reifen oder Drücke im Aufbau angeben"},
		{"compare.one_pair", nil, "one setup has a single pair of coast-downs: its own scatter cannot be judged",
			"ein Aufbau hat nur ein Paar Ausrollversuche: seine eigene Streuung lässt sich nicht beurteilen"},
	}
}

func ofPairs() []Entry {
	return []Entry{
		{"pair.no_direction", nil, "its direction is not known: the fixes have neither positions nor a course",
			"die Richtung ist unbekannt: die Satellitendaten enthalten weder Ort noch Kurs"},
		{"pair.too_long_after", args(finding.Time("after", 2700)), "the nearest run the other way is {after.0} away: the wind may have changed",
			"der nächste Lauf in Gegenrichtung liegt {after.0} entfernt: der Wind kann sich geändert haben"},
		{"pair.all_taken", nil, "every run the other way already belongs to another pair", "jeder Lauf in Gegenrichtung gehört schon zu einem anderen Paar"},
		{"pair.other_setup", nil, "there is no run the other way with the same setup", "mit diesem Aufbau gibt es keinen Lauf in Gegenrichtung"},
		{"pair.no_counterpart", nil, "there is no run the other way over the same stretch of road", "auf demselben Straßenstück gibt es keinen Lauf in Gegenrichtung"},
		{"pair.other_rejected", nil, "the run the other way was rejected", "der Lauf in Gegenrichtung wurde verworfen"},
		{"coast.not_paired", args(finding.Of("why", finding.New("pair.all_taken"))), "not used for the road load: {why}", "nicht für den Fahrwiderstand verwendet: {why}"},
	}
}

func ofPower() []Entry {
	id := finding.Count("id", 4)
	return []Entry{
		{"power.no_curve", args(finding.Of("why", finding.New("power.no_pull"))), "no power curve: {why}", "keine Leistungskurve: {why}"},
		{"power.below_envelope", args(finding.Count("run", 7)),
			"run {run} is left out: another pull gave clearly more power at the same speeds, so this one was in another gear or at part throttle",
			"Lauf {run} zählt nicht mit: ein anderer brachte bei gleichem Tempo deutlich mehr Leistung, dieser fuhr also in einem anderen Gang oder mit Teilgas"},
		{"rollon.weaker", nil,
			"another roll-on pulled clearly harder through the same speeds: this one was in a higher gear or at part throttle, so the two times cannot be compared",
			"ein anderer Durchzug war bei gleichem Tempo deutlich kräftiger: Dieser hier fuhr in einem höheren Gang oder mit Teilgas, die beiden Zeiten lassen sich also nicht vergleichen"},
		{"power.one_way", nil, "all pulls went the same way, so wind and slope are in the curve: pull in the other direction too",
			"alle Messungen gingen in eine Richtung, Wind und Steigung stecken also in der Kurve: auch in die andere Richtung beschleunigen"},
		{"power.revs_split", nil, "vibration and sound give two different engine speeds, so power is shown over road speed only",
			"Vibration und Ton ergeben zwei verschiedene Drehzahlen, die Leistung steht daher nur über dem Tempo"},
		{"power.no_gear", nil, "the gear is not known, so power is shown over road speed only", "der Gang ist nicht bekannt, die Leistung steht daher nur über dem Tempo"},
		{"power.others_load", args(finding.Text("setup", "tall screen")), "this setup has no road load of its own, so that of {setup} was used",
			"dieser Aufbau hat keinen eigenen Fahrwiderstand, daher gilt der von {setup}"},
		{"power.usual_load", nil, "no coast-down measured the road load, so that of an average bike was used: the band is wider because of it",
			"der Fahrwiderstand wurde nicht gemessen, daher gilt der eines durchschnittlichen Motorrads: das Band ist deshalb breiter"},
		{"power.by_bands", nil, "power was compared by the bands of the curves; with two pairs of opposite pulls for each setup, their own scatter would be used instead",
			"die Leistung wurde über die Bänder der Kurven verglichen; bei zwei Hin- und Rückfahrten je Aufbau zählte deren eigene Streuung"},
		{"power.no_overlap", nil, "the pulls share no range of speed: pull through the same speeds each time",
			"die Messungen haben keinen Tempobereich gemeinsam: jedes Mal durch dieselben Geschwindigkeiten beschleunigen"},
		{"power.no_pull", nil, "no full-throttle pull in one gear was found", "keine Vollgasfahrt in einem Gang gefunden"},
		{"power.setups_apart", nil, "the two setups' pulls share no range of speed", "die Messungen der beiden Aufbauten haben keinen Tempobereich gemeinsam"},
		{"power.not_definite", nil, "the covariance of the pull's speed is not positive definite", "die Kovarianz der Geschwindigkeit ist nicht positiv definit"},
		{"power.pull_short", args(id, finding.Count("points", 5)), "pull {id} has {points} points: too short for a power curve",
			"Messung {id} hat {points} Punkte: zu kurz für eine Leistungskurve"},
		{"power.pull_uneven", args(id), "pull {id}: times, speeds and covariance differ in size", "Messung {id}: Zeiten, Geschwindigkeiten und Kovarianz sind verschieden lang"},
		{"power.pull_no_direction", args(id), "pull {id} has no direction", "Messung {id} hat keine Richtung"},
		{"power.pull_point", args(id, finding.Count("point", 7)), "pull {id}: point {point} is out of order or not a number",
			"Messung {id}: Punkt {point} ist außer der Reihe oder keine Zahl"},
		{"power.pull_gain", args(id, finding.Speed("needed", 2)), "pull {id} gains less than {needed}", "Messung {id} wird um weniger als {needed} schneller"},
		{"power.no_rotating_mass", nil, "the rotating mass is not given", "die rotierende Masse fehlt"},
	}
}
