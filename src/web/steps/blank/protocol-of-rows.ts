import { checkFloor, clampHeightNeeded } from '../../../engine/bench/floor.ts';
import type { BlankTables } from '../../../engine/bench/free-rod.ts';
import { countReadings, type ProtocolSetup } from '../../../engine/bench/protocol.ts';
import { predictedTipDrop } from '../../../engine/bend/predicted-tip-drop.ts';
import type { Finding } from '../../../engine/finding.ts';
import { setupName } from '../../../record/row-names.ts';
import type { NamedProtocol } from '../../../sheets/protocol-sheet.ts';
import { flagOf, siOf } from '../../read/values.ts';

import { flagsOf, type SetupRows, type TestRows } from './reading-rows.ts';

type SetupOnPaper = Omit<ProtocolSetup, 'stand'>;

/** The rows as they stand, as a protocol to print: what to hang, where to read, how far the tip should drop. */
export function protocolOfRows(
  setups: readonly SetupRows[],
  tables: BlankTables,
  thirdLoadKg: number,
): NamedProtocol {
  const planned = setups.flatMap((rows, index) => {
    const setup = setupOfRows(rows, tables);
    return setup ? [{ name: setupName(rows.setup, index), ...setup }] : [];
  });
  return { kind: 'twenty-minute', setups: planned, readingCount: countReadings(planned), thirdLoadKg };
}

/** Undefined without the place of the clamp. */
export function setupOfRows(rows: SetupRows, tables: BlankTables): SetupOnPaper | undefined {
  const clampFromTipM = siOf(rows.setup, 'clampFromTip');
  if (clampFromTipM === undefined || !(clampFromTipM > 0)) return undefined;
  const loads = rows.tests.map((test, index) => ({
    massKg: siOf(test.test, 'hung') ?? 0,
    expectedTipDropM: predictedTipDrop(tables, { clampFromTipM, massKg: siOf(test.test, 'hung') ?? 0 }),
    readFromTipM: test.readings.flatMap((row) => siOf(row, 'fromTip') ?? []),
    readAtClamp: test.readings.some((row) => flagOf(row, 'atClamp')),
    repeat: isRepeat(rows.tests, index),
  }));
  const tipDropM = Math.max(0, ...loads.map(({ expectedTipDropM }) => expectedTipDropM));
  return {
    clampFromTipM,
    flagsFromTipM: flagsOf(rows),
    loads,
    clampHeightNeededM: clampHeightNeeded({ ...placeOf(rows, clampFromTipM), tipDropM }),
  };
}

/** Why the weight would touch the floor, where the height of the clamp was given. */
export function floorTrouble(rows: SetupRows, planned: SetupOnPaper): Finding | undefined {
  const clampHeightM = siOf(rows.setup, 'clampHeight');
  if (clampHeightM === undefined) return undefined;
  const tipDropM = Math.max(0, ...planned.loads.map(({ expectedTipDropM }) => expectedTipDropM));
  const path = `setups/${rows.setup.id}/clampHeight`;
  return checkFloor({ path, clampHeightM, ...placeOf(rows, planned.clampFromTipM), tipDropM })[0];
}

function placeOf({ setup }: SetupRows, clampFromTipM: number) {
  return { nominalAngleRad: siOf(setup, 'nominalAngle') ?? 0, freeLengthM: clampFromTipM };
}

/** The same weight as one hung before. */
function isRepeat(tests: readonly TestRows[], index: number): boolean {
  const hung = siOf(tests[index].test, 'hung');
  return tests.slice(0, index).some(({ test }) => siOf(test, 'hung') === hung);
}
