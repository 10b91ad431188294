import type { SortedBag } from '../engine/guides/bag-sorting.ts';
import { sentenceOf } from '../words/sentence.ts';
import type { Writer } from '../words/writer.ts';
import { type Sheet, text } from './drawing.ts';
import { marginMm, type PaperName, standingPaper } from './paper-size.ts';
import { drawTable } from './table.ts';

/** The rack on one page: which guide of the bag lies at which place, what goes back, and what to look at on each. */
export function rackSheet(
  sorted: SortedBag,
  numberOf: (bagId: string) => number,
  { paper, stamp, writer }: { paper: PaperName; stamp: string; writer: Writer },
): Sheet {
  const size = standingPaper[paper];
  const rows = sorted.places.map(({ guide, size: of, bagId }) => [
    `${guide}`,
    of,
    bagId === undefined ? 'order one' : `${numberOf(bagId)}`,
    '',
  ]);
  const tableMm = marginMm + 14;
  const rowMm = Math.min(9, (size.heightMm - marginMm - tableMm - 40) / (rows.length + 1));
  const belowMm = tableMm + (rows.length + 1) * rowMm + 8;
  const back = sorted.rejects.map(
    ({ guide, reason }) => `${numberOf(guide.id)} (${guide.size}): ${sentenceOf(reason, writer)}`,
  );
  const room = Math.floor((size.heightMm - marginMm - belowMm - 6) / 5);
  const listed =
    back.length <= room ? back : [...back.slice(0, room - 1), `and ${back.length - room + 1} more`];
  return {
    title: 'Rack',
    pages: [
      {
        ...size,
        marks: [
          text(marginMm, marginMm + 3, `Rack · ${stamp}`, { bold: true }),
          text(
            marginMm,
            marginMm + 9,
            'Look at each: plating, twist, ring, ramp of the foot, flat underside, no burr.',
          ),
          ...drawTable(
            {
              columns: [
                { title: 'place', widthMm: 20 },
                { title: 'size', widthMm: 40 },
                { title: 'number in the bag', widthMm: 50 },
                { title: 'lay it here', widthMm: 66 },
              ],
              rows,
              rowMm,
              textMm: 4.3,
            },
            marginMm,
            tableMm,
          ),
          text(marginMm, belowMm, back.length > 0 ? 'Goes back:' : 'Nothing goes back.', { bold: true }),
          ...listed.map((words, index) => text(marginMm, belowMm + 6 + index * 5, words)),
        ],
      },
    ],
  };
}
