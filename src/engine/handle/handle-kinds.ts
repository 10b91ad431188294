/** What does not go together in a handle. */
export interface HandleKinds {
  'handle/grip-past-section': { frontM: number; sectionM: number };
  'handle/grip-too-long': { lengthM: number; frontM: number };
  'handle/seat-too-long': { missingM: number; mostM: number };
  'handle/rear-grip-too-long': { missingM: number; mostM: number };
  'handle/reach-on-grip': { reachM: number; frontM: number };
  'handle/grip-bore-wide': { boreM: number; overM: number };
  'handle/seat-bore-small': { boreM: number; blankM: number };
  'handle/seat-gap-wide': { gapM: number; tapedM: number };
}
