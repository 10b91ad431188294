/** What can be odd about a bench, and the quantities that say it. */
export interface BenchKinds {
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
}
