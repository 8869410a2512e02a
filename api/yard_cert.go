package api

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"math/big"
	"net"
	"os"
	"time"
)

// A browser lets a page work without a network only where it came over a connection it trusts. No authority vouches for a laptop in a yard, so it vouches
// for itself: an authority of its own, made once and kept beside the ship file, that a phone may be told to trust, and a certificate for each run.

const (
	authorityLasts = 3 * 365 * 24 * time.Hour
	serverLasts    = 30 * 24 * time.Hour // phones refuse certificates that last for years
)

type authority struct {
	cert *x509.Certificate
	key  *ecdsa.PrivateKey
}

// YardCertificate gives the certificate of this run for an address, and the authority's own, from the file at path, which is made where there is none.
func YardCertificate(path string, ip net.IP, now time.Time) (tls.Certificate, []byte, error) {
	a, err := readAuthority(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && now.Add(serverLasts).After(a.cert.NotAfter) {
		a, err = makeAuthority(path, now)
	}
	if err != nil {
		return tls.Certificate{}, nil, fmt.Errorf("%s: %w", path, err)
	}
	c, err := a.server(ip, now)
	return c, a.cert.Raw, err
}

func readAuthority(path string) (a authority, err error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return a, err
	}
	cert, rest := pem.Decode(data)
	if cert == nil {
		return a, errors.New("this is not the certificate file it should be; move it away and start again")
	}
	key, _ := pem.Decode(rest)
	if key == nil {
		return a, errors.New("this certificate file has no key; move it away and start again")
	}
	if a.cert, err = x509.ParseCertificate(cert.Bytes); err != nil {
		return a, err
	}
	a.key, err = x509.ParseECPrivateKey(key.Bytes)
	return a, err
}

func makeAuthority(path string, now time.Time) (a authority, err error) {
	if a.key, err = ecdsa.GenerateKey(elliptic.P256(), rand.Reader); err != nil {
		return a, err
	}
	t := &x509.Certificate{SerialNumber: serial(), Subject: pkix.Name{CommonName: "Oakum on this laptop"}, NotBefore: now.Add(-24 * time.Hour), NotAfter: now.Add(authorityLasts),
		IsCA: true, BasicConstraintsValid: true, MaxPathLenZero: true, KeyUsage: x509.KeyUsageCertSign}
	raw, err := x509.CreateCertificate(rand.Reader, t, t, &a.key.PublicKey, a.key)
	if err != nil {
		return a, err
	}
	if a.cert, err = x509.ParseCertificate(raw); err != nil {
		return a, err
	}
	key, err := x509.MarshalECPrivateKey(a.key)
	if err != nil {
		return a, err
	}
	data := append(pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: raw}), pem.EncodeToMemory(&pem.Block{Type: "EC PRIVATE KEY", Bytes: key})...)
	return a, os.WriteFile(path, data, 0o600)
}

func (a authority) server(ip net.IP, now time.Time) (tls.Certificate, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return tls.Certificate{}, err
	}
	t := &x509.Certificate{SerialNumber: serial(), Subject: pkix.Name{CommonName: ip.String()}, IPAddresses: []net.IP{ip}, NotBefore: now.Add(-24 * time.Hour), NotAfter: now.Add(serverLasts),
		KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}}
	raw, err := x509.CreateCertificate(rand.Reader, t, a.cert, &key.PublicKey, a.key)
	return tls.Certificate{Certificate: [][]byte{raw, a.cert.Raw}, PrivateKey: key}, err
}

func serial() *big.Int {
	n, err := rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 120)) //nolint:forbidigo // a certificate needs a number nobody can guess; no brief reads it
	if err != nil {
		return big.NewInt(time.Now().UnixNano()) // any number that was not used before will do
	}
	return n
}
