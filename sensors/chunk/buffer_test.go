package chunk

import "testing"

func TestBuffer(t *testing.T) {
	for _, n := range []int{0, 1, size - 1, size, size + 1, 3*size + 7} {
		var p Buffer[int]
		for i := range n {
			p.Add(i)
		}
		if p.Len() != n {
			t.Errorf("%d samples in the buffer, want %d", p.Len(), n)
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

func TestCut(t *testing.T) {
	for _, n := range []int{0, 1, size, size + 1, 2*size - 1, 2 * size, 2*size + 7} {
		var p Buffer[int]
		for i := range 2*size + 7 {
			p.Add(i)
		}
		p.Cut(n)
		if p.Len() != n {
			t.Fatalf("cut to %d it holds %d", n, p.Len())
		}
		p.Add(-1)
		all := p.Take()
		if len(all) != n+1 || all[n] != -1 || n > 0 && all[n-1] != n-1 {
			t.Errorf("cut to %d and added to, it ends in %v", n, all[max(0, len(all)-3):])
		}
	}
}
