import type { Change } from '../../src/record/operation.ts';
import type { FieldValue } from '../../src/record/schema.ts';

const inches = (value: number) => ({ si: value * 0.0254, text: `${value} in` });
const mm = (value: number) => ({ si: value / 1000, text: `${value} mm` });
const grams = (value: number) => ({ si: value / 1000, text: `${value} g` });

/** An invented 7 ft 6 in two-piece with its bench read and its guides placed. */
export function twoPieceChanges(): Change[] {
  return [
    ...row('about', '-', { title: 'Invented two-piece', rodKind: 'fly', lineWeight: '4' }),
    ...section('top', 0, { name: 'tip', joint: 'sleeve', overlap: inches(2), mass: grams(9) }, [1.6, 3, 4.6]),
    ...section('low', 1, { name: 'butt', mass: grams(22) }, [4.5, 6.1, 7.6]),
    ...row('handle', '-', { gripFront: inches(9.25), reelFromButt: inches(3), reelOffset: inches(2) }),
    ...row('setups', 's1', { order: 0, name: 'Whole blank level', kind: 'clamp', clampFromTip: inches(84) }),
    ...row('tests', 't1', { order: 0, setup: 's1', hung: grams(0), hungFromTip: inches(0) }),
    ...row('readings', 'r1', { order: 0, test: 't1', fromTip: inches(0), drop: mm(40) }),
    ...row('tests', 't2', { order: 1, setup: 's1', hung: grams(60), hungFromTip: inches(0) }),
    ...[900, 540, 230, 60].flatMap((drop, index) =>
      row('readings', `q${index}`, {
        order: index,
        test: 't2',
        fromTip: inches(index * 18),
        drop: mm(drop),
      }),
    ),
    ...[4, 11, 20, 31, 45, 60].flatMap((station, index) =>
      row('guides', `g${index}`, {
        order: index,
        kind: index === 5 ? 'stripping' : 'snake',
        station: inches(station),
      }),
    ),
  ];
}

function section(
  id: string,
  order: number,
  fields: Record<string, FieldValue>,
  diametersMm: number[],
): Change[] {
  return [
    ...row('sections', id, { order, length: inches(46), ...fields }),
    ...diametersMm.flatMap((outside, index) =>
      row('diameters', `${id}-d${index}`, {
        section: id,
        fromOwnTip: inches(index * 23),
        outside: mm(outside),
      }),
    ),
  ];
}

function row(collection: string, id: string, fields: Record<string, FieldValue>): Change[] {
  return Object.entries(fields).map(([field, value]) => ({ path: [collection, id, field], value }));
}
