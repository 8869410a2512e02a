// Package bag packs a folder as a BagIt bag (RFC 8493) and reads one through: every byte of it is held against the sums that were written down.
// What it writes uses SHA-512; what it reads may use any sum that the bags of the last twenty years used. It fetches nothing from a network.
package bag
