package main

import (
	"crypto/tls"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"time"

	"oakum/api"
)

// yardListener opens the dock sheets to the yard's local network; nothing else can be reached through it. The authority's file is kept beside the ship's.
func (c Address) yardListener(out io.Writer, ship string) (*api.Yard, net.Listener, error) {
	host, port, err := net.SplitHostPort(c.YardListen)
	if err != nil {
		return nil, nil, failure{exitRefused, fmt.Errorf("--yard-listen must be like :4311 or 192.168.1.20:4311, not %q", c.YardListen)}
	}
	ip := net.ParseIP(host)
	if ip == nil {
		all, err := api.LocalAddresses()
		if err != nil {
			return nil, nil, err
		}
		ip = all[0]
		for _, other := range all[1:] {
			fmt.Fprintf(out, "This machine is on another network too: --yard-listen %s if the phones are on that one.\n", net.JoinHostPort(other.String(), port))
		}
	}
	l, err := net.Listen("tcp", net.JoinHostPort(ip.String(), port))
	if err != nil {
		return nil, nil, fmt.Errorf("%s can't be listened on: %w; give another with --yard-listen", net.JoinHostPort(ip.String(), port), err)
	}
	cert, authority, err := api.YardCertificate(ship+".yard.pem", ip, time.Now())
	if err != nil {
		l.Close()
		return nil, nil, err
	}
	safe := tls.NewListener(l, &tls.Config{Certificates: []tls.Certificate{cert}, MinVersion: tls.VersionTLS12, NextProtos: []string{"http/1.1"}})
	return api.NewYard("https://"+l.Addr().String(), authority, time.Now), safe, nil
}

// yardServer serves the sheets behind the guard. What a phone that does not trust the laptop yet has to say is no news.
func yardServer(y *api.Yard, all http.Handler) *http.Server {
	return &http.Server{Handler: y.Guard(all), ReadHeaderTimeout: 10 * time.Second, ErrorLog: log.New(io.Discard, "", 0)}
}
