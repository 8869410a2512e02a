package app

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // the two forms a photograph may have
	_ "image/png"
	"io"

	"oakum/field"
)

// Limits of a photograph: what a browser and a printer can still open.
const (
	MostPixels = 100_000_000
	MostBytes  = 60 << 20
)

// PutPhoto keeps a photograph as it was taken. It refuses what is no photograph whatever its name says, what is larger than can be opened, and what
// arrived otherwise than it left: want is the SHA-256 that the sender worked out.
func (a *App) PutPhoto(ctx context.Context, name, want string, from io.Reader) (File, error) {
	data, err := io.ReadAll(io.LimitReader(from, MostBytes+1))
	if err != nil {
		return File{}, field.Refuse("file", "%s broke off on the way (%v); send it again", name, err)
	}
	if len(data) > MostBytes {
		return File{}, field.Refuse("file", "%s is larger than %d MB; send a smaller copy and keep the original by hand", name, MostBytes>>20)
	}
	if sum := fmt.Sprintf("%x", sha256.Sum256(data)); want != "" && sum != want {
		return File{}, field.Refuse("sha256", "%s arrived with another fingerprint than it left with (%.12s, not %.12s): it broke on the way; send it again", name, sum, want)
	}
	form, err := photoForm(name, data)
	if err != nil {
		return File{}, err
	}
	return a.store.PutFile(ctx, name, "image/"+form, bytes.NewReader(data))
}

func photoForm(name string, data []byte) (string, error) {
	switch {
	case len(data) == 0:
		return "", field.Refuse("file", "%s is empty", name)
	case bytes.HasPrefix(data, []byte("MZ")), bytes.HasPrefix(data, []byte("\x7fELF")), bytes.HasPrefix(data, []byte("#!")), bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return "", field.Refuse("file", "%s is a program or an archive under the name of a picture; it is not kept", name)
	}
	c, form, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case errors.Is(err, image.ErrFormat):
		return "", field.Refuse("file", "%s is no JPEG and no PNG, whatever its name says; it is not kept", name)
	case err != nil:
		return "", field.Refuse("file", "%s begins like a picture and can't be read: %v", name, err)
	case int64(c.Width)*int64(c.Height) > MostPixels:
		return "", field.Refuse("file", "%s has %s megapixels (%d by %d); at most %d can be opened again on paper and screen", name, fmt.Sprint(int64(c.Width)*int64(c.Height)/1_000_000), c.Width, c.Height, MostPixels/1_000_000)
	}
	return form, nil
}
