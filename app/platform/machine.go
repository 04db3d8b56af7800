package platform

// Machine is what the app runs on, as far as a rider's way through its settings
// differs.
type Machine int

// The machines. AppleBrowser is Safari's engine on an iPhone or iPad, which all
// browsers there use; PhoneBrowser any other phone's.
const (
	DeskBrowser Machine = iota
	AppleBrowser
	PhoneBrowser
	PhoneApp
	Machines int = iota // how many there are
)
