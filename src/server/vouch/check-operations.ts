import type { StoredOperation } from '../../record/operation.ts';
import { DamagedError } from '../errors.ts';
import { operationOf } from '../sql-rows.ts';
import { contentDigest, linkOf, noLink, type OperationRow } from './seals.ts';

export interface CheckedOperations {
  good: StoredOperation[];
  /** Numbers of those that are not what was stored, or are missing. */
  bad: number[];
}

/** Where a run of operations begins, and where its document ends. */
export interface RunPlace {
  /** Link and number of the operation before the first. */
  link: string;
  seq: number;
  /** The document's last link and number, where the run reaches the end. */
  end?: { head: string; lastSeq: number };
}

/** @param rows in order of `seq`; each is held against the link stored before it, so one bad row is one bad number */
export function checkOperations(
  rows: readonly OperationRow[],
  place: RunPlace = { link: noLink, seq: 0 },
): CheckedOperations {
  const good: StoredOperation[] = [];
  const bad: number[] = [];
  let { link, seq } = place;
  for (const row of rows) {
    // A number that counts no further is none of this run; where it belongs there is a gap.
    if (!Number.isInteger(row.seq) || row.seq <= seq) continue;
    addMissing(bad, seq, row.seq - 1);
    seq = row.seq;
    if (row.link === linkOf(link, seq, contentDigest(row))) good.push(operationOf(row));
    else bad.push(seq);
    link = row.link;
  }
  if (place.end) {
    addMissing(bad, seq, place.end.lastSeq);
    if (bad.length === 0 && (link !== place.end.head || seq !== place.end.lastSeq)) bad.push(seq);
  }
  return { good, bad };
}

/** A damaged number can be anything; so many are counted. */
const mostMissing = 100_000;

function addMissing(bad: number[], after: number, upTo: number): void {
  for (let seq = after + 1; seq <= Math.min(upTo, after + mostMissing); seq++) bad.push(seq);
}

/** A document some of whose operations cannot be believed; `good` are the others. */
export class DamagedDocument extends DamagedError {
  readonly document: string;
  readonly good: StoredOperation[];
  readonly bad: number[];

  constructor(document: string, { good, bad }: CheckedOperations) {
    super(damageWords(bad));
    this.document = document;
    this.good = good;
    this.bad = bad;
  }
}

/** Most numbers a sentence names. */
const mostNamed = 5;

function damageWords(bad: readonly number[]): string {
  const named = bad.slice(0, mostNamed).join(', ');
  const which =
    bad.length === 1
      ? `Change ${named}`
      : `${bad.length} changes (${named}${bad.length > mostNamed ? ' …' : ''})`;
  return `${which} of this document cannot be read as stored: the disk or the file is damaged. Bring it back: “Repair” on the shelf takes it from the newest good backup`;
}
