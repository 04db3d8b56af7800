package words

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofPlans holds what package plan says: why a test cannot be planned, and what
// would help one that is not enough.
func ofPlans() []Entry {
	from, to := finding.Speed("from", 110*units.KMH), finding.Speed("to", 30*units.KMH)
	least := finding.Speed("least", 20*units.KMH)
	return []Entry{
		{"plan.setups", args(finding.Count("least", 2)), "this needs at least {least|1 setup|# setups}", "dafür braucht es mindestens {least|1 Aufbau|# Aufbauten}"},
		{"plan.change_of_drag", args(finding.Share("change", 1.2)), "a change of {change.0} of the drag cannot be planned for: give one between 0 and 100 %",
			"eine Änderung des Luftwiderstands um {change.0} lässt sich nicht planen: eine zwischen 0 und 100 % angeben"},
		{"plan.change_of_power", args(finding.Share("change", 1.2)), "a change of {change.0} of the power cannot be planned for: give one between 0 and 100 %",
			"eine Änderung der Leistung um {change.0} lässt sich nicht planen: eine zwischen 0 und 100 % angeben"},
		{"plan.change_of_time", args(finding.Time("change", 75)), "a change of {change} cannot be planned for: give one between 0 and 60 s",
			"eine Änderung um {change} lässt sich nicht planen: eine zwischen 0 und 60 s angeben"},
		{"plan.chance", args(finding.Share("chance", 1)), "a chance of {chance.0} cannot be planned for: give one between 5 and 100 %",
			"eine Sicherheit von {chance.0} lässt sich nicht planen: eine zwischen 5 und 100 % angeben"},
		{"plan.few_pairs", nil, "at least two pairs per setup are needed: one does not show the scatter",
			"es braucht mindestens zwei Paare je Aufbau: aus einem lässt sich die Streuung nicht ablesen"},
		{"plan.speeds", args(from, to, least), "from {from.0} to {to.0} is too little to separate drag from rolling resistance: leave {least.0} or more between them",
			"von {from.0} bis {to.0} ist zu wenig, um Luft- und Rollwiderstand zu trennen: mindestens {least.0} dazwischen lassen"},
		{"plan.speeds_short", args(to, from, least), "from {from.0} to {to.0} is too short: leave {least.0} or more between them",
			"von {from.0} bis {to.0} ist zu kurz: mindestens {least.0} dazwischen lassen"},
		{"plan.no_rate", nil, "the rate of fixes is not given", "es fehlt, wie oft der Empfänger eine Position gibt"},
		{"plan.mark", args(finding.Text("mark", "0-90")), "a launch has no mark {mark}: choose 0-60 mph or 1/4 mile, for instance",
			"ein Start hat keine Marke {mark}: zum Beispiel 0-60 mph oder 1/4 mile wählen"},
		{"plan.no_power", nil, "the power of the bike is not given", "die Leistung der Maschine fehlt"},
		{"plan.spread", args(finding.Num("spread", 0.9)), "repeats that differ by {spread} cannot be planned for", "Wiederholungen, die um {spread} auseinanderliegen, lassen sich nicht planen"},
		{"plan.time_unknown", nil, "such a run does not give this time: choose other speeds", "die Zeit lässt sich aus so einem Lauf nicht ablesen: andere Geschwindigkeiten wählen"},
		{"plan.too_weak", args(finding.Power("power", 8e3), finding.Time("within", 90)), "with {power.0} the bike does not get there within {within.0}: it is not strong enough for that",
			"mit {power.0} schafft die Maschine das nicht in {within.0}: Dafür ist sie zu schwach"},
		{"plan.no_bike_takes", args(finding.Time("takes", 0.2)), "no bike does that in {takes.1}: enter how long yours takes now",
			"keine Maschine schafft das in {takes.1}: angeben, wie lange deine jetzt braucht"},
		{"plan.calmer", nil, "a calmer day, with half the wind", "ein ruhigerer Tag, mit halbem Wind"},
		{"plan.faster", args(from), "starting at {from.0}, where law and road allow it", "ab {from.0} rollen, wo Recht und Straße es zulassen"},
		{"plan.more_pairs", args(finding.Count("pairs", 16), finding.Count("instead", 8)), "{pairs~} pairs with each setup instead of {instead~}",
			"{pairs~} Paare mit jedem Aufbau statt {instead~}"},
		{"plan.more_fixes", nil, "a receiver with ten fixes per second", "ein Empfänger mit zehn Positionen je Sekunde"},
		{"plan.repeats_alike", nil, "practice, until repeats are half as far apart", "üben, bis Wiederholungen halb so weit auseinanderliegen"},
	}
}
