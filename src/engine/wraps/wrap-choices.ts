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
  /** 0 for none. */
  checkWrapM: number;
  tipWrapM: number;
  signature?: { fromButtM: number; lengthM: number };
  threadColour: string;
  trimColour: string;
  spoolM: number;
  reservePercent: number;
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
  checkWrapM: 0.01,
  tipWrapM: 0.006,
  threadColour: '#1f4d3a',
  trimColour: '#c08a2d',
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
