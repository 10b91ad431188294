import { expect, test } from 'vitest';
import { flyGuides, inchM, nineFootFive, smoothRod } from '../../../test/rods/invented-rods.ts';
import { layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';

const sound: LayoutRequest = {
  rod: smoothRod(nineFootFive),
  buttAngleRad: 0.7,
  ...flyGuides(10),
  firstFromTipM: 4.5 * inchM,
  strippingFromTipM: 78 * inchM,
};
const cases: { what: string; change: Partial<LayoutRequest>; path: string; code: string; values?: object }[] =
  [
    { what: 'an empty ladder', change: { ladder: [] }, path: 'ladder', code: 'layout/no-load' },
    {
      what: 'a negative pull',
      change: { ladder: [{ tensionN: -1, pullAngleRad: 0 }] },
      path: 'ladder[0]',
      code: 'layout/load-senseless',
      values: { tensionN: -1 },
    },
    {
      what: 'a limit of 0',
      change: { limits: { gapM: 0 } },
      path: 'limits.gapM',
      code: 'input/out-of-range',
      values: { value: 0, over: 0 },
    },
    {
      what: 'one height too few',
      change: { guides: { ...sound.guides, ringHeightsM: sound.guides.ringHeightsM.slice(1) } },
      path: 'guides.ringHeightsM',
      code: 'input/one-for-each',
      values: { given: 9, wanted: 10 },
    },
    {
      what: 'half a guide',
      change: { guides: { ...sound.guides, count: 9.5 } },
      path: 'guides.count',
      code: 'input/out-of-range',
      values: { value: 9.5, low: 2, whole: true },
    },
    {
      what: 'too many guides for the room',
      change: { ...flyGuides(10), strippingFromTipM: 0.5 },
      path: 'guides.count',
      code: 'layout/guides-need-room',
      values: { count: 10, needM: expect.closeTo(0.45, 9) },
    },
    {
      what: 'feet too long for the room',
      change: { footM: new Array(10).fill(0.25) },
      path: 'guides.count',
      code: 'layout/guides-need-room',
      values: { count: 10, needM: expect.closeTo(2.25, 9) },
    },
    {
      what: 'a stripping guide behind the clamp',
      change: { strippingFromTipM: 3 },
      path: 'strippingFromTipM',
      code: 'layout/stripping-place',
      values: { strippingM: 3 },
    },
    {
      what: 'a zone turned round',
      change: { keepOut: [{ fromTipM: 0.7, toTipM: 0.6 }] },
      path: 'keepOut[0]',
      code: 'layout/zone-ends',
      values: { zoneFromM: 0.7, zoneToM: 0.6 },
    },
    {
      what: 'a held guide in a zone',
      change: { keepOut: [{ fromTipM: 1.9, toTipM: 2 }] },
      path: 'strippingFromTipM',
      code: 'layout/held-in-zone',
      values: { guide: 10, tipSideM: 1.9, buttSideM: 2 },
    },
    {
      what: 'a zone that leaves no room',
      change: { keepOut: [{ fromTipM: 0.12, toTipM: 1.9 }] },
      path: 'keepOut',
      code: 'layout/no-clear-place',
      values: { count: 10, freeHelps: false },
    },
    {
      what: 'a zone that growing intervals cannot pass',
      change: { ...flyGuides(5), keepOut: [{ fromTipM: 0.13, toTipM: 0.9 }] },
      path: 'keepOut',
      code: 'layout/no-clear-place',
      values: { count: 5, freeHelps: true },
    },
    {
      what: 'two pins for one guide',
      change: {
        pinned: [
          { index: 3, fromTipM: 0.5 },
          { index: 3, fromTipM: 0.6 },
        ],
      },
      path: 'pinned[1]',
      code: 'layout/held-twice',
      values: { guide: 4, fromTipM: 0.6, otherM: 0.5 },
    },
    {
      what: 'pins in the wrong order',
      change: {
        pinned: [
          { index: 3, fromTipM: 0.8 },
          { index: 5, fromTipM: 0.6 },
        ],
      },
      path: 'pinned[0].fromTipM',
      code: 'layout/held-too-close',
      values: { guide: 4, next: 6, needM: 0.1 },
    },
    {
      what: 'pins that make intervals shrink',
      change: { pinned: [{ index: 2, fromTipM: 1.2 }] },
      path: 'pinned',
      code: 'layout/held-cannot-grow',
    },
    {
      what: 'a typing slip in the start',
      change: { start: { fromTipM: [0.1, 0.2, 0.3, 0.4, 5, 0.6, 0.7, 0.8, 0.9, 1] } },
      path: 'start.fromTipM[4]',
      code: 'layout/start-order',
      values: { guide: 5, fromTipM: 5 },
    },
    {
      what: 'a blank too soft for the default ladder',
      change: {
        rod: {
          lengthM: 2.5,
          stiffness: [{ fromTipM: 0, EINm2: 0.01 }],
          massPerLength: [{ fromTipM: 0, kgPerM: 0.2 }],
        },
      },
      path: 'ladder',
      code: 'layout/no-usual-loads',
      values: { lengthM: 2.5 },
    },
  ];

test.each(cases)('$what is refused at its field', ({ change, path, code, values = {} }) => {
  const answer = layout({ ...sound, ...change });
  expect(answer.status).toBe('refused');
  expect(answer.findings[0]).toMatchObject({ path, code, values });
});

test('the same request without the mistake is answered', () => {
  expect(layout(sound).status).toBe('converged');
});
