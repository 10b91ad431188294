import type { ClampSetup, Edge, Joint, JointKind, Section, Setup, SpanSetup } from '../engine/bench/bench.ts';
import { type BenchFinding, doubtsOf, stopsOf } from '../engine/bench/bench-finding.ts';
import type { LineSide } from '../engine/bench/line-side.ts';
import type { Assumption } from '../engine/flow/choices.ts';
import { tapeSigmaM } from './fields/readings.ts';
import type { DocumentState } from './operation.ts';
import { oneOf, type RowReader, readRows } from './read-values.ts';
import { assume, type RecordKinds } from './record-kinds.ts';
import { sectionName, setupName } from './row-names.ts';

const stopAt = stopsOf<RecordKinds>();
const doubtAt = doubtsOf<RecordKinds>();

/** What could be read, and what is missing; a section without its length leaves no blank. */
interface ReadPart<T> {
  value: T;
  findings: BenchFinding[];
  assumed: Assumption[];
}

const jointKinds = ['sleeve', 'spigot', 'put-in', 'put-over'] as const satisfies JointKind[];
const edges = ['axis', 'upper', 'lower'] as const satisfies Edge[];

export function readSections(state: DocumentState): ReadPart<Section[]> {
  const part: ReadPart<Section[]> = { value: [], findings: [], assumed: [] };
  const rows = readRows(state, 'sections');
  const diameters = readRows(state, 'diameters');
  rows.forEach((row, index) => {
    const name = sectionName(row, index);
    const lengthM = row.si('length');
    if (lengthM === undefined) {
      part.findings.push(stopAt(`sections/${row.id}/length`, 'record/length-missing', { section: name }));
      return;
    }
    part.value.push({
      id: row.id,
      name,
      lengthM,
      massKg: row.si('mass'),
      balanceFromOwnTipM: row.si('balanceFromOwnTip'),
      diameters: diameters
        .filter((one) => one.text('section') === row.id)
        .flatMap((one) => readDiameter(one, part)),
      lineSide: readLineSide(row),
      joint: index < rows.length - 1 ? readJoint(row, name, part) : undefined,
    });
  });
  return part;
}

/** Chosen once it has its angle. */
function readLineSide(row: RowReader): LineSide | undefined {
  const angleRad = row.si('lineSideAngle');
  if (angleRad === undefined) return undefined;
  return { angleRad, reference: row.text('lineSideReference'), method: row.text('lineSideMethod') };
}

function readDiameter(row: RowReader, part: ReadPart<unknown>) {
  const [fromOwnTipM, outsideM] = [row.si('fromOwnTip'), row.si('outside')];
  if (fromOwnTipM !== undefined && outsideM !== undefined) return [{ id: row.id, fromOwnTipM, outsideM }];
  if (outsideM !== undefined) {
    part.findings.push(doubtAt(`diameters/${row.id}/fromOwnTip`, 'record/diameter-unplaced', {}));
  }
  return [];
}

function readJoint(row: RowReader, name: string, part: ReadPart<unknown>): Joint | undefined {
  const kind = oneOf(row.text('joint'), jointKinds);
  if (!kind) return undefined;
  const stiffnessRatio = row.number('jointStiffness');
  if (kind !== 'spigot') {
    const overlapM = row.si('overlap');
    if (overlapM === undefined) {
      part.findings.push(stopAt(`sections/${row.id}/overlap`, 'record/overlap-missing', { section: name }));
    }
    return { kind, overlapM: overlapM ?? 0, gapM: 0, plugM: 0, stiffnessRatio };
  }
  const gapM = row.orUsual('spigotGap');
  if (row.si('spigotGap') === undefined) {
    const values = { section: name, gapM };
    part.assumed.push(assume(`sections/${row.id}/spigotGap`, 'assumed/spigot-gap', values));
  }
  return {
    kind,
    overlapM: 0,
    gapM,
    plugM: row.orUsual('spigotLength'),
    stiffnessRatio,
  };
}

export function readSetups(state: DocumentState): ReadPart<Setup[]> {
  const part: ReadPart<Setup[]> = { value: [], findings: [], assumed: [] };
  const tests = readRows(state, 'tests');
  const readings = readRows(state, 'readings');
  const checks = readRows(state, 'flagChecks');
  readRows(state, 'setups').forEach((row, index) => {
    const name = setupName(row, index);
    const own = tests.filter((test) => test.text('setup') === row.id);
    const setup =
      row.text('kind') === 'span'
        ? readSpan(row, name, own, part)
        : readClamp(row, name, { tests: own, readings, checks }, part);
    if (setup) part.value.push(setup);
  });
  return part;
}

function readClamp(
  row: RowReader,
  name: string,
  { tests, readings, checks }: Record<'tests' | 'readings' | 'checks', readonly RowReader[]>,
  part: ReadPart<unknown>,
): ClampSetup | undefined {
  const clampFromTipM = row.si('clampFromTip');
  const read = tests.map((test) => ({
    id: test.id,
    hungKg: test.si('hung') ?? 0,
    hungFromTipM: test.si('hungFromTip') ?? 0,
    readings: readings
      .filter((one) => one.text('test') === test.id)
      .flatMap((one) => readReading(one, clampFromTipM, part)),
  }));
  if (clampFromTipM === undefined) {
    const waits = read.some((test) => test.readings.length > 0);
    const path = `setups/${row.id}/clampFromTip`;
    if (waits) part.findings.push(doubtAt(path, 'record/clamp-missing', { setup: name }));
    return undefined;
  }
  return {
    kind: 'clamp',
    id: row.id,
    name,
    day: row.text('day'),
    nominalAngleRad: row.si('nominalAngle') ?? 0,
    clampFromTipM,
    clampHeightM: row.si('clampHeight'),
    turnedRad: row.si('turned') ?? 0,
    edge: oneOf(row.text('edge'), edges) ?? 'axis',
    sigmaM: row.si('sigma') || tapeSigmaM,
    tiltSigmaRad: row.orUsual('tiltSigma'),
    tests: read,
    flagChecks: checks.filter((one) => one.text('setup') === row.id).flatMap(readFlagCheck),
  };
}

function readFlagCheck(row: RowReader) {
  const [fromTipM, fromClampM] = [row.si('fromTip'), row.si('fromClamp')];
  return fromTipM === undefined || fromClampM === undefined ? [] : [{ id: row.id, fromTipM, fromClampM }];
}

/** Rows still to be filled and rows set aside are no readings. */
function readReading(row: RowReader, clampFromTipM: number | undefined, part: ReadPart<unknown>) {
  const fromTipM = row.flag('atClamp') ? (clampFromTipM ?? Number.POSITIVE_INFINITY) : row.si('fromTip');
  const dropM = row.si('drop');
  if (dropM === undefined || row.flag('setAside')) return [];
  if (fromTipM !== undefined) return [{ id: row.id, fromTipM, dropM }];
  part.findings.push(doubtAt(`readings/${row.id}/fromTip`, 'record/drop-unplaced', {}));
  return [];
}

function readSpan(
  row: RowReader,
  name: string,
  tests: readonly RowReader[],
  part: ReadPart<unknown>,
): SpanSetup | undefined {
  const [a, b, load] = [row.si('supportTipSide'), row.si('supportButtSide'), row.si('loadFromTip')];
  const read = tests.flatMap((test) => {
    const sagM = test.si('sag');
    return sagM === undefined ? [] : [{ id: test.id, hungKg: test.si('hung') ?? 0, sagM }];
  });
  if (a === undefined || b === undefined || load === undefined) {
    const field = a === undefined ? 'supportTipSide' : b === undefined ? 'supportButtSide' : 'loadFromTip';
    const path = `setups/${row.id}/${field}`;
    if (read.length > 0) part.findings.push(doubtAt(path, 'record/span-incomplete', { setup: name }));
    return undefined;
  }
  return {
    kind: 'span',
    id: row.id,
    name,
    day: row.text('day'),
    supportTipSideM: a,
    supportButtSideM: b,
    loadFromTipM: load,
    sigmaM: row.si('sigma') || tapeSigmaM,
    tests: read,
  };
}
