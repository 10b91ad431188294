/** What the hand feels of guides on top, under and in a spiral: the names of the table and each of its cells. */
import type { HandRow } from '../engine/flow/round-answer.ts';
import type { Arrangement, Handling } from '../engine/flow/torque-in-hand.ts';
import type { LadderWriter } from './ladder-writer.ts';

export const arrangementNames: Record<Arrangement, string> = {
  'on-top': 'on top',
  under: 'under',
  spiral: 'spiral',
};
export const handlingNames: Record<Handling, string> = {
  straight: 'straight down',
  sideways: 'pulled 15° sideways',
  rolled: 'rod rolled 10°',
};

type Of = Pick<HandRow, 'arrangement' | 'handling' | 'load'>;

export function handRowOf(rows: readonly HandRow[], of: Of): HandRow | undefined {
  return rows.find(
    (row) => row.arrangement === of.arrangement && row.handling === of.handling && row.load === of.load,
  );
}

/** Torque with what a roll does to it, and the twist of the tip over what GJ may be; undefined for no bend found. */
export function handInFigures(
  rows: readonly HandRow[],
  of: Of,
  writer: LadderWriter,
): { torque: string; twist: string; turnsOver: boolean } | undefined {
  const row = handRowOf(rows, of);
  if (row?.status !== 'converged') return undefined;
  const straight = handRowOf(rows, { ...of, handling: 'straight' });
  const rolled =
    of.handling === 'rolled' ? rolledWords(row.handTorqueNm - (straight?.handTorqueNm ?? 0)) : '';
  return {
    torque: `${writer.torque(Math.abs(row.handTorqueNm))}${rolled}`,
    twist: twistWords(row, writer),
    turnsOver: !row.stable,
  };
}

/** The same in one text. */
export function handCellInWords(rows: readonly HandRow[], of: Of, writer: LadderWriter): string {
  const cell = handInFigures(rows, of, writer);
  if (!cell) return 'no bend found';
  return cell.turnsOver ? 'turns over' : `${cell.torque}, ${cell.twist}`;
}

function twistWords({ twistRangeRad: { least, most } }: HandRow, writer: LadderWriter): string {
  const [low, high] = [least, most]
    .map((rad) => Math.abs(rad))
    .sort((a, b) => a - b)
    .map(writer.lineAngle);
  return low === high ? high : `${low.replace('°', '')} to ${high}`;
}

/** More torque in the sense of the roll: the hand holds the rod in it, for it wants to go back. */
function rolledWords(moreNm: number): string {
  if (Math.abs(moreNm) < leastFeltNm) return '';
  return moreNm > 0 ? ', pushes back' : ', pushes on';
}
/** About a gram at a hand's breadth. */
const leastFeltNm = 1e-3;
