package view

// Compare is the screen of compared setups. Whoever compares fills it with a
// line for each difference; without any it tells how to get one.
type Compare struct {
	Groups []CompareGroup
	Note   string
}

// CompareGroup is one quantity compared.
type CompareGroup struct {
	Title string
	Scale string
	Rows  []CompareRow
}

// CompareRow is one difference: in words first, then as a band around no
// change.
type CompareRow struct {
	Pair    string // "panniers on, against panniers off"
	Verdict string // the answer, in a sentence
	Grade   Grade  // Fine: a difference is shown; Absent: none is; Waiting: it cannot be told yet
	Band    Interval
}

// Empty reports whether there is nothing to compare yet.
func (v Compare) Empty() bool { return len(v.Groups) == 0 }
