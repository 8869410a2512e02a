// Package survey holds what was seen, measured or heard on board and in the water: records only. A reading carries who, when, with what and
// how well; a thing not looked at is a record too, and is never sound.
package survey
