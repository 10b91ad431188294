/** Pixel places: origin at the top left pixel's centre, x right, y down, of the picture as it is displayed. */
export interface TraceRequest {
  marks: readonly { px: readonly [number, number]; atM: readonly [number, number] }[];
  ends: { butt: readonly [number, number]; tip: readonly [number, number] };
  /** Places on the blank between butt and tip, in that order. */
  via?: readonly (readonly [number, number])[];
}

export interface TracedPoint {
  xM: number;
  yM: number;
  /** Standard error square to the curve: marks, lens and edges together. */
  sigmaM: number;
  /** Where it is seen, for the overlay, and half the blank's width there. */
  px: [number, number];
  halfWidthPx: number;
}
