package text

import "stillair/app/platform"

// Ways are the ways through settings where a rider must help, by the machine on which the
// app runs. The menus are those of the systems' current versions, from memory:
// they could be walked through on none of them.
type Ways struct {
	Location, Motion [platform.Machines]string
	Install          [platform.Machines]string // how to put the app on the home screen
}

func englishWays() Ways {
	return Ways{
		Location: [platform.Machines]string{
			platform.AppleBrowser: "Open the page menu beside the address, then Website Settings, Location: Allow. Still off? Settings, Privacy & Security, Location Services, Safari Websites: While Using.",
			platform.PhoneBrowser: "Tap the icon left of the address, then Permissions, Location: Allow. Still off? Turn on location on the phone, and allow it for the browser under Settings, Apps.",
			platform.DeskBrowser:  "Click the icon left of the address, allow the location and reload the page.",
			platform.PhoneApp:     "Settings, Apps, Stillair, Permissions, Location: Allow while using the app, with precise location.",
		},
		Motion: [platform.Machines]string{
			platform.AppleBrowser: "Close Safari completely, open this page again, tap “Let Stillair use the sensors”, then Allow.",
			platform.PhoneBrowser: "Tap the icon left of the address, then Site settings, Motion sensors: Allow, and reload the page.",
			platform.DeskBrowser:  "Click the icon left of the address, then Site settings, Motion sensors: Allow, and reload the page.",
			platform.PhoneApp:     "Turn off “Sensors off” in the phone's quick settings.",
		},
		Install: [platform.Machines]string{
			platform.AppleBrowser: "To put it there: tap Share, then Add to Home Screen. It then starts with storage of its own.",
			platform.PhoneBrowser: "To install it: open the browser's menu, then Add to Home screen or Install app.",
			platform.DeskBrowser:  "To install it: the icon at the right end of the address, or the browser's menu.",
			platform.PhoneApp:     "It is installed.",
		},
	}
}

func germanWays() Ways {
	return Ways{
		Location: [platform.Machines]string{
			platform.AppleBrowser: "Das Seitenmenü neben der Adresse öffnen, dann Website-Einstellungen, Standort: Erlauben. Immer noch nicht? Einstellungen, Datenschutz & Sicherheit, Ortungsdienste, Safari-Websites: Beim Verwenden.",
			platform.PhoneBrowser: "Auf das Symbol links neben der Adresse tippen, dann Berechtigungen, Standort: Zulassen. Immer noch nicht? Den Standort des Telefons einschalten und ihn dem Browser unter Einstellungen, Apps erlauben.",
			platform.DeskBrowser:  "Auf das Symbol links neben der Adresse klicken, den Standort erlauben und die Seite neu laden.",
			platform.PhoneApp:     "Einstellungen, Apps, Stillair, Berechtigungen, Standort: Zugriff nur während der Nutzung zulassen, mit genauem Standort.",
		},
		Motion: [platform.Machines]string{
			platform.AppleBrowser: "Safari ganz schließen, diese Seite neu öffnen, auf „Stillair die Sensoren erlauben“ tippen, dann Erlauben.",
			platform.PhoneBrowser: "Auf das Symbol links neben der Adresse tippen, dann Website-Einstellungen, Bewegungssensoren: Zulassen, und die Seite neu laden.",
			platform.DeskBrowser:  "Auf das Symbol links neben der Adresse klicken, dann Website-Einstellungen, Bewegungssensoren: Zulassen, und die Seite neu laden.",
			platform.PhoneApp:     "In den Schnelleinstellungen des Telefons „Sensoren aus“ abschalten.",
		},
		Install: [platform.Machines]string{
			platform.AppleBrowser: "So kommt sie dorthin: auf Teilen tippen, dann Zum Home-Bildschirm. Sie beginnt dort mit eigenem Speicher.",
			platform.PhoneBrowser: "So wird sie installiert: im Menü des Browsers Zum Startbildschirm hinzufügen oder App installieren.",
			platform.DeskBrowser:  "So wird sie installiert: über das Symbol rechts in der Adresszeile oder das Menü des Browsers.",
			platform.PhoneApp:     "Sie ist installiert.",
		},
	}
}
