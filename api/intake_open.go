package api

import (
	"crypto/rand"
	"slices"
	"sync"

	"github.com/danielgtaylor/huma/v2"

	"oakum/app"
)

// mostOpen is how many files may be open at once; the one opened first is left when another comes.
const mostOpen = 8

// openTables are the files that are being looked at before they land.
type openTables struct {
	mu   sync.Mutex
	list []*openTable
}

type openTable struct {
	mu    sync.Mutex // one correction or landing at a time
	token string
	table app.Table
}

func (o *openTables) add(t app.Table) string {
	o.mu.Lock()
	defer o.mu.Unlock()
	token := rand.Text()
	o.list = append(o.list, &openTable{token: token, table: t})
	if len(o.list) > mostOpen {
		o.list = slices.Delete(o.list, 0, 1)
	}
	return token
}

func (o *openTables) find(token string) (*openTable, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	for _, t := range o.list {
		if t.token == token {
			return t, nil
		}
	}
	return nil, huma.Error404NotFound("that file is not open any more: choose it again")
}

func (o *openTables) drop(token string) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.list = slices.DeleteFunc(o.list, func(t *openTable) bool { return t.token == token })
}
