/** From a build's record to what the engine takes: by hand, field by field, nothing of the stored shape beyond. */
import { assembleBlank } from '../engine/bench/assemble.ts';
import type { Bench, Handle, Section } from '../engine/bench/bench.ts';
import { type BenchFinding, doubtsOf } from '../engine/bench/bench-finding.ts';
import { checkBench } from '../engine/bench/check.ts';
import { materialOf } from '../engine/bench/materials.ts';
import type { Assumption, Choices } from '../engine/flow/choices.ts';
import { commonHandle } from '../engine/kinds/common-build.ts';
import { type RodKind, rodKindOf, usualHands } from '../engine/kinds/rod-kinds.ts';
import type { DocumentState } from './operation.ts';
import { readSections, readSetups } from './read-bench.ts';
import { readChoices, readRodKind, type ShopHabits } from './read-choices.ts';
import { readSighting } from './read-line.ts';
import { bareSwings } from './read-swings.ts';
import { readTwist } from './read-twists.ts';
import { type RowReader, readSingle } from './read-values.ts';
import { assume, type RecordKinds } from './record-kinds.ts';
import { bareCurves } from './traced-curves.ts';

export interface BuildReading {
  /** The bench as far as it can be worked with; undefined where its sections make no blank. */
  bench?: Bench;
  /** Undefined with the bench. */
  choices?: Choices;
  /** What is missing, makes no sense or looks like a slip; paths of the record. */
  findings: BenchFinding[];
  /** What common practice stands in for. */
  assumed: Assumption[];
}

const doubtAt = doubtsOf<RecordKinds>();

/** Never throws on any state: missing and senseless values are findings. */
export function readBuild(state: DocumentState, habits: ShopHabits = {}): BuildReading {
  const sections = readSections(state);
  const complete = sections.findings.every(({ severity }) => severity !== 'stop');
  if (!complete) return { findings: sections.findings, assumed: sections.assumed };
  const setups = readSetups(state);
  const handle = readHandle(state, sections.value);
  const blank = readSingle(state, 'blank');
  const bench: Bench = {
    material: materialOf(blank.text('material')),
    strainCautionPercent: blank.number('strainCautionPercent'),
    strainStopPercent: blank.number('strainStopPercent'),
    massKg: blank.si('mass'),
    ferrulesBound: blank.flag('ferrulesBound'),
    sections: sections.value,
    setups: setups.value,
    swings: bareSwings(state),
    curves: bareCurves(state),
    handle: handle.value,
    twist: readTwist(state),
  };
  const findings = [
    ...sections.findings,
    ...setups.findings,
    ...handle.findings,
    ...checkBench(bench),
    ...missingParts(bench),
    ...handFindings(readSingle(state, 'handle'), handle.value),
  ];
  const assumed = [...sections.assumed, ...setups.assumed, ...handle.assumed];
  const usable = !findings.some(
    ({ path, severity }) => severity === 'stop' && /^(sections|handle)/.test(path),
  );
  if (!usable) return { findings, assumed };
  const { choices, ...read } = readChoices(state, bench, habits);
  return {
    bench,
    choices,
    findings: [...findings, ...read.findings],
    assumed: [...assumed, ...read.assumed],
  };
}

function readHandle(
  state: DocumentState,
  sections: readonly Section[],
): { value: Handle; assumed: Assumption[]; findings: BenchFinding[] } {
  const row = readSingle(state, 'handle');
  const common = commonHandle(readRodKind(state), sections.length > 0 ? assembleBlank(sections).lengthM : 0);
  const reelFromButtM = row.si('reelFromButt') ?? common.reelFromButtM;
  const sightedM = sightedOffsetM(state, sections, reelFromButtM);
  const value: Handle = {
    gripFrontFromButtM: row.si('gripFront') ?? common.gripFrontFromButtM,
    reelFromButtM,
    reelOffsetM: row.si('reelOffset') ?? sightedM ?? common.reelOffsetM,
    hands: readHands(row, readRodKind(state), row.si('gripFront') ?? common.gripFrontFromButtM),
  };
  const all = [
    assume('handle/-/gripFront', 'assumed/grip-front', { fromButtM: common.gripFrontFromButtM }),
    assume('handle/-/reelFromButt', 'assumed/reel-place', { fromButtM: common.reelFromButtM }),
    assume('handle/-/reelOffset', 'assumed/reel-offset', { offM: common.reelOffsetM }),
  ];
  const known = (field: string) =>
    row.si(field) !== undefined || (field === 'reelOffset' && sightedM !== undefined);
  const typedM = row.si('reelOffset');
  const apart = sightedM !== undefined && typedM !== undefined && Math.abs(sightedM - typedM) > apartM;
  return {
    value,
    assumed: all.filter(({ path }) => !known(path.split('/')[2])),
    findings: apart
      ? [doubtAt('handle/-/reelOffset', 'record/sightings-off-reel', { sightedM, typedM })]
      : [],
  };
}

/** Two sightings and a rule agree within this where nobody slipped. */
const apartM = 0.005;

/** Undefined for a fly rod, and where the spindle's line would leave the lip on the wrong side of the blank. */
function sightedOffsetM(
  state: DocumentState,
  sections: readonly Section[],
  reelFromButtM: number,
): number | undefined {
  if (rodKindOf(readRodKind(state)).flyLine || sections.length === 0) return undefined;
  const offM = readSighting(state, sections)?.offAxisM(reelFromButtM);
  return offM !== undefined && offM > 0 && offM < 0.5 ? offM : undefined;
}

/** Undefined for a rod held with one hand. */
function readHands(row: RowReader, rodKind: RodKind, gripFrontM: number): Handle['hands'] {
  const usual = usualHands(rodKind, gripFrontM);
  return (
    usual && {
      upperFromButtM: row.si('upperHand') ?? usual.upperFromButtM,
      lowerFromButtM: row.si('lowerHand') ?? usual.lowerFromButtM,
    }
  );
}

/** The hands in their order on the handle; nothing to say of one that is all typical. */
function handFindings(row: RowReader, { hands, gripFrontFromButtM }: Handle): BenchFinding[] {
  const measured = ['gripFront', 'upperHand', 'lowerHand'].some((field) => row.si(field) !== undefined);
  if (!hands || !measured) return [];
  const { upperFromButtM, lowerFromButtM } = hands;
  const values = { upperM: upperFromButtM, lowerM: lowerFromButtM, gripM: gripFrontFromButtM };
  if (upperFromButtM > gripFrontFromButtM)
    return [doubtAt('handle/-/upperHand', 'record/hand-off-grip', values)];
  if (upperFromButtM - lowerFromButtM >= leastApartM) return [];
  return [doubtAt('handle/-/lowerHand', 'record/hands-order', values)];
}
/** Two hands side by side. */
const leastApartM = 0.1;

/** What the fit will have to guess. */
function missingParts(bench: Bench): BenchFinding[] {
  const { sections, massKg } = bench;
  const weighed = massKg !== undefined || sections.every((section) => section.massKg !== undefined);
  if (sections.length === 0 || weighed) return [];
  return [doubtAt('blank/-/mass', 'record/nothing-weighed', {})];
}
