// Package page is paper: sizes, frame, title block, headings, text, tables that run over several pages, drawings, charts, boxes to sign and grids for a
// pencil. It knows nothing of ships. Everything is black on white, with patterns and words where a screen would use colour, and the same calls give the
// same bytes.
package page
