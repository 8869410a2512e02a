/** Whether the window has room for a long page at once: on a phone its parts start folded behind a heading and a line of what they say. */
export const wide = typeof matchMedia !== 'function' || !matchMedia('(max-width: 48rem)').matches
