// Package tell writes what people outside read: a folder of static pages with a feed and text to paste, from the updates that somebody wrote and
// published. What a reader may not see never reaches it: an audience has a clearance, and a record above it is as if it were not there.
package tell
