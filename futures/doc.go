// Package futures runs one ship through many possible futures.
//
// A future draws once for each thing nobody knows (how fast a zone wastes, how giving goes, what the yard will charge) and once for each thing that
// may happen, then lets the years run: parts fail, water comes in against the pumps, it is found early or late, patched afloat, or she goes to dock in
// an emergency or is lost; the planned docking comes when the date, the window and the money allow, renews what its scope covers, and the next one
// follows. Plans are compared on the same futures, so that their differences are sharp.
//
// Every draw comes from a counter-based generator (Philox 4x64-10) addressed by seed, future, use and variable. A future is therefore the same to the
// bit whichever core runs it and in whatever order, and one variable can be redrawn while all others stay, which is how the package tells what drives
// the answer.
//
// Times are in years from the model's day, money in the ship's currency, flows in m3/s, volumes in m3.
package futures
