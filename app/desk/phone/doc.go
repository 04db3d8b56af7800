// Package phone serves the phone app from a computer to a phone beside it, on
// the local network, over HTTPS with a certificate of its own making: browsers
// give sensors to no page that came another way.
//
// It is the one part of Stillair that opens a socket. It listens, hands out
// the page's files and takes nothing in; what the phone records stays there.
package phone
