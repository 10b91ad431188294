/** How large a picture may be, wherever it comes from. */
export interface DecodeLimits {
  mostMegapixels: number;
  mostBytes: number;
  leastSidePx: number;
}

export const decodeLimits: DecodeLimits = { mostMegapixels: 50, mostBytes: 100e6, leastSidePx: 16 };
