package text

// Hearing is about the microphone.
type Hearing struct {
	Use, UseHint, Refused                       string
	Good, Loud, Wait, Denied, Missing, Silenced string
}

func englishHearing() Hearing {
	return Hearing{
		Use: "Use the microphone for engine speed",
		UseHint: "Helps where neither gears nor vibration reveal it. Only sound below 500 Hz is kept, and it stays on this phone. " +
			"That somebody speaks, and how high the voice is, can be heard in it, and a word here and there may be guessed. " +
			"Local law decides whether you may record sound near others. It is left out of rides that you share.",
		Refused: "The microphone was not allowed, so it stays off. Allow it in the settings of the phone or browser. Everything else works without it.",
		Good:    "good", Loud: "good, now and then too loud for the microphone", Wait: "waiting for the microphone",
		Denied:   "not allowed. Engine speed comes from gears or vibration; everything else works",
		Missing:  "none here. Engine speed comes from gears or vibration; everything else works",
		Silenced: "the microphone delivers no sound. Everything else continues",
	}
}

func germanHearing() Hearing {
	return Hearing{
		Use: "Mikrofon für die Drehzahl nutzen",
		UseHint: "Hilft, wo weder Gänge noch Vibration sie verraten. Nur Schall unter 500 Hz wird behalten, und er bleibt in diesem Telefon. " +
			"Dass jemand spricht und wie hoch die Stimme ist, lässt sich darin hören, und hier und da lässt sich ein Wort erraten. " +
			"Ob du neben anderen Ton aufnehmen darfst, bestimmt das Recht vor Ort. Aus Fahrten, die du teilst, wird er weggelassen.",
		Refused: "Das Mikrofon wurde nicht erlaubt, es bleibt also aus. Erlaube es in den Einstellungen von Telefon oder Browser. Alles andere geht ohne.",
		Good:    "gut", Loud: "gut, hin und wieder zu laut für das Mikrofon", Wait: "wartet auf das Mikrofon",
		Denied:   "nicht erlaubt. Die Drehzahl kommt aus Gängen oder Vibration; alles andere geht",
		Missing:  "hier keins. Die Drehzahl kommt aus Gängen oder Vibration; alles andere geht",
		Silenced: "das Mikrofon liefert keinen Ton. Alles andere läuft weiter",
	}
}
