package api

import (
	"errors"
	"fmt"
	"net"
)

// LocalAddresses are this machine's addresses on local networks, the one it would send from first. None is asked of the network.
func LocalAddresses() ([]net.IP, error) {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil, fmt.Errorf("this machine's addresses can't be read: %w", err)
	}
	sends := sendsFrom()
	var found []net.IP
	for _, a := range all {
		n, ok := a.(*net.IPNet)
		switch {
		case !ok || n.IP.To4() == nil || !n.IP.IsPrivate():
		case n.IP.Equal(sends):
			found = append([]net.IP{n.IP}, found...)
		default:
			found = append(found, n.IP)
		}
	}
	if len(found) == 0 {
		return nil, errors.New("this machine is on no local network; join the yard's network first, or share one from this machine")
	}
	return found, nil
}

// sendsFrom is the address this machine would send from to one that is nowhere (RFC 5737). Opening such a socket sends nothing.
func sendsFrom() net.IP {
	c, err := net.DialUDP("udp4", nil, &net.UDPAddr{IP: net.IPv4(192, 0, 2, 1), Port: 9})
	if err != nil {
		return nil
	}
	defer c.Close()
	if a, ok := c.LocalAddr().(*net.UDPAddr); ok {
		return a.IP
	}
	return nil
}
