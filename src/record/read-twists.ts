import type { BenchTwist } from '../engine/bench/bench.ts';
import type { DocumentState } from './operation.ts';
import { readRows, readSingle } from './read-values.ts';

/** What is known of the blank in twist; a reading counts once weight, arm and both angles are there. */
export function readTwist(state: DocumentState): BenchTwist {
  const place = readSingle(state, 'twistTest');
  const readings = readRows(state, 'twists').flatMap((row) => {
    const [massKg, armM] = [row.si('hung'), row.si('arm')];
    const [leftRad, rightRad] = [row.si('left'), row.si('right')];
    if (massKg === undefined || armM === undefined || leftRad === undefined || rightRad === undefined)
      return [];
    return [{ id: row.id, massKg, armM, leftRad, rightRad }];
  });
  return {
    share: readSingle(state, 'blank').number('twistShare'),
    ...(readings.length > 0
      ? {
          test: {
            barFromTipM: place.orUsual('barFromTip'),
            clampFromTipM: place.si('clampFromTip'),
            readings,
          },
        }
      : {}),
  };
}
