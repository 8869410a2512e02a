package bag

import (
	"crypto/md5"
	"crypto/sha1"
	"crypto/sha256"
	"crypto/sha512"
	"encoding/hex"
	"hash"
	"io"
	"os"
)

// algorithms are the sums of RFC 8493, section 2.4, and the older ones that bags in the wild carry. The weak ones find an accident, not a forger.
var algorithms = map[string]func() hash.Hash{
	"md5": md5.New, "sha1": sha1.New, "sha224": sha256.New224, "sha256": sha256.New, "sha384": sha512.New384, "sha512": sha512.New,
}

// sumsOf reads a file once and gives its sum by each of the algorithms, in small hexadecimal letters, and its length.
func sumsOf(path string, names []string) (map[string]string, int64, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, err
	}
	defer f.Close()
	hashes := make(map[string]hash.Hash, len(names))
	writers := make([]io.Writer, 0, len(names))
	for _, n := range names {
		hashes[n] = algorithms[n]()
		writers = append(writers, hashes[n])
	}
	size, err := io.Copy(io.MultiWriter(writers...), f)
	if err != nil {
		return nil, 0, err
	}
	sums := make(map[string]string, len(names))
	for n, h := range hashes {
		sums[n] = hex.EncodeToString(h.Sum(nil))
	}
	return sums, size, nil
}
