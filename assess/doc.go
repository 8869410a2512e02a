// Package assess turns a dossier, a plan and a day into a brief: the nine pages with every figure, its basis, and the sheet that made it.
// It is a pure function: the same dossier, plan and day give the same brief, to the bit. It reads no clock, no file and no network.
package assess
