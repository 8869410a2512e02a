// Package drawing puts the ship on paper: from the side, from above, and her shell rolled out, from the same lines and marks as the pages.
package drawing
