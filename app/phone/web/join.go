package web

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"strings"
)

// scripts is the one file into which the page's scripts are joined.
const scripts = "scripts.js"

var (
	scriptOfBody   = regexp.MustCompile(`(?m)^  <script src="([^"]+)"></script>\n`)
	scriptOfWorker = regexp.MustCompile(`(?m)^importScripts\((.+)\);$`)
)

// joinScripts joins all scripts that the page's body loads into one file, in
// order. A browser loads scripts one after the other, and each one from a
// service worker takes 10 to 30 ms at every start. Scripts that a worker loads
// too also stay separate.
func (p Page) joinScripts() error {
	head, body, found := bytes.Cut(p["index.html"], []byte("<body>"))
	if !found {
		return fmt.Errorf("index.html: no body in it")
	}
	apart := p.ofWorkers()
	var joined bytes.Buffer
	for _, m := range scriptOfBody.FindAllSubmatch(body, -1) {
		name := string(m[1])
		text, there := p[name]
		if !there {
			return fmt.Errorf("index.html loads %s, which is not there", name)
		}
		joined.Write(bytes.TrimSpace(text))
		joined.WriteString("\n;\n")
		if !apart[name] {
			delete(p, name)
		}
	}
	body = scriptOfBody.ReplaceAll(body, nil)
	body = bytes.Replace(body, []byte("</body>"), []byte("  <script src=\""+scripts+"\"></script>\n</body>"), 1)
	p["index.html"] = append(append(head, "<body>"...), body...)
	p[scripts] = joined.Bytes()
	return nil
}

// ofWorkers are the scripts that workers load.
func (p Page) ofWorkers() map[string]bool {
	names := map[string]bool{}
	for name, text := range p {
		if path.Ext(name) != ".js" {
			continue
		}
		for _, m := range scriptOfWorker.FindAllSubmatch(text, -1) {
			for quoted := range strings.SplitSeq(string(m[1]), ",") {
				names[strings.Trim(quoted, ` "`)] = true
			}
		}
	}
	return names
}
