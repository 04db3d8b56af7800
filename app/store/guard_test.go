package store_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"stillair/app/platform/platformtest"
	"stillair/app/store"
)

// TestChoicesAreGuarded writes choices over a file that this app cannot use: a
// file of a later version is unchanged to the byte, and of any other a copy is
// kept, even if there is an older copy.
func TestChoicesAreGuarded(t *testing.T) {
	for _, c := range []struct {
		name, there   string
		refused, kept bool
	}{
		{name: "of this version", there: `{"version": 1, "language": "de", "air": {}}`},
		{name: "of a later version", there: `{"version": 2, "language": ["de"], "air": {}}`, refused: true},
		{name: "of a version far ahead", there: `{"version": 1000000, "all": "else"}`, refused: true},
		{name: "cut off", there: `{"version": 1, "langu`, kept: true},
		{name: "empty", there: ``, kept: true},
		{name: "zeros", there: strings.Repeat("\x00", 300), kept: true},
		{name: "without a version", there: `{"language": "de"}`, kept: true},
		{name: "of other types", there: `{"version": 1, "language": 7}`, kept: true},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := platformtest.NewMemory()
			for _, text := range []string{c.there, c.there} {
				if err := files.Replace("choices.json", []byte(text)); err != nil {
					t.Fatal(err)
				}
				err := store.WriteChoices(files, store.Choices{Language: "en"})
				if errors.Is(err, store.ErrLater) != c.refused || (err != nil) != c.refused {
					t.Fatalf("writing: %v", err)
				}
			}
			now := string(platformtest.Read(t, files, "choices.json"))
			if (now == c.there) != c.refused {
				t.Errorf("choices.json is now %q", now)
			}
			infos, err := files.List()
			if err != nil {
				t.Fatal(err)
			}
			copies := 0
			for _, i := range infos {
				if strings.HasSuffix(i.Name, ".aside") {
					copies++
					if got := string(platformtest.Read(t, files, i.Name)); got != c.there {
						t.Errorf("%s holds %q", i.Name, got)
					}
				}
			}
			if want := map[bool]int{true: 2}[c.kept]; copies != want {
				t.Errorf("%d copies, want %d", copies, want)
			}
		})
	}
}

// FuzzChoices puts arbitrary bytes into choices.json and writes over them: the
// content is kept, unchanged or as a copy, unless it could be read.
func FuzzChoices(f *testing.F) {
	f.Add([]byte(`{"version": 1, "language": "de", "air": {"temperature_c": 20}}`))
	f.Add([]byte(`{"version": 2}`))
	f.Add([]byte(`{"version": 1e0, "text_size": 1e39, "air": []}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		files := platformtest.NewMemory()
		if err := files.Replace("choices.json", data); err != nil {
			t.Fatal(err)
		}
		_, unread := store.ReadChoices(files)
		err := store.WriteChoices(files, store.Choices{Language: "en"})
		if err == nil && unread == nil {
			return
		}
		infos, _ := files.List()
		for _, i := range infos {
			if bytes.Equal(platformtest.Read(t, files, i.Name), data) {
				return
			}
		}
		t.Fatalf("%q is gone (read: %v, written: %v)", data, unread, err)
	})
}
