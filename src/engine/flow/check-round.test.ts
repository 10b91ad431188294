import { expect, test } from 'vitest';
import { sentenceOf } from '../../words/sentence.ts';
import { shopWriter } from '../../words/writer.ts';
import { typicalGuide } from '../kinds/guides.ts';
import { checkRound } from './check-round.ts';

const spiral = { by: 'right', onTop: 1, transitions: 2 } as const;
const guide = (id: string, fromTopRad?: number) => ({
  ...typicalGuide('ringed', '8')!,
  id,
  pinned: false,
  fromTopRad,
});
const guides = [guide('a'), guide('b'), guide('c'), guide('d')];
const marks = [0.3, 0.5, 0.7, 0.9];
const zone = (fromTipM: number, toTipM: number) => ({ joint: 0, fromTipM, toTipM }) as never;
const codes = (found: ReturnType<typeof checkRound>) => found.map(({ code, path }) => `${code} ${path}`);

test('a spiral as proposed, clear of ferrules, is nothing to speak of; nor are guides on one line', () => {
  expect(checkRound({ spiral, guides }, marks, [zone(0.55, 0.65)])).toEqual([]);
  expect(checkRound({ guides: [guide('a', 1), guide('b', 2)] }, [0.3, 0.31], [zone(0.2, 0.4)])).toEqual([]);
});

test('the first guide that turns, on a ferrule, is named; one farther on is the marks’ affair', () => {
  expect(codes(checkRound({ spiral, guides }, marks, [zone(0.68, 0.74)]))).toEqual([
    'round/starts-on-ferrule guides/c/around',
  ]);
  expect(checkRound({ spiral, guides }, marks, [zone(0.48, 0.54)])).toEqual([]);
});

test('feet that overlap after a turn are named, and how far apart they must be', () => {
  const [found] = checkRound({ spiral, guides }, [0.3, 0.5, 0.515, 0.9], []);
  expect(found.code).toBe('round/feet-overlap');
  expect(found.values).toMatchObject({ guide: 2, next: 3, needM: guides[0].lengthM });
  // on one line the marks' own rules see to it
  expect(checkRound({ spiral, guides: [guide('x'), ...guides] }, [0.29, 0.3, 0.5, 0.7, 0.9], [])).toEqual([]);
});

test('each is said with the values and the remedy', () => {
  const said = (at: readonly number[], zones: Parameters<typeof checkRound>[2]) =>
    sentenceOf(checkRound({ spiral, guides }, at, zones)[0], shopWriter({ system: 'mm' }));
  expect(said(marks, [zone(0.68, 0.74)])).toMatch(
    /starts on a ferrule: guide 3, where 680 mm to 740 mm .*Move the guide, or start one guide nearer the tip/,
  );
  expect(said([0.3, 0.5, 0.515, 0.9], [])).toMatch(/^Guides 2 and 3 are 15 mm apart; .*Move one of them/);
});

test('a guide that turns the line back is named with how far it must go', () => {
  const back = [guide('a'), guide('b', 0.5), guide('c', 1), guide('d')];
  const [found] = checkRound({ spiral, guides: back }, marks, []);
  expect([found.code, found.path]).toEqual(['round/turns-back', 'guides/b/around']);
  expect(found.values).toMatchObject({ guide: 2, atRad: 0.5, nextRad: 1 });
});
