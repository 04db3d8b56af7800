package pile

import "testing"

func TestPile(t *testing.T) {
	for _, n := range []int{0, 1, chunk - 1, chunk, chunk + 1, 3*chunk + 7} {
		var p Pile[int]
		for i := range n {
			p.Add(i)
		}
		if p.Len() != n {
			t.Errorf("%d samples on the pile, want %d", p.Len(), n)
		}
		all := p.Take()
		if len(all) != n || p.Len() != 0 {
			t.Errorf("%d samples taken of %d, %d left", len(all), n, p.Len())
		}
		for i, v := range all {
			if v != i {
				t.Fatalf("sample %d of %d is %d", i, n, v)
			}
		}
	}
}
