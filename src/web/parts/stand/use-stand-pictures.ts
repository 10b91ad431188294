import { useMemo } from 'react';
import type { BlankTables } from '../../../engine/bench/free-rod.ts';
import { strainLevels } from '../../../engine/bench/strain.ts';
import type { Finding } from '../../../engine/finding.ts';
import { expectedShape, type ShapePoint } from '../../../engine/flow/expected-reading.ts';
import { type PictureLoads, pictureLoads } from '../../../engine/flow/picture-loads.ts';
import type { LoadPhoto } from '../../../record/read-load-photo.ts';
import type { LoadTest, Stand } from '../../../record/read-load-tests.ts';
import { useBench } from '../../read/bench.tsx';
import { tablesOf } from '../../read/tables-of.ts';

export interface StandPicture {
  /** From 1, as they are taken. */
  number: number;
  test: LoadTest;
  /** The newest. */
  photo: LoadPhoto | undefined;
  /** Its curve stands. */
  isRead: boolean;
  /** What hung, or is proposed to hang. */
  hungKg: number | undefined;
  proposedKg: number | undefined;
  /** What is odd about it beside the others. */
  findings: readonly Finding[];
}
export interface StandPictures {
  pictures: StandPicture[];
  /** The first that is not read yet; undefined when all are. */
  now: StandPicture | undefined;
  clampHeightNeededM: number | undefined;
}

export function useStandPictures(stand: Stand): StandPictures {
  const { stiffness } = useBench();
  const loads = usePictureLoads(stand);
  return useMemo(() => {
    const pictures = stand.tests.map((test, i): StandPicture => {
      const photo = test.photos.at(-1);
      const proposedKg = loads?.massKg[i];
      return {
        number: i + 1,
        test,
        photo,
        isRead: photo?.trace !== undefined && !photo.trace.outOfDate,
        hungKg: test.hungKg ?? proposedKg,
        proposedKg,
        findings: stiffness.findings.filter(({ path }) => path.startsWith(`loadTests/${test.id}/`)),
      };
    });
    return {
      pictures,
      now: pictures.find(({ isRead }) => !isRead),
      clampHeightNeededM: loads?.clampHeightNeededM,
    };
  }, [stand, loads, stiffness.findings]);
}

/** The blank as it is best known, and where it is held. */
function useHeld({ heldFromTipM }: Stand): { tables: BlankTables; clampFromTipM: number } | undefined {
  const { bench, blank, profile, stiffness } = useBench();
  const material = bench?.material ?? 'unknown';
  return useMemo(() => {
    const tables = tablesOf(stiffness.solved, profile, material);
    if (!tables || !blank) return undefined;
    return { tables, clampFromTipM: Math.min(blank.lengthM, heldFromTipM ?? blank.lengthM) };
  }, [stiffness.solved, profile, material, blank, heldFromTipM]);
}

function usePictureLoads(stand: Stand): PictureLoads | undefined {
  const { bench, profile } = useBench();
  const held = useHeld(stand);
  const { buttAngleRad } = stand;
  return useMemo(() => {
    if (!held || !bench) return undefined;
    const { cautionPercent } = strainLevels(bench);
    return pictureLoads({ ...held, profile, buttAngleRad, cautionPercent });
  }, [held, bench, profile, buttAngleRad]);
}

/** The blank as it should hang in the picture. */
export function useHangingShape(stand: Stand, massKg: number | undefined): ShapePoint[] | undefined {
  const { profile } = useBench();
  const held = useHeld(stand);
  const { buttAngleRad: nominalAngleRad } = stand;
  return useMemo(() => {
    if (!held || massKg === undefined) return undefined;
    return expectedShape({ ...held, profile, nominalAngleRad, massKg, edge: 'axis' });
  }, [held, profile, nominalAngleRad, massKg]);
}
