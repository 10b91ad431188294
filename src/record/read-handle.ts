import type { HandleParts } from '../engine/handle/handle-parts.ts';
import type { DocumentState } from './operation.ts';
import { readSingle } from './read-values.ts';

/** The handle's parts; `gripFrontM` is what the bench assumes where it was not measured. */
export function readHandleParts(state: DocumentState, gripFrontM: number): HandleParts {
  const row = readSingle(state, 'handle');
  return {
    gripFrontM: row.si('gripFront') ?? gripFrontM,
    gripLengthM: row.si('gripLength'),
    gripBoreM: row.si('gripBore'),
    seatLengthM: row.si('seatLength'),
    rearGripLengthM: row.si('rearGripLength'),
    rearGripBoreM: row.si('rearGripBore'),
    secondGripLengthM: row.si('secondGripLength'),
    gripDiameterM: row.orUsual('gripDiameter'),
    seatBoreM: row.si('seatBore'),
    fightingButtM: row.si('fightingButt'),
    arborCount: row.orUsual('arborCount'),
    arborWidthM: row.orUsual('arborWidth'),
    glueLineM: row.orUsual('glueLine'),
    reamShortM: row.orUsual('reamShort'),
    arborShortM: row.orUsual('arborShort'),
    tapedGapM: row.orUsual('tapedGap'),
    checkRoomM: {
      least: row.orUsual('checkLeast'),
      most: row.orUsual('checkMost'),
    },
    tubeRoomM: {
      least: row.orUsual('tubeLeast'),
      most: row.orUsual('tubeMost'),
    },
    keeperAheadM: row.si('keeperAhead'),
    reachM: row.si('reach'),
  };
}
