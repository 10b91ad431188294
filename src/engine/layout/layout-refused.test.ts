import { expect, test } from 'vitest';
import { flyGuides, inchM, nineFootFive, smoothRod } from '../../../test/rods/invented-rods.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';

const sound: LayoutRequest = {
  rod: smoothRod(nineFootFive),
  buttAngleRad: 0.7,
  ...flyGuides(10),
  firstFromTipM: 4.5 * inchM,
  strippingFromTipM: 78 * inchM,
};
const cases: { what: string; change: Partial<LayoutRequest>; path: string; says: string }[] = [
  { what: 'an empty ladder', change: { ladder: [] }, path: 'ladder', says: 'at least one' },
  {
    what: 'a negative pull',
    change: { ladder: [{ tensionN: -1, pullAngleRad: 0 }] },
    path: 'ladder[0]',
    says: 'tension -1 N',
  },
  { what: 'a limit of 0', change: { limits: { gapM: 0 } }, path: 'limits.gapM', says: 'above 0' },
  {
    what: 'one height too few',
    change: { guides: { ...sound.guides, ringHeightsM: sound.guides.ringHeightsM.slice(1) } },
    path: 'guides.ringHeightsM',
    says: '9 values for 10 guides',
  },
  {
    what: 'half a guide',
    change: { guides: { ...sound.guides, count: 9.5 } },
    path: 'guides.count',
    says: '9.5',
  },
  {
    what: 'too many guides for the room',
    change: { ...flyGuides(10), strippingFromTipM: 0.5 },
    path: 'guides.count',
    says: '10 guides need 0.45 m',
  },
  {
    what: 'feet too long for the room',
    change: { footM: new Array(10).fill(0.25) },
    path: 'guides.count',
    says: '10 guides need 2.25 m',
  },
  {
    what: 'a stripping guide behind the clamp',
    change: { strippingFromTipM: 3 },
    path: 'strippingFromTipM',
    says: 'in front of the clamp',
  },
  {
    what: 'a zone turned round',
    change: { keepOut: [{ fromTipM: 0.7, toTipM: 0.6 }] },
    path: 'keepOut[0]',
    says: 'nearer the tip first',
  },
  {
    what: 'a held guide in a zone',
    change: { keepOut: [{ fromTipM: 1.9, toTipM: 2 }] },
    path: 'strippingFromTipM',
    says: 'move it to 1.9 m or 2 m',
  },
  {
    what: 'a zone that leaves no room',
    change: { keepOut: [{ fromTipM: 0.12, toTipM: 1.9 }] },
    path: 'keepOut',
    says: 'narrow a zone',
  },
  {
    what: 'a zone that growing intervals cannot pass',
    change: { ...flyGuides(5), keepOut: [{ fromTipM: 0.13, toTipM: 0.9 }] },
    path: 'keepOut',
    says: 'ask for free intervals',
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
    says: 'at 0.6 m and at 0.5 m',
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
    says: 'move one of the held marks',
  },
  {
    what: 'pins that make intervals shrink',
    change: { pinned: [{ index: 2, fromTipM: 1.2 }] },
    path: 'pinned',
    says: 'cannot grow',
  },
  {
    what: 'a typing slip in the start',
    change: { start: { fromTipM: [0.1, 0.2, 0.3, 0.4, 5, 0.6, 0.7, 0.8, 0.9, 1] } },
    path: 'start.fromTipM[4]',
    says: 'guide 5 at 5 m',
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
    says: 'give the loads',
  },
];

test.each(cases)('$what is refused at its field', ({ change, path, says }) => {
  const answer = layout({ ...sound, ...change });
  expect(answer.status).toBe('refused');
  expect(answer.findings[0].path).toBe(path);
  expect(inWords(answer.findings[0])).toContain(says);
});

test('the same request without the mistake is answered', () => {
  expect(layout(sound).status).toBe('converged');
});
