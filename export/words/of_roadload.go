package words

// ofRoadLoad holds what package roadload says.
func ofRoadLoad() []Entry {
	return nil
}
