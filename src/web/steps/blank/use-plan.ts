import { useMemo } from 'react';
import type { BlankTables } from '../../../engine/bench/free-rod.ts';
import { type Protocol, type ProtocolKind, planProtocol } from '../../../engine/bench/protocol.ts';
import { predictedTipDrop } from '../../../engine/bend/predicted-tip-drop.ts';
import { useBench } from '../../read/bench.tsx';
import { tablesOf } from '../../read/tables-of.ts';

export interface Plan {
  protocol(kind: ProtocolKind, clampHeightM?: number): Protocol;
  /** The weight that drops the tip by a third of the length in front of the clamp. */
  thirdLoadKg: number;
  /** The blank as it is best known. */
  tables: BlankTables;
  /** Whether something was hung on it, or its diameters stand in. */
  measured: boolean;
}

/** What to hang on this blank and where; undefined until its sections and a diameter are known. */
export function usePlan(): Plan | undefined {
  const { blank, profile, bench, stiffness } = useBench();
  const { solved } = stiffness;
  const material = bench?.material ?? 'unknown';
  return useMemo(() => {
    const tables = tablesOf(solved, profile, material);
    if (!blank || !tables) return undefined;
    const protocol = (kind: ProtocolKind, clampHeightM?: number) =>
      planProtocol({
        kind,
        blankLengthM: blank.lengthM,
        clampHeightM,
        tipDropM: (loaded) => predictedTipDrop(tables, loaded),
      });
    return {
      protocol,
      thirdLoadKg: protocol('ten-minute').thirdLoadKg,
      tables,
      measured: solved !== undefined,
    };
  }, [blank, profile, material, solved]);
}
