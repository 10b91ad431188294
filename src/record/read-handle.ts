import { type HandleParts, handleDefaults } from '../engine/handle/handle-parts.ts';
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
    seatBoreM: row.si('seatBore'),
    fightingButtM: row.si('fightingButt'),
    arborCount: row.number('arborCount') ?? handleDefaults.arborCount,
    arborWidthM: row.si('arborWidth') ?? handleDefaults.arborWidthM,
    glueLineM: row.si('glueLine') ?? handleDefaults.glueLineM,
    reamShortM: row.si('reamShort') ?? handleDefaults.reamShortM,
    arborShortM: row.si('arborShort') ?? handleDefaults.arborShortM,
    tapedGapM: row.si('tapedGap') ?? handleDefaults.tapedGapM,
    checkRoomM: {
      least: row.si('checkLeast') ?? handleDefaults.checkRoomM.least,
      most: row.si('checkMost') ?? handleDefaults.checkRoomM.most,
    },
    tubeRoomM: {
      least: row.si('tubeLeast') ?? handleDefaults.tubeRoomM.least,
      most: row.si('tubeMost') ?? handleDefaults.tubeRoomM.most,
    },
    keeperAheadM: row.si('keeperAhead'),
    reachM: row.si('reach'),
  };
}
