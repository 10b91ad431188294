import { describe, expect, it } from 'vitest';
import { seededRandom } from '../numerics/seeded-random.ts';
import { type GuideField, placeGuide, stepGuide } from './guide-moves.ts';

const field: GuideField = {
  fromTipM: [0.1, 0.25, 0.42, 0.8],
  footM: [1 / 64, 1 / 64, 1 / 64, 1 / 32],
  keepOut: [{ fromTipM: 0.5, toTipM: 0.5625 }],
  pinned: [false, false, false, false],
  room: { fromTipM: 0.02, toTipM: 1 },
  leastIntervalM: 0.05,
};

/** Places of a running guide with its foot against the ferrule's zone. */
const near = 0.5 - 1 / 128;
const far = 0.5625 + 1 / 128;

describe('placing a guide', () => {
  it('goes where it is asked to where nothing is in the way', () => {
    expect(placeGuide(field, 1, 0.3)).toEqual({ fromTipM: 0.3 });
  });
  it('never crosses a neighbour, and names it', () => {
    expect(placeGuide(field, 1, 0.9)).toEqual({
      fromTipM: 0.42 - 0.05,
      stop: { by: 'neighbour', guide: 2 },
    });
    expect(placeGuide(field, 1, 0)).toMatchObject({ stop: { by: 'neighbour', guide: 0 } });
  });
  it('keeps its whole foot off a ferrule, and jumps to the far side past the middle', () => {
    expect(placeGuide(field, 2, 0.52)).toMatchObject({ fromTipM: near, stop: { by: 'ferrule', joint: 0 } });
    expect(placeGuide(field, 2, 0.54)).toMatchObject({ fromTipM: far, stop: { by: 'ferrule', joint: 0 } });
    expect(placeGuide(field, 2, 0.6)).toEqual({ fromTipM: 0.6 });
  });
  it('stays where it is pinned', () => {
    const pinned = { ...field, pinned: [false, true, false, false] };
    expect(placeGuide(pinned, 1, 0.3)).toEqual({ fromTipM: 0.25, stop: { by: 'pin' } });
  });
  it('stops at the ends of the room', () => {
    expect(placeGuide(field, 0, -1)).toEqual({ fromTipM: 0.02, stop: { by: 'end', end: 'tip' } });
    expect(placeGuide(field, 3, 2)).toEqual({ fromTipM: 1, stop: { by: 'end', end: 'grip' } });
  });
  it('from anywhere to anywhere, keeps order, distance and ferrules', () => {
    const random = seededRandom(7);
    const fromTipM = [...field.fromTipM];
    for (let i = 0; i < 2000; i++) {
      const guide = Math.floor(random() * 4);
      const asked = random() * 1.2 - 0.1;
      fromTipM[guide] = placeGuide({ ...field, fromTipM }, guide, asked).fromTipM;
      for (let k = 1; k < 4; k++) expect(fromTipM[k] - fromTipM[k - 1]).toBeGreaterThanOrEqual(0.05 - 1e-12);
      fromTipM.forEach((at, k) => {
        const half = field.footM[k] / 2;
        expect(at + half <= 0.5 + 1e-12 || at - half >= 0.5625 - 1e-12).toBe(true);
      });
    }
  });
});

describe('stepping a guide by key', () => {
  it('stops at the near edge of a ferrule, and steps over at the second try', () => {
    const at = { ...field, fromTipM: [0.1, 0.25, 0.492, 0.8] };
    expect(stepGuide(at, 2, 0.001, false)).toMatchObject({ fromTipM: near, stop: { by: 'ferrule' } });
    const edge = { ...field, fromTipM: [0.1, 0.25, near, 0.8] };
    expect(stepGuide(edge, 2, 0.001, true).fromTipM).toBe(far);
    const back = { ...field, fromTipM: [0.1, 0.25, far, 0.8] };
    expect(stepGuide(back, 2, -0.001, false)).toMatchObject({ fromTipM: far, stop: { by: 'ferrule' } });
    expect(stepGuide(back, 2, -0.001, true)).toEqual({ fromTipM: near });
  });
  it('does not leap over a ferrule in one long step', () => {
    const at = { ...field, fromTipM: [0.1, 0.25, 0.48, 0.8] };
    expect(stepGuide(at, 2, 0.15, false)).toMatchObject({ fromTipM: near, stop: { by: 'ferrule' } });
  });
  it('does not step over onto a neighbour', () => {
    const tight = { ...field, fromTipM: [0.1, 0.25, near, 0.6] };
    expect(stepGuide(tight, 2, 0.001, true)).toMatchObject({ fromTipM: near, stop: { by: 'ferrule' } });
  });
});
