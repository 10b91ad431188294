/** Why frequencies cannot be had. */
export interface FrequencyKinds {
  'frequency/no-mass': Record<string, never>;
  'frequency/few-masses': { modes: number; masses: number };
}
