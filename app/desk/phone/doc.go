// Package phone serves the phone app from a computer to a phone nearby, on the
// local network, over HTTPS with a self-signed certificate: browsers give no
// sensors to a page that was loaded in any other way.
//
// It is the only part of Stillair that opens a socket. It listens, serves the
// page's files and accepts no uploads; what the phone records stays there.
package phone
