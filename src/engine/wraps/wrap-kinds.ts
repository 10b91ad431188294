/** What does not go together in a plan of wraps; `wrap` and `next` are a place's id. */
export interface WrapKinds {
  'wraps/turns-uncounted': Record<string, never>;
  'wraps/turn-width': { turnM: number };
  'wraps/trim-short': { turns: number };
  'wraps/over-spigot-gap': { wrap: string };
  'wraps/over-section-end': { wrap: string; section: string; overM: number; mostM: number };
  'wraps/cannot-lock': { wrap: string; turns: number; lockTurns: number };
  'wraps/signature-under-grip': { fromButtM: number; gripM: number };
  'wraps/over-signature': { wrap: string; clearM: number };
  'wraps/overlap': { wrap: string; next: string; overlapM: number };
}
