/**
 * The straight funnel: a cone from the lip down to the smallest ring. Its diameter where a ring stands is the inside
 * diameter that the ring needs; from the smallest ring on the line runs in a tube of that ring's width.
 */
export interface FunnelEnds {
  lip: { alongM: number; insideM: number };
  /** The smallest ring, the one nearest the reel where several are as small. */
  narrow: { alongM: number; insideM: number };
}
export interface RingOnRod {
  /** From the grip's front towards the tip. */
  alongM: number;
  insideM: number;
}

export function funnelEnds(
  lip: { alongM: number; lipDiameterM: number },
  rings: readonly RingOnRod[],
): FunnelEnds {
  const narrow = rings.reduce((least, ring) =>
    ring.insideM < least.insideM || (ring.insideM === least.insideM && ring.alongM < least.alongM)
      ? ring
      : least,
  );
  return { lip: { alongM: lip.alongM, insideM: lip.lipDiameterM }, narrow };
}

export function insideNeededM({ lip, narrow }: FunnelEnds, alongM: number): number {
  const share = Math.min(1, Math.max(0, (alongM - lip.alongM) / (narrow.alongM - lip.alongM)));
  return lip.insideM + share * (narrow.insideM - lip.insideM);
}
