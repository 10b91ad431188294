import { locateMark } from '../bench/assemble.ts';
import { type BenchFinding, doubtsOf, stopsOf } from '../bench/bench-finding.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import { closeWrap } from './thread.ts';
import { type ThreadColour, type WrapChoices, wrapDefaults } from './wrap-choices.ts';
import type { WrapKinds } from './wrap-kinds.ts';
import type { WrapsInput } from './wrap-places.ts';
import { type WrapPlace, wrapPlaces } from './wrap-places.ts';

const stopAt = stopsOf<WrapKinds>();
const doubtAt = doubtsOf<WrapKinds>();

/** One wrap where it is laid, as the tape finds it on its own section. */
export interface Wrap extends WrapPlace {
  section: number;
  startFromOwnTipM: number;
  endFromOwnTipM: number;
  startFromOwnButtM: number;
  endFromOwnButtM: number;
  /** Diameter of the blank under its middle. */
  outsideM: number;
  turns: number;
  /** Of them in the trim's colour, both ends together. */
  trimTurns: number;
  /** Width of the trim at either end. */
  trimEndM: number;
  /** On the blank, the underwrap's among it. */
  threadM: number;
  trimThreadM: number;
  /** Under the wrap; 0 for none. */
  underwrapM: number;
  underThreadM: number;
}
type ThreadPart = 'thread' | 'trim' | 'underwrap';
export interface ColourNeed extends ThreadColour {
  part: ThreadPart;
  threadM: number;
  spools: number;
}
export interface WrapPlan {
  wraps: Wrap[];
  /** Width of one turn that was planned with. */
  laidWidthM: number;
  colours: ColourNeed[];
  findings: BenchFinding[];
}

/** All wraps of the rod from the tip down, with turns, thread and spools. Pure geometry; see thread.ts. */
export function planWraps(input: WrapsInput): WrapPlan {
  const choices = sensible(input.choices);
  const findings = choiceFindings(input.choices);
  const places = wrapPlaces({ ...input, choices });
  const wraps = places.flatMap((place) => {
    const located = locate(place, input);
    if (located.ok) return [layThread(located.wrap, input.profile, choices)];
    findings.push(located.finding);
    return [];
  });
  return {
    wraps,
    laidWidthM: choices.laidWidthM,
    colours: colourNeeds(wraps, choices),
    findings: [
      ...findings,
      ...lockFindings(wraps, choices),
      ...collisions(wraps),
      ...signatureFindings(wraps, input),
    ],
  };
}

function sensible(choices: WrapChoices): WrapChoices {
  const laid = choices.laidWidthM;
  return Number.isFinite(laid) && laid > 0 ? choices : { ...choices, laidWidthM: wrapDefaults.laidWidthM };
}

function choiceFindings({ laidWidthM, trimTurns, lockTurns }: WrapChoices): BenchFinding[] {
  const findings: BenchFinding[] = [];
  if (!(laidWidthM > 0) || !Number.isFinite(laidWidthM)) {
    findings.push(stopAt('wraps/-/turnsCounted', 'wraps/turns-uncounted', {}));
  } else if (laidWidthM < 0.00005 || laidWidthM > 0.0006) {
    findings.push(doubtAt('wraps/-/turnsCounted', 'wraps/turn-width', { turnM: laidWidthM }));
  }
  if (trimTurns > 0 && trimTurns < lockTurns && trimTurns <= 2) {
    findings.push(doubtAt('wraps/-/trimTurns', 'wraps/trim-short', { turns: trimTurns }));
  }
  return findings;
}

type Located =
  | { ok: true; wrap: WrapPlace & Pick<Wrap, SectionFields> }
  | { ok: false; finding: BenchFinding };
type SectionFields =
  | 'section'
  | 'startFromOwnTipM'
  | 'endFromOwnTipM'
  | 'startFromOwnButtM'
  | 'endFromOwnButtM';

function locate(place: WrapPlace, { blank }: WrapsInput): Located {
  const mark = locateMark(blank, (place.fromTipM + place.toTipM) / 2);
  if (mark.onSection === 'none') {
    return { ok: false, finding: stopAt(place.path, 'wraps/over-spigot-gap', { wrap: place.id }) };
  }
  const { ends, lengthM, visible, name } = blank.sections[mark.onSection];
  if (place.fromTipM < visible.fromTipM - 1e-6 || place.toTipM > visible.toTipM + 1e-6) {
    const over = Math.max(visible.fromTipM - place.fromTipM, place.toTipM - visible.toTipM);
    const mostM = Math.max(0, place.toTipM - place.fromTipM - over);
    const values = { wrap: place.id, section: name, overM: over, mostM };
    return { ok: false, finding: doubtAt(place.path, 'wraps/over-section-end', values) };
  }
  const startFromOwnTipM = place.fromTipM - ends.fromTipM;
  const endFromOwnTipM = place.toTipM - ends.fromTipM;
  return {
    ok: true,
    wrap: {
      ...place,
      section: mark.onSection,
      startFromOwnTipM,
      endFromOwnTipM,
      startFromOwnButtM: lengthM - startFromOwnTipM,
      endFromOwnButtM: lengthM - endFromOwnTipM,
    },
  };
}

function layThread(
  wrap: WrapPlace & Pick<Wrap, SectionFields>,
  profile: readonly DiameterRow[],
  choices: WrapChoices,
): Wrap {
  const { laidWidthM, underwrapBeyondM } = choices;
  const outsideM = diameterAt(profile, (wrap.fromTipM + wrap.toTipM) / 2) ?? 0.005;
  const widthM = wrap.toTipM - wrap.fromTipM;
  const under = wrap.overFoot && choices.underwrap;
  const underM = outsideM + (under ? 2 * laidWidthM : 0);
  const all = closeWrap(underM, widthM, laidWidthM);
  const trimTurns = wrap.trimmed ? Math.min(2 * choices.trimTurns, all.turns) : 0;
  const trimThreadM = (all.threadM * trimTurns) / all.turns;
  const below = under ? closeWrap(outsideM, widthM + 2 * underwrapBeyondM, laidWidthM).threadM : 0;
  return {
    ...wrap,
    outsideM,
    turns: all.turns,
    trimTurns,
    trimEndM: (trimTurns / 2) * laidWidthM,
    threadM: all.threadM - trimThreadM + below,
    trimThreadM,
    underThreadM: below,
    underwrapM: under ? widthM + 2 * underwrapBeyondM : 0,
  };
}

/** Each length of thread ends in two tags that run under the lock turns, and in what is held and cut off. */
function colourNeeds(wraps: readonly Wrap[], choices: WrapChoices): ColourNeed[] {
  const grown = 1 + choices.reservePercent / 100;
  const endsM = choices.tagPerWrapM + 2 * choices.lockTurns * choices.laidWidthM;
  const need = (part: ThreadPart, thread: ThreadColour, laidM: number, pieces: number): ColourNeed[] => {
    if (pieces === 0) return [];
    const threadM = (laidM + pieces * endsM) * grown;
    return [{ ...thread, part, threadM, spools: Math.ceil(threadM / choices.spoolM) }];
  };
  const trimmed = wraps.filter(({ trimTurns }) => trimTurns > 0);
  const under = wraps.filter(({ underwrapM }) => underwrapM > 0);
  const underM = sum(under.map(({ underThreadM }) => underThreadM));
  const mainM = sum(wraps.map(({ threadM }) => threadM)) - underM;
  return [
    ...need('thread', choices.thread, mainM, wraps.length),
    ...need('trim', choices.trim, sum(trimmed.map(({ trimThreadM }) => trimThreadM)), 2 * trimmed.length),
    ...need('underwrap', choices.under, underM, under.length),
  ];
}

/** Both tags are locked within one wrap. */
function lockFindings(wraps: readonly Wrap[], { lockTurns }: WrapChoices): BenchFinding[] {
  const short = wraps.find(({ turns }) => turns < 2 * lockTurns);
  if (!short) return [];
  const values = { wrap: short.id, turns: Math.round(short.turns), lockTurns };
  return [doubtAt(short.path, 'wraps/cannot-lock', values)];
}

/** The signature is written between two wraps, on the bare blank in front of the grip. */
function signatureFindings(
  wraps: readonly Wrap[],
  { blank, gripFrontFromButtM, choices: { signature } }: WrapsInput,
): BenchFinding[] {
  if (!signature) return [];
  const path = 'wraps/-/signatureFrom';
  const toTipM = blank.lengthM - signature.fromButtM;
  const fromTipM = toTipM - signature.lengthM;
  if (signature.fromButtM < gripFrontFromButtM) {
    const values = { fromButtM: signature.fromButtM, gripM: gripFrontFromButtM };
    return [doubtAt(path, 'wraps/signature-under-grip', values)];
  }
  const under = wraps.find((wrap) => wrap.fromTipM < toTipM && wrap.toTipM > fromTipM);
  if (!under) return [];
  const values = { wrap: under.id, clearM: blank.lengthM - under.fromTipM };
  return [doubtAt(path, 'wraps/over-signature', values)];
}

function collisions(wraps: readonly Wrap[]): BenchFinding[] {
  const sorted = [...wraps].sort((a, b) => a.fromTipM - b.fromTipM);
  return sorted.slice(1).flatMap((wrap, index) => {
    const before = sorted[index];
    if (before.section !== wrap.section || wrap.fromTipM >= before.toTipM - 1e-6) return [];
    const values = { wrap: before.id, next: wrap.id, overlapM: before.toTipM - wrap.fromTipM };
    return [doubtAt(wrap.path, 'wraps/overlap', values)];
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
