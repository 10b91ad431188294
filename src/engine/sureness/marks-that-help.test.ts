import { describe, expect, test } from 'vitest';
import { flyGuides, inchM, irregularRod, nineFootFive } from '../../../test/rods/invented-rods.ts';
import type { BlankTables } from '../bench/free-rod.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { HowRead } from '../stiffness/how-read.ts';
import { marksThatHelp } from './marks-that-help.ts';

/** On one blank the placed marks are better; on the other the start is, for it was placed on that one. */
const [likely, other] = [3, 8].map((seed) => irregularRod(nineFootFive, seed));

function asked(rod: LayoutRequest['rod'], start?: LayoutRequest['start']): LayoutRequest {
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    ...flyGuides(9),
    firstFromTipM: 4 * inchM,
    strippingFromTipM: 77 * inchM,
    start,
  };
}
const placed = (request: LayoutRequest) => (layout(request) as LayoutFound).fromTipM;
const tables = ({ stiffness, massPerLength = [] }: LayoutRequest['rod']): BlankTables => ({
  stiffness,
  massPerLength,
});
const request = asked(likely, { fromTipM: placed(asked(other)) });

function answered(better: number, worse: number, howRead: HowRead) {
  const blanks = [...Array(better).fill(tables(likely)), ...Array(worse).fill(tables(other))];
  const answer = marksThatHelp(request, { howRead, blanks });
  if (!('moved' in answer)) throw new Error('the request was refused');
  return answer;
}

describe('marks move', () => {
  test.each([
    [39, 1, 'one-hold'],
    [19, 1, 'more'],
  ] as const)(
    'where the placed ones beat the start on %i blanks and not on %i, read from %s',
    (better, worse, how) => {
      const { layout: found, moved, counts, insteadFromTipM } = answered(better, worse, how);
      expect(counts).toEqual({ better, worse, of: better + worse });
      expect(moved).toBe(true);
      expect(insteadFromTipM).toBeUndefined();
      expect(found.fromTipM).toEqual(placed(request));
      expect(found.verdict.startKept).toBeUndefined();
    },
  );

  test.each([
    [18, 2, 'one-hold', 87],
    [0, 20, 'one-hold', 87],
    [15, 5, 'more', 80],
  ] as const)(
    'and not where they do on %i and lose over 3 %% on %i, read from %s',
    (better, worse, how, wanted) => {
      const { layout: found, moved, insteadFromTipM } = answered(better, worse, how);
      expect(moved).toBe(false);
      expect(found.fromTipM).toEqual(request.start?.fromTipM);
      expect(found.verdict.startKept).toMatchObject({ better, wanted });
      // what the next reading may settle
      expect(insteadFromTipM).toEqual(placed(request));
      expect(found.findings.find(({ code }) => code === 'layout/start-stays')?.values).toEqual({
        better,
        worse,
        of: better + worse,
        wanted,
        oneHold: how === 'one-hold',
      });
    },
  );

  test('and not where nothing was read', () => {
    const { layout: found, moved, insteadFromTipM } = answered(0, 0, 'nothing');
    expect(moved).toBe(false);
    expect(found.fromTipM).toEqual(request.start?.fromTipM);
    expect(found.verdict.startKept).toBe('unread');
    expect(insteadFromTipM).toBeUndefined();
  });
});
