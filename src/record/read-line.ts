/** The line of a rod that throws a weight: from the record to what the engine takes. */

import { assembleBlank } from '../engine/bench/assemble.ts';
import type { Section } from '../engine/bench/bench.ts';
import { type BenchFinding, doubtsOf } from '../engine/bench/bench-finding.ts';
import { diameterAt, diameterProfile } from '../engine/bench/diameter-profile.ts';
import type { LineChoices, ReelOfLine } from '../engine/flow/choices.ts';
import { usualDragKg } from '../engine/kinds/line-load.ts';
import { type RodKind, rodKindOf } from '../engine/kinds/rod-kinds.ts';
import { leastSightedM, type SightedSpindle, sightSpindle } from '../engine/spool/sighting.ts';
import type { DocumentState } from './operation.ts';
import { oneOf, type RowReader, readSingle } from './read-values.ts';
import type { RecordKinds } from './record-kinds.ts';

const doubtAt = doubtsOf<RecordKinds>();

export interface ReadLine {
  line: LineChoices | undefined;
  findings: BenchFinding[];
}

/** Undefined for a fly rod, whatever its record says of lips and drags. */
export function readLine(state: DocumentState, rodKind: RodKind, sections: readonly Section[]): ReadLine {
  if (rodKindOf(rodKind).flyLine) return { line: undefined, findings: [] };
  const row = readSingle(state, 'line');
  const testKg = row.si('test');
  const line: LineChoices = {
    testKg,
    dragKg: row.si('drag') ?? (testKg === undefined ? undefined : usualDragKg(testKg)),
    lureKg: { least: row.si('lureLeast'), most: row.si('lureMost') },
    reel: reelOf(state, row, rodKind, sections),
    gripDiameterM: readSingle(state, 'handle').orUsual('gripDiameter'),
    limits: { lineAngleRad: row.orUsual('limitFan'), clearanceM: row.orUsual('limitClear') },
    knotM: readSingle(state, 'layout').si('knot'),
  };
  return { line, findings: lineFindings(state, row, line, rodKind) };
}

/** On which side of the rod the reel sits. */
export function readReelSide(state: DocumentState, rodKind: RodKind): 'under' | 'over' {
  const said = oneOf(readSingle(state, 'handle').text('reelSide'), ['under', 'over']);
  return said ?? (rodKindOf(rodKind).reel === 'multiplier' ? 'over' : 'under');
}

function reelOf(
  state: DocumentState,
  row: RowReader,
  rodKind: RodKind,
  sections: readonly Section[],
): ReelOfLine {
  if (readReelSide(state, rodKind) === 'over') {
    return { kind: 'multiplier', windWidthM: row.si('windWidth') };
  }
  const sighted = readSighting(state, sections);
  const common = { kind: 'fixed spool' as const, lipDiameterM: row.si('lipDiameter') };
  if (sighted)
    return {
      ...common,
      tiltRad: sighted.tiltRad,
      tiltSigmaRad: sighted.tiltSigmaRad,
      tiltIs: 'sighted',
    };
  const tiltIs = row.si('tilt') === undefined ? ('typical' as const) : ('typed' as const);
  return { ...common, tiltRad: row.orUsual('tilt'), tiltIs };
}

/** Undefined until all four values are there and the two places stand apart. */
export function readSighting(state: DocumentState, sections: readonly Section[]): SightedSpindle | undefined {
  const row = readSingle(state, 'line');
  const [nearAt, nearM] = [row.si('nearAt'), row.si('nearHeight')];
  const [farAt, farM] = [row.si('farAt'), row.si('farHeight')];
  if (nearAt === undefined || nearM === undefined || farAt === undefined || farM === undefined)
    return undefined;
  const blank = assembleBlank(sections);
  const profile = diameterProfile(sections, blank);
  const radiusAt = (fromButtM: number) => (diameterAt(profile, blank.lengthM - fromButtM) ?? 0) / 2;
  return sightSpindle(
    { fromButtM: nearAt, overBlankM: nearM },
    { fromButtM: farAt, overBlankM: farM },
    radiusAt,
  );
}

function lineFindings(
  state: DocumentState,
  row: RowReader,
  { testKg, dragKg, lureKg, reel }: LineChoices,
  rodKind: RodKind,
): BenchFinding[] {
  const findings: BenchFinding[] = [];
  const written = readSingle(state, 'about').text('lineWeight') ?? '';
  if (/^\s*(?:#\s*\d|(?:wf|dt|st|sh)\s*-?\d|\d{1,2}\s*(?:wt|weight)?\s*$)/i.test(written)) {
    const { name } = rodKindOf(rodKind);
    findings.push(doubtAt('about/-/lineWeight', 'record/fly-line-on-rod', { written, rod: name }));
  }
  if (testKg !== undefined && dragKg !== undefined && dragKg > testKg) {
    findings.push(doubtAt('line/-/drag', 'record/drag-over-test', { dragKg, testKg }));
  }
  const { least, most } = lureKg;
  if (least !== undefined && most !== undefined && least > most) {
    findings.push(doubtAt('line/-/lureMost', 'record/lure-order', { leastKg: least, mostKg: most }));
  }
  return [...findings, ...sightingFindings(row), ...sideFindings(state, rodKind, reel)];
}

function sightingFindings(row: RowReader): BenchFinding[] {
  const given = (['nearAt', 'nearHeight', 'farAt', 'farHeight'] as const).map((field) => row.si(field));
  const missing = (['nearAt', 'nearHeight', 'farAt', 'farHeight'] as const)[given.indexOf(undefined)];
  if (missing && given.some((value) => value !== undefined)) {
    return [doubtAt(`line/-/${missing}`, 'record/sighting-half', {})];
  }
  const [nearM, , farM] = given;
  if (nearM === undefined || farM === undefined || farM - nearM >= leastSightedM) return [];
  return [doubtAt('line/-/farAt', 'record/sightings-close', { nearM, farM, leastM: leastSightedM })];
}

/** A spiral's reel sits on top and its guides go under: every other rod has both on one side. */
function sideFindings(state: DocumentState, rodKind: RodKind, reel: ReelOfLine): BenchFinding[] {
  const guides = oneOf(readSingle(state, 'layout').text('guidesSide'), ['under', 'over', 'spiral']);
  const over = reel.kind === 'multiplier';
  if (rodKind === 'casting-spiral' || guides === undefined || guides === 'spiral') return [];
  if ((guides === 'over') === over) return [];
  return [doubtAt('layout/-/guidesSide', 'record/reel-and-guides', { reelOver: over })];
}
