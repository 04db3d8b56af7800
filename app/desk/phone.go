package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"stillair/app/desk/phone"
	"stillair/app/phone/web"
)

// loopback is this computer to itself.
var loopback = net.IPv4(127, 0, 0, 1)

// phoneFlags are the flags of phone.
type phoneFlags struct {
	port                int
	here                bool
	site, write, source string
}

func phoneCommand() command {
	return command{
		Name: "phone", Summary: "serve the phone app to a phone on the same network",
		Help: `
Serves the phone app over HTTPS on the local network and prints its address and
a QR code. Point the phone's camera at the code, accept the certificate that
this computer made, and you can record. Nothing is installed and nothing leaves
your network. The first start compiles the app, which needs Go and this
project's source and takes a minute.

What the phone records stays in its browser and belongs to the address at which
the app was opened, port included. If the computer's address changes, the
browser treats it as a different app and shows it empty: share the recordings
before you move on. Where the network finds this computer by a name (multicast
DNS, a name ending in .local), that name is listed first: it stays the same when
the address changes.

An address on the local network cannot start without the computer. To have the
app on the home screen, starting without a network, put the same files on any
host that serves them over HTTPS with a certificate phones trust:

  desk phone --write site

writes them to the folder site, each also compressed (.br and .gz) for hosts
that can send compressed files.`,
		Flags: func(f *pflag.FlagSet) runner {
			p := &phoneFlags{}
			f.IntVar(&p.port, "port", 8443, "port to serve on")
			f.BoolVar(&p.here, "here", false, "serve this computer's own browser only, to look at the app")
			f.StringVar(&p.write, "write", "", "write the files to this folder and serve nothing")
			f.StringVar(&p.site, "site", "", "serve the files that --write wrote to this folder, without compiling")
			f.StringVar(&p.source, "source", "", "folder of the project's source (default: found from here)")
			return p.run
		},
	}
}

func (p *phoneFlags) run(ctx context.Context, w *world, args []string) error {
	if len(args) != 0 {
		return usage("it takes no arguments, only flags")
	}
	if p.write != "" && p.site != "" {
		return usage("--write compiles the files and --site takes compiled ones; give one of them")
	}
	if p.write != "" {
		return p.export(ctx, w)
	}
	page, err := p.page(ctx, w)
	if err != nil {
		return err
	}
	return p.serve(ctx, w, page)
}

// page is compiled, or read where it lies compiled.
func (p *phoneFlags) page(ctx context.Context, w *world) (web.Page, error) {
	if p.site != "" {
		return web.Read(p.site)
	}
	return p.build(ctx, w, web.Quick)
}

func (p *phoneFlags) build(ctx context.Context, w *world, e web.Effort) (web.Page, error) {
	folder := p.source
	if folder == "" {
		var err error
		if folder, err = findSource(); err != nil {
			return nil, err
		}
	}
	fmt.Fprintln(w.Err, "Compiling the phone app; the first time this takes a minute…")
	page, err := web.Build(ctx, folder, e)
	if errors.Is(err, web.ErrNoSource) {
		return nil, fmt.Errorf("%w; give its folder with --source, or compiled files with --site", err)
	}
	return page, err
}

// findSource looks for the project from here upwards.
func findSource() (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		text, err := os.ReadFile(filepath.Join(folder, "go.mod"))
		if err == nil && strings.HasPrefix(string(text), "module stillair\n") {
			return folder, nil
		}
		up := filepath.Dir(folder)
		if up == folder {
			return "", fmt.Errorf("%w; give its folder with --source, or compiled files with --site", web.ErrNoSource)
		}
		folder = up
	}
}

func (p *phoneFlags) export(ctx context.Context, w *world) error {
	page, err := p.build(ctx, w, web.Thorough)
	if err != nil {
		return err
	}
	if err := page.Write(p.write); err != nil {
		return err
	}
	return w.print(fmt.Sprintf("Wrote the phone app to %s: %.1f MB to download, %.1f MB if the host does not support brotli.\n"+
		"Put the folder on any host that serves it over HTTPS.\n", p.write, megabytes(page, ".br"), megabytes(page, ".gz")))
}

// megabytes is the download of the whole page where files are sent in the
// coding of the suffix.
func megabytes(page web.Page, suffix string) float64 {
	sum := 0
	for name, data := range page {
		if strings.HasSuffix(name, ".br") || strings.HasSuffix(name, ".gz") {
			continue
		}
		if packed, ok := page[name+suffix]; ok {
			data = packed
		}
		sum += len(data)
	}
	return float64(sum) / 1e6
}

func (p *phoneFlags) serve(ctx context.Context, w *world, page web.Page) error {
	hosts, err := p.hosts()
	if err != nil {
		return err
	}
	base, err := os.UserConfigDir()
	if err != nil {
		return err
	}
	name := p.name(ctx, hosts)
	certificate, err := phone.Certificate(filepath.Join(base, "stillair"), append(hosts, loopback), name, w.Now())
	if errors.Is(err, fs.ErrPermission) {
		return fmt.Errorf("the certificate cannot be saved: %w", err)
	}
	if err != nil {
		return err
	}
	l, err := phone.Listen(p.port, p.reach())
	if err != nil {
		return err
	}
	var urls []string
	if name != "" {
		urls = append(urls, phone.URL(name, l))
	}
	for _, h := range hosts {
		urls = append(urls, phone.URL(h.String(), l))
	}
	if _, err := io.WriteString(raw(w.Out), invitation(urls, phone.Fingerprint(certificate), w.Live)); err != nil {
		return err
	}
	return phone.Serve(ctx, l, certificate, page)
}

func (p *phoneFlags) reach() phone.Reach {
	if p.here {
		return phone.ThisComputer
	}
	return phone.TheNetwork
}

// name is the name by which the network finds this computer, empty where it does
// not.
func (p *phoneFlags) name(ctx context.Context, hosts []net.IP) string {
	host, err := os.Hostname()
	if err != nil || p.here {
		return ""
	}
	return phone.Name(ctx, host, hosts)
}

// hosts are the addresses to serve on.
func (p *phoneFlags) hosts() ([]net.IP, error) {
	if p.here {
		return []net.IP{loopback}, nil
	}
	hosts, err := phone.Addresses()
	if err == nil && len(hosts) == 0 {
		err = errors.New("this computer has no address on a local network; join the network that the phone is on, " +
			"or let the phone open a hotspot and join that")
	}
	return hosts, err
}

// invitation is what the rider reads.
func invitation(urls []string, fingerprint string, colour bool) string {
	var b strings.Builder
	b.WriteString("\nOn the phone, on the same network, open\n\n  " + urls[0] + "\n\n")
	if code, err := phone.Code(urls[0], colour); err == nil {
		b.WriteString(code)
	}
	if len(urls) > 1 {
		b.WriteString("\nIf that does not answer, try " + strings.Join(urls[1:], " or ") + "\n")
	}
	b.WriteString("\nThe browser will warn that it does not know this computer. Its certificate has\n" +
		"the SHA-256 fingerprint\n\n  " + fingerprint[:47] + "\n  " + fingerprint[48:] + "\n\n" +
		"and nobody else's should be accepted.\n\n" +
		"What the phone records belongs to the address that it was opened at, number or\n" +
		"name, port included. Opened at another one, the app starts empty, and the\n" +
		"recordings come back with the old address: share them before it changes.\n" +
		"Ctrl-C stops the server; the phone keeps what it recorded.\n")
	return b.String()
}
