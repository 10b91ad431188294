/** How the bar is read: the same on screen and paper. Common practice, no source: our own protocol. */
export const twistSteps = [
  'Clamp the butt at the front of the grip. Clamp a light bar across the blank near the tip.',
  'Rest the blank in a V right at the bar, so that it turns and does not drop.',
  'Hang a weight at the bar’s left end. Lay a phone on the bar and read how far that end is down.',
  'Hang the same weight at the right end, as far out, and read again. Do it with two weights.',
] as const;
