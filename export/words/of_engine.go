package words

import (
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// ofEngine holds the reasons why no engine speed is given.
func ofEngine() []Entry {
	one, other := finding.EngineSpeed("one", 4600), finding.EngineSpeed("other", 5400)
	return []Entry{
		{"engine.not_found", nil, "no engine speed can be read from this pull", "aus dieser Messung lässt sich keine Drehzahl lesen"},
		{"engine.no_range", nil, "the engine's lowest and highest speed are not given: set them for the bike",
			"niedrigste und höchste Drehzahl fehlen: für das Motorrad eintragen"},
		{"engine.standing", nil, "the bike is standing still", "das Motorrad steht still"},
		{"engine.no_such_speed", args(finding.Speed("from", 40*units.KMH), finding.Speed("to", 120*units.KMH), finding.EngineSpeed("low", 3000), finding.EngineSpeed("high", 8000)),
			"no ratio keeps the engine between {low} and {high} from {from} to {to}",
			"keine Übersetzung hält den Motor von {from} bis {to} zwischen {low} und {high}"},
		{"engine.in_noise", nil, "the engine does not stand out of the noise", "der Motor hebt sich nicht vom Rauschen ab"},
		{"engine.order_missing", args(finding.Num("order", 2)), "its order {order.1} does not show", "seine Ordnung {order.1} ist nicht zu sehen"},
		{"engine.at_edge", nil, "the best ratio lies at the edge of the engine's range", "die beste Übersetzung liegt am Rand des Drehzahlbereichs"},
		{"engine.cylinders_unclear", args(one, other, at(100)), "{one} and {other} at {at} fit equally well, depending on the number of cylinders",
			"{one} und {other} bei {at} passen gleich gut, je nach Zahl der Zylinder"},
		{"engine.two_speeds", args(one, other, at(100)), "{one} and {other} at {at} fit almost equally well", "{one} und {other} bei {at} passen fast gleich gut"},
		{"engine.two_gears", nil, "two gears fit almost equally well", "zwei Gänge passen fast gleich gut"},
		{"engine.halves_differ", nil, "its first and second half give different ratios", "erste und zweite Hälfte ergeben verschiedene Übersetzungen"},
		{"engine.too_short", args(finding.Time("needed", 2)), "it lasts less than {needed.0}", "es dauert weniger als {needed.0}"},
		{"engine.signal_uneven", nil, "the signal's times, samples and distances differ in number", "Zeiten, Werte und Wege des Signals sind verschieden viele"},
		{"engine.signal_not_number", args(finding.Count("n", 9)), "sample {n} of the signal is not a number", "Wert {n} des Signals ist keine Zahl"},
		{"engine.signal_backwards", args(finding.Count("n", 9)), "sample {n} of the signal goes back in time or distance", "Wert {n} des Signals geht in Zeit oder Weg zurück"},
		{"engine.ratio_bad", nil, "a gear's ratio is not a number above zero", "eine Übersetzung ist keine Zahl über null"},
	}
}

// ofEntries holds what is wrong with something that the rider entered.
func ofEntries() []Entry {
	return []Entry{
		{"gearing.no_tyre_size", args(finding.Text("size", "wide")), "{size} is not a tyre size: write it as on the sidewall, such as 180/55 R17",
			"{size} ist keine Reifengröße: so schreiben wie auf der Flanke, etwa 180/55 R17"},
		{"gearing.tyre_size", args(finding.Text("size", "999/55 R17")), "{size} is not a motorcycle's tyre size: check it against the sidewall",
			"{size} ist keine Reifengröße eines Motorrads: mit der Flanke vergleichen"},
		{"gearing.teeth", args(finding.Count("driving", 0), finding.Count("driven", 42)), "{driving} and {driven} teeth are not possible: count them again",
			"{driving} und {driven} Zähne sind nicht möglich: noch einmal zählen"},
		{"gearing.reduction", args(finding.Num("primary", 1.7), finding.Num("gear", 0), finding.Num("final", 2.7)),
			"a reduction of {primary} × {gear} × {final} is not possible: all three must be above zero",
			"eine Übersetzung von {primary} × {gear} × {final} ist nicht möglich: alle drei müssen über null sein"},
		{"speedpair.bad", args(finding.Text("pair", "60 to"), finding.Of("why", finding.New("speedpair.dash")), finding.Text("like", "15-25m/s")),
			"speed pair {pair}: {why}; write it with its unit, such as 40-70mph or {like}", "Tempobereich {pair}: {why}; mit Einheit schreiben, etwa 40-70mph oder {like}"},
		{"speedpair.dash", nil, "it needs two speeds with a dash between", "es braucht zwei Geschwindigkeiten mit einem Strich dazwischen"},
		{"speedpair.first", nil, "the first speed is not a number", "die erste Geschwindigkeit ist keine Zahl"},
		{"speedpair.second", nil, "the second speed is not a number", "die zweite Geschwindigkeit ist keine Zahl"},
		{"speedpair.order", nil, "the second speed must be above the first", "die zweite Geschwindigkeit muss über der ersten liegen"},
		{"speedpair.standing", nil, "a roll-on starts rolling, at 1 m/s or more", "ein Durchzug beginnt im Rollen, mit mindestens 1 m/s"},
		{"speedpair.fast", nil, "no motorcycle on a road is that fast", "so schnell ist kein Motorrad auf der Straße"},
		{"speedpair.unit", nil, "the unit is missing", "die Einheit fehlt"},
	}
}
