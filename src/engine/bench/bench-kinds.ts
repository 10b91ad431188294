/** What can be odd about a bench, and the quantities that say it. */
export interface BenchKinds {
  'bench/diameter-odd': { outsideM: number; toldM: number };
  'bench/joint-sides-differ': { section: string; joint: string; upperM: number; lowerM: number };
  'bench/section-length': { section: string; lengthM: number; leastM: number; mostM: number };
  'bench/section-mass': { section: string; massKg: number };
  'bench/balance-off-section': { section: string; balanceM: number; lengthM: number };
  'bench/joint-unsaid': { upper: string; lower: string };
  'bench/spigot-gap-wide': { section: string; gapM: number };
  'bench/spigot-long': { section: string; plugM: number };
  'bench/overlap-over-section': { upper: string; lower: string; overlapM: number; shorterM: number };
  'bench/overlap-unusual': { upper: string; lower: string; overlapM: number };
  'bench/joints-meet': { section: string; takenM: number; lengthM: number };
  'bench/blank-mass-unit': { massKg: number };
  'bench/masses-disagree': { sumKg: number; wholeKg: number; allWeighed: boolean };
  'bench/ferrules-unbound': { massKg: number; thirdKg: number };
  'bench/weight-reaches-floor': { dropM: number; heightM: number; neededM: number };
  'bench/empty': Nothing;
  'bench/grip-over-blank': { gripM: number; lengthM: number };
  'bench/reel-ahead-of-grip': { reelM: number; gripM: number };
  'bench/strain-limits': { cautionPercent: number; limitPercent: number };
  'bench/diameters-few': Nothing;
  'bench/diameter-off-section': { section: string; fromOwnTipM: number; lengthM: number };
  'bench/diameter-size': { section: string; outsideM: number };
  'bench/diameters-taper': {
    section: string;
    upperOutsideM: number;
    upperM: number;
    lowerOutsideM: number;
    lowerM: number;
  };
  'bench/weight-unit': { massKg: number };
  'bench/clamp-off-blank': { clampM: number; lengthM: number };
  'bench/flag-check-past-tip': { fromClampM: number; clampM: number };
  'bench/span-order': { tipSideM: number; loadM: number; buttSideM: number; lengthM: number };
  'bench/sag-over-span': { sagM: number; spanM: number };
  'bench/weight-behind-clamp': { fromTipM: number; clampM: number };
  'bench/reading-behind-clamp': { fromTipM: number; clampM: number };
  'bench/drop-over-length': { dropM: number; beyondM: number };
  'bench/drops-jump': { upperM: number; lowerM: number; dropM: number };
  'bench/heavier-drops-less': { heavyKg: number; lightKg: number; worse: number; of: number };
  'bench/no-marks': Nothing;
  'bench/mark-above-tip': { guide: number; fromTipM: number };
  'bench/mark-off-blank': { guide: number; fromTipM: number; lengthM: number };
  'bench/mark-under-grip': { guide: number; fromTipM: number; gripM: number };
  'bench/mark-on-ferrule': { guide: number; fromTipM: number; zoneFromM: number; zoneToM: number };
  'bench/marks-order': { guide: number; fromTipM: number; beforeM: number };
  'bench/mark-slip': { guide: number; fromTipM: number; likelyM: number };
  'bench/rule-count': { count: number };
  'bench/rule-first': { firstM: number; strippingM: number };
  'bench/rule-overshoots': { count: number; firstM: number; strippingM: number };
  'bench/list-empty': Nothing;
  'bench/no-drops': Nothing;
}

type Nothing = Record<string, never>;
