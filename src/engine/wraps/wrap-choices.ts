/**
 * How the builder wraps; every default is common practice, no source, and his to override.
 */
export interface WrapChoices {
  /** Width of one turn as laid, measured on this bench. */
  laidWidthM: number;
  startBeforeFootM: number;
  lockTurns: number;
  underwrap: boolean;
  /** How far an underwrap shows at either end. */
  underwrapBeyondM: number;
  /** Accent turns at each end of a wrap; 0 for none. */
  trimTurns: number;
  ferruleWraps: boolean;
  /** Length of a ferrule wrap in diameters of the blank there, and how far it stays from the edge. */
  ferruleDiameters: number;
  ferruleEdgeM: number;
  /** 0 for none. */
  checkWrapM: number;
  tipWrapM: number;
  footWraps: FootWraps;
  /** Thread cut off or held at each wrap. */
  tagPerWrapM: number;
  signature?: { fromButtM: number; lengthM: number };
  thread: ThreadColour;
  trim: ThreadColour;
  under: ThreadColour;
  spoolM: number;
  reservePercent: number;
}
export interface ThreadColour {
  /** `#rrggbb`, for the drawing. */
  colour: string;
  /** As the spool calls it. */
  name?: string;
  lot?: string;
}
/** Length of a wrap over a foot by the section it lies on. */
export interface FootWraps {
  tipM: number;
  middleM: number;
  buttM: number;
  strippingM: number;
  /** By section from the tip; a hole where the builder wants nothing of his own. */
  ownM: readonly (number | undefined)[];
}

export const wrapDefaults: WrapChoices = {
  // Size A nylon, about 165 turns to the inch.
  laidWidthM: 0.0254 / 165,
  startBeforeFootM: 0.0025,
  lockTurns: 7,
  underwrap: false,
  underwrapBeyondM: 0.008,
  trimTurns: 4,
  ferruleWraps: true,
  ferruleDiameters: 1.75,
  ferruleEdgeM: 0.0015,
  checkWrapM: 0.01,
  tipWrapM: 0.006,
  footWraps: { tipM: 0.01, middleM: 0.012, buttM: 0.016, strippingM: 0.02, ownM: [] },
  tagPerWrapM: 0.24,
  thread: { colour: '#1f4d3a' },
  trim: { colour: '#c08a2d' },
  under: { colour: '#1f4d3a' },
  // 100 yd.
  spoolM: 91.44,
  reservePercent: 20,
};

/** A guide as it is bound on. */
export interface GuideToWrap extends GuideFeet {
  stationM: number;
}
export interface GuideFeet {
  id?: string;
  name: string;
  /** Over all its feet. */
  lengthM: number;
  feet: 1 | 2;
  oneFootM?: number;
  /** The builder's own length of each wrap on this guide. */
  wrapM?: number;
  stripping: boolean;
}
