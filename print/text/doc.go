// Package text is the brief for a terminal: plain lines of eighty letters, so that it can be mailed, piped and read aloud.
package text
