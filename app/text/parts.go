package text

// Parts is what a bike is described by beside its weight, and the values that a
// ride is computed with.
type Parts struct {
	WheelsTitle, WheelsHint, FrontTyre, RearTyre, TyreExample, FrontWheel, RearWheel  string
	BoxTitle, BoxHint, Primary, Final, GearTeeth, GearExample, TeethExample, Limit    string
	Cylinders, CylindersHint                                                          string
	FuelTitle, FuelHint, Fuel, FuelSpeed, Tank, NotTyre, NotTeeth, FuelBoth           string
	BatteryTitle, Battery, BatteryHint                                                string
	ValuesTitle, ValuesHint, Recorded, RecordedHint, With, Wheels, Wind, LimitWith    string
	FromBike, FromBikeHint, RPM                                                       string
	AirOld, AirOldUnknown, AirOldRide, AirStill, AirEmpty                             string
	TemperatureEnd, TemperatureEndHint, EndWith                                       string
	StationTitle, StationHint, StationWind, StationFrom, StationFromHint, StationWith string
	AirNone, AirHint, AsRecorded, Changed, Humidity, WindHint, SetupMass              string
}

func englishParts() Parts {
	return Parts{
		WheelsTitle: "Tyres and wheels", WheelsHint: "Sizes as on the sidewall. With the wheels' weights they give the inertia of the spinning wheels.",
		FrontTyre: "Front tyre", RearTyre: "Rear tyre", TyreExample: "180/55 R17", FrontWheel: "Front wheel, with tyre and discs", RearWheel: "Rear wheel, with tyre",
		BoxTitle: "Gears from tooth counts", BoxHint: "From the manual, driving and driven. With the rear tyre they give the engine speed of gears not entered above.",
		Primary: "Primary drive", Final: "Chain or belt", GearTeeth: "The gears, first to last", GearExample: "13/37, 16/32, 19/30", TeethExample: "16/40",
		Limit: "Highest engine speed", Cylinders: "Cylinders", CylindersHint: "A triple sounds like a twin at another speed: this tells them apart.",
		FuelTitle: "Fuel", FuelHint: "Measured by filling up after a long steady ride. Both figures, or none.",
		Fuel: "Consumption", FuelSpeed: "at a steady", Tank: "Tank holds", NotTyre: "Write a tyre size like this: 180/55 R17.", NotTeeth: "Write teeth like this: 16/40.",
		FuelBoth:     "Consumption needs the speed it was measured at.",
		BatteryTitle: "Electric bike", Battery: "Usable energy of the battery", BatteryHint: "For energy per distance and range in the season.",
		ValuesTitle: "Values used in the calculation", ValuesHint: "The recording keeps its own values. A value here only changes the calculation; empty: as recorded, or a usual value.",
		LimitWith: "at most %s rpm", RPM: "rpm", FromBike: "Take %s as it is now", FromBikeHint: "Weight, wheels and gears as the bike is described today, where they differ.",
		Recorded: "As recorded", RecordedHint: "Undoes the changes made here.",
		With: "Calculated with %s.", Wheels: "wheels %s", Wind: "wind ± %s", AsRecorded: "These are the recorded values.",
		Changed: "You changed values after the ride; the recording keeps its own.", Humidity: "%s %% humidity",
		AirNone: "not entered: barometer or standard day", AirHint: "From a current weather report, with the pressure as measured there, not reduced to sea level. Empty: the phone's barometer, else a standard day. A ride keeps the values entered here when it begins.",
		AirOld: "The air values are from %s.", AirOldUnknown: "The air was entered on an earlier day.", AirStill: "Still valid", AirEmpty: "Clear all",
		AirOldRide:     "Drag area depends on the density of the air: look up the air for the hour of the ride and calculate the ride with it.",
		TemperatureEnd: "Temperature at the end", TemperatureEndHint: "If the day got warmer or colder: the one above is then the temperature at the start, and each coast-down uses the value in between.", EndWith: "%s at the end",
		StationTitle: "Weather station", StationHint: "Only if one is near. Enter its wind as reported, at 10 m above open ground: there is less at rider height and behind hedges, which is allowed for. It shows how much came across the road.",
		StationWind: "Wind at the station", StationFrom: "It comes from", StationFromHint: "North 0, east 90, south 180, west 270.", StationWith: "station wind %s from %s°",
		WindHint: "How much wind along the road differed from pair to pair: 0.5 calm, 1 light, 1.5 breezy.", SetupMass: "Weight, %s",
	}
}

func germanParts() Parts {
	return Parts{
		WheelsTitle: "Reifen und Räder", WheelsHint: "Größen wie auf der Flanke. Mit dem Gewicht der Räder ergeben sie die Trägheit der drehenden Räder.",
		FrontTyre: "Reifen vorn", RearTyre: "Reifen hinten", TyreExample: "180/55 R17", FrontWheel: "Vorderrad, mit Reifen und Scheiben", RearWheel: "Hinterrad, mit Reifen",
		BoxTitle: "Gänge aus Zähnezahlen", BoxHint: "Aus dem Handbuch, treibend und getrieben. Mit dem Hinterreifen ergeben sie die Drehzahl, wo oben keine steht.",
		Primary: "Primärantrieb", Final: "Kette oder Riemen", GearTeeth: "Die Gänge, vom ersten an", GearExample: "13/37, 16/32, 19/30", TeethExample: "16/40",
		Limit: "Höchste Drehzahl", Cylinders: "Zylinder", CylindersHint: "Ein Dreizylinder klingt wie ein Zweizylinder mit anderer Drehzahl: so lassen sie sich unterscheiden.",
		FuelTitle: "Verbrauch", FuelHint: "Durch Volltanken nach langer Fahrt mit gleichem Tempo. Beide Zahlen oder keine.",
		Fuel: "Verbrauch", FuelSpeed: "bei gleichbleibend", Tank: "In den Tank passen", NotTyre: "Reifengrößen so schreiben: 180/55 R17.", NotTeeth: "Zähnezahlen so schreiben: 16/40.",
		FuelBoth:     "Zum Verbrauch gehört das Tempo, bei dem er gemessen wurde.",
		BatteryTitle: "Elektromotorrad", Battery: "Nutzbare Energie der Batterie", BatteryHint: "Für Energie je Strecke und Reichweite in der Saison.",
		ValuesTitle: "Werte für die Berechnung", ValuesHint: "Die Aufzeichnung behält ihre eigenen Werte. Werte hier gelten nur für die Auswertung; leer: wie aufgezeichnet oder üblich.",
		LimitWith: "höchstens %s 1/min", RPM: "1/min", FromBike: "%s, wie sie jetzt ist", FromBikeHint: "Gewicht, Räder und Gänge, wie die Maschine heute beschrieben ist, wo sie abweichen.",
		Recorded: "Wie aufgezeichnet", RecordedHint: "Nimmt zurück, was hier geändert wurde.",
		With: "Gerechnet mit %s.", Wheels: "Räder %s", Wind: "Wind ± %s", AsRecorded: "Das sind die aufgezeichneten Werte.",
		Changed: "Du hast nach der Fahrt Werte geändert; die Aufzeichnung behält ihre.", Humidity: "%s %% Feuchte",
		AirNone: "nicht angegeben: Barometer oder Normtag", AirHint: "Aus einem aktuellen Wetterbericht, mit dem dort gemessenen Luftdruck, nicht auf Meereshöhe umgerechnet. Leer: das Barometer des Telefons, sonst ein Normtag. Eine Fahrt behält, was hier steht, wenn sie beginnt.",
		AirOld: "Die Luftwerte sind von %s.", AirOldUnknown: "Die Luft wurde an einem früheren Tag angegeben.", AirStill: "Gilt noch", AirEmpty: "Alles leeren",
		AirOldRide:     "Die Luftwiderstandsfläche hängt von der Luftdichte ab: sieh die Luft zur Stunde der Fahrt nach und rechne die Fahrt damit neu.",
		TemperatureEnd: "Temperatur am Ende", TemperatureEndHint: "Wenn es wärmer oder kälter wurde: die obere gilt dann für den Beginn, und jedes Ausrollen bekommt den Wert dazwischen.", EndWith: "%s am Ende",
		StationTitle: "Wetterstation", StationHint: "Nur wenn eine in der Nähe steht. Ihren Wind so eingeben, wie sie ihn meldet, in 10 m Höhe über freiem Feld: dass er auf Fahrerhöhe und hinter Hecken schwächer ist, wird berücksichtigt. Er zeigt, wie viel quer zur Straße kam.",
		StationWind: "Wind an der Station", StationFrom: "Er kommt aus", StationFromHint: "Nord 0, Ost 90, Süd 180, West 270.", StationWith: "Stationswind %s aus %s°",
		WindHint: "Wie sehr sich der Wind längs der Straße von Paar zu Paar änderte: 0,5 still, 1 leicht, 1,5 frisch.", SetupMass: "Gewicht, %s",
	}
}
