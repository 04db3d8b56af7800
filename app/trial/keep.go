package trial

import (
	"encoding/json"
	"io"

	"stillair/app/platform"
)

// KeptAs is the file in which the last result is kept, and the name under which
// it is shared.
const KeptAs = "stillair-trial.json"

// Data is the result as a file.
func (r Result) Data() ([]byte, error) { return json.MarshalIndent(r, "", "  ") }

// Keep writes the result to the app's storage.
func Keep(files platform.Files, r Result) error {
	data, err := r.Data()
	if err != nil {
		return err
	}
	return files.Replace(KeptAs, data)
}

// Kept reads the last result; nil where there is none that can be read.
func Kept(files platform.Files) *Result {
	f, err := files.Open(KeptAs)
	if err != nil {
		return nil
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, 1<<20))
	var r Result
	if err != nil || json.Unmarshal(data, &r) != nil || r.Kind != ResultKind {
		return nil
	}
	return &r
}
