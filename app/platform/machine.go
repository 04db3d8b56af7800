package platform

// Machine is the kind of device and browser that the app runs on, as far as the
// way to its settings differs.
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
