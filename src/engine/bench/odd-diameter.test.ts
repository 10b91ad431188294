/** Blanks of both simulators (test/support), one diameter spoilt by a millimetre. */

import { describe, expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { randomBlank, readBench } from '../../../test/support/simulated-bench.ts';
import { readUnlikeBench } from '../../../test/support/unlike-bench.ts';
import { unlikeBlank } from '../../../test/support/unlike-blanks.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import type { FitBlank } from '../stiffness/request.ts';
import { assembleBlank } from './assemble.ts';
import { checkDiameters } from './check-diameters.ts';
import { oddDiameter } from './odd-diameter.ts';
import { fourPiece } from './test-bench.ts';

function oddOf({ diameters = [], stiffZones = [], lengthM }: FitBlank) {
  const joints = stiffZones.map(({ fromTipM, toTipM }) => (fromTipM + toTipM) / 2);
  return oddDiameter(diameters, joints, lengthM);
}

const blanks = Array.from({ length: 30 }, (_, k) => [
  readUnlikeBench(unlikeBlank(3001 + k), 'none', 3001 + k).request.blank,
  readBench(randomBlank(3001 + k, { sweepSigmaPerM: 0 }), [], k, 0).request.blank,
]).flat();

describe('sixty simulated blanks', () => {
  test('one diameter a millimetre off is named on five of six', () => {
    let named = 0;
    blanks.forEach((blank, k) => {
      const random = seededRandom(k);
      const rows = blank.diameters ?? [];
      const at = Math.floor(random() * rows.length);
      const byM = random() < 0.5 && rows[at].outsideM > 0.0018 ? -0.001 : 0.001;
      const diameters = rows.map((row, i) => (i === at ? { ...row, outsideM: row.outsideM + byM } : row));
      if (oddOf({ ...blank, diameters })?.index === at) named++;
    });
    expect(named).toBeGreaterThanOrEqual(50);
  });

  test('as measured, hardly one raises an alarm', () => {
    expect(blanks.filter((blank) => oddOf(blank)).length).toBeLessThanOrEqual(1);
  });
});

test('three diameters say nothing of each other', () => {
  const rows = [0, 1, 2].map((fromTipM) => ({ fromTipM, outsideM: 0.002 + 0.01 * (fromTipM % 2) }));
  expect(oddDiameter(rows, [], 2)).toBeUndefined();
});

describe("the bench's check", () => {
  const checked = (change: (bench: ReturnType<typeof fourPiece>) => void) => {
    const bench = fourPiece();
    change(bench);
    return checkDiameters(bench, assembleBlank(bench.sections));
  };

  test('names a spigot whose two sides differ by a millimetre, and not a sleeve of half', () => {
    const sides = (kind: 'spigot' | 'sleeve', lowerM: number) =>
      checked(({ sections: [upper, lower] }) => {
        upper.joint = { kind, overlapM: kind === 'spigot' ? 0 : 0.025, gapM: 0, plugM: 0 };
        upper.diameters[1].outsideM = 0.00706;
        lower.diameters = [{ id: 'l', fromOwnTipM: 0.03, outsideM: lowerM }];
      }).filter((one) => {
        const message = inWords(one);
        return message.startsWith('At the ');
      });
    expect(sides('spigot', 0.00606).map(({ path }) => path)).toEqual(['diameters/l/outside']);
    expect(sides('spigot', 0.0069)).toEqual([]);
    expect(sides('sleeve', 0.0065)).toEqual([]);
    expect(sides('sleeve', 0.00606)).toHaveLength(1);
  });

  test('names what the whole blank contradicts at its row, with what the others say', () => {
    const found = checked(({ sections: [, second] }) => {
      second.diameters[1].outsideM += 0.001;
    });
    expect(found.map(({ path }) => path)).toEqual(['diameters/b1/outside']);
    expect(inWords(found[0])).toMatch(/the other diameters say about/);
    expect(checked(() => undefined)).toEqual([]);
  });
});
