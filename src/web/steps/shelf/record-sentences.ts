import type { RecordStanding } from '../../../record/record-api.ts';
import { instantWords } from '../../../words/intl.ts';

const hourMs = 3600e3;
/** A backup is made every day; one that is older than this was missed. */
const oldestBackupHours = 49;
/** More would not be read. */
const mostNamed = 5;

/** What the shelf says of the record: what is wrong, and where nothing is, one quiet line. */
export function recordSentences(standing: RecordStanding, now: Date): { wrong: string[]; quiet: string } {
  const { damaged, lost, found, backups, wholeAt, space } = standing;
  const wrong: string[] = [];
  if (found)
    wrong.push(
      `This shelf is empty, but a backup of ${instantWords(found.madeAt)} with ${count(found.builds, 'build')} lies beside it.`,
    );
  if (damaged.length > 0) {
    const names = damaged.slice(0, mostNamed).map(({ id, title }) => title || id);
    const more = damaged.length > mostNamed ? ' and others' : '';
    wrong.push(`Not as stored any more: ${names.join(', ')}${more}. The disk or the file is damaged.`);
  }
  if (lost > 0)
    wrong.push(
      `${count(lost, 'saved change')} were missing at the last start. Open the builds where they were written: what a page still holds is sent again.`,
    );
  if (backups?.failure)
    wrong.push(`No backup was made on ${instantWords(backups.failure.at)}: ${backups.failure.message}.`);
  if (backups && isOld(backups.madeAt, now))
    wrong.push(`The last good backup is of ${instantWords(backups.madeAt!)}.`);
  const said = [
    backups?.madeAt ? `last backup ${instantWords(backups.madeAt)}` : '',
    wholeAt ? `record last read whole and good ${instantWords(wholeAt)}` : '',
    space ? `the record takes ${size(space.record)}, its backups ${size(space.backups)}` : '',
  ].filter((part) => part !== '');
  return { wrong, quiet: wrong.length > 0 ? '' : said.join(' · ') };
}

function isOld(madeAt: string | null, now: Date): boolean {
  return madeAt !== null && now.getTime() - Date.parse(madeAt) > oldestBackupHours * hourMs;
}

function size(bytes: number): string {
  return bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toPrecision(3)} MB`;
}

function count(number: number, what: string): string {
  return number === 1 ? `1 ${what}` : `${number} ${what}s`;
}
