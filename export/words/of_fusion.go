package words

// ofFusion holds what package fusion says.
func ofFusion() []Entry {
	return nil
}
