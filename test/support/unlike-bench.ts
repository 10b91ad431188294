/** A bench with an unlike blank on it, read as people read: to 1/16 in or to the millimetre, with slips of the eye and a clamp that gives. */
import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitClampSetup, FitRequest } from '../../src/engine/stiffness/request.ts';
import { bentByPicard } from './picard-bend.ts';
import { dropOn } from './simulated-bench.ts';
import type { UnlikeBlank } from './unlike-blanks.ts';

export type Readings = 'none' | 'one weight' | 'full';

/** How this bench reads, from its seed. */
export interface Manners {
  /** A sixteenth of an inch, or a millimetre. */
  roundedToM: number;
  /** The eye's errors: normal, or Student's t with three degrees of freedom. */
  heavyTails: boolean;
  givesRadPerNm: number;
}

export interface UnlikeBench {
  blank: UnlikeBlank;
  request: FitRequest;
  manners: Manners;
}

interface Step {
  clampFromTipM: number;
  flags: readonly number[];
  hungKg: readonly number[];
}

const statedSigmaM = 0.0015;

export function readUnlikeBench(blank: UnlikeBlank, readings: Readings, seed: number): UnlikeBench {
  const random = seededRandom(104729 * seed + 7);
  const normal = seededNormal(random);
  const manners: Manners = {
    roundedToM: random() < 0.5 ? 0.0254 / 16 : 0.001,
    heavyTails: random() < 0.34,
    givesRadPerNm: random() < 0.34 ? (0.1 * random() * Math.PI) / 180 : 0,
  };
  const eye = () => {
    if (!manners.heavyTails) return 0.0013 * normal();
    const squares = [normal(), normal(), normal()].reduce((sum, x) => sum + x * x, 0);
    return (0.0011 * normal()) / Math.sqrt(squares / 3);
  };
  const setups = plan(blank, readings).map((step) => readStep(blank, step, manners, { eye, normal }));
  return { blank, manners, request: { blank: measured(blank, normal), setups } };
}

function readStep(
  blank: UnlikeBlank,
  { clampFromTipM, flags, hungKg }: Step,
  { roundedToM, givesRadPerNm }: Manners,
  { eye, normal }: { eye: () => number; normal: () => number },
): FitClampSetup {
  const buttAngleRad = (Math.PI / 180) * normal();
  const tests = hungKg.map((massKg, t) => {
    const hung = massKg > 0 ? [{ fromTipM: 0, massKg }] : [];
    const curve = bentByPicard(blank, { buttAngleRad, clampFromTipM, hung, givesRadPerNm });
    const atEnds = flags.length > 1 && (t === 0 || t === hungKg.length - 1);
    const readings = [...flags, ...(atEnds ? [clampFromTipM] : [])].map((fromTipM) => {
      const dropM = dropOn(curve, fromTipM, 0) + eye();
      return { fromTipM, dropM: Math.round(dropM / roundedToM) * roundedToM };
    });
    return { hung, readings, sigmaM: statedSigmaM };
  });
  return { nominalAngleRad: 0, tiltSigmaRad: Math.PI / 180, clampFromTipM, tests };
}

/** Twenty minutes' protocol, or one weight read at its four flags. */
function plan(blank: UnlikeBlank, readings: Readings): Step[] {
  if (readings === 'none') return [];
  const { lengthM } = blank;
  const clampM = lengthM - 0.1524;
  const flags = [0, lengthM / 9, lengthM / 4, lengthM / 2].map((at) => Math.round(at * 1000) / 1000);
  const step = (clampFromTipM: number, share: number, at: readonly number[]): Step => {
    const full = weightFor(blank, clampFromTipM, share * clampFromTipM);
    return { clampFromTipM, flags: at, hungKg: [0, full / 2, full] };
  };
  const whole = step(clampM, 1 / 3, flags);
  if (readings === 'one weight') return [{ ...whole, hungKg: [0, whole.hungKg[2]] }];
  return [step(lengthM / 9, 0.085, [0]), whole, step(lengthM / 2, 0.15, [0]), step(lengthM / 4, 0.15, [0])];
}

/** To the gram. */
function weightFor(blank: UnlikeBlank, clampFromTipM: number, dropM: number): number {
  let [low, high] = [0.0005, 1];
  while (high / low > 1.02) {
    const massKg = Math.sqrt(low * high);
    const bare = { buttAngleRad: 0, clampFromTipM, givesRadPerNm: 0, hung: [{ fromTipM: 0, massKg }] };
    if (droopsBeyond(blank, bare, dropM)) high = massKg;
    else low = massKg;
  }
  return Math.max(1, Math.round(1000 * low)) / 1000;
}

function droopsBeyond(blank: UnlikeBlank, load: Parameters<typeof bentByPicard>[1], dropM: number): boolean {
  try {
    return dropOn(bentByPicard(blank, load), 0, 0) > dropM;
  } catch {
    // so heavy that going round does not settle: far beyond a third of the length
    return true;
  }
}

/** Three diameters a section, with callipers; scale to 0.1 g; the joints are seen, not how stiff they are. */
function measured(blank: UnlikeBlank, normal: () => number): FitRequest['blank'] {
  const { lengthM, sections, ferrules } = blank;
  const diameters = sections.flatMap(({ fromTipM, toTipM }, k) =>
    [0, 0.5, 1].map((share) => {
      const [from, to] = [fromTipM + (k > 0 ? 0.045 : 0), toTipM - (k < sections.length - 1 ? 0.045 : 0)];
      const at = Math.round(1000 * (from + share * (to - from))) / 1000;
      const outsideM = Math.round((blank.outsideM(at) + 3e-5 * normal()) * 1e5) / 1e5;
      return { fromTipM: at, outsideM };
    }),
  );
  let massKg = 0;
  for (let k = 0; k < 2000; k++) massKg += (blank.kgPerM(((k + 0.5) / 2000) * lengthM) * lengthM) / 2000;
  return {
    lengthM,
    diameters,
    massKg: Math.round(massKg * 1e4) / 1e4,
    sweepSigmaPerM: 0,
    stiffZones: ferrules,
  };
}
