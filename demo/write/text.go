package main

import "strings"

// replaced puts an ID in the place of a word of a table.
func replaced(table, word, id string) string { return strings.ReplaceAll(table, word, id) }
