package words

// ofApp holds what package app says.
func ofApp() []Entry {
	return nil
}
