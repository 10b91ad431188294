import { rowChanges } from '../../../record/operation.ts';
import { hasRules } from '../../../sheets/check-rules.ts';
import type { Sheet } from '../../../sheets/drawing.ts';
import type { StripPaper } from '../../../sheets/paper-size.ts';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';
import { fileName, handOver } from './hand-over.ts';

export interface PrintJob {
  /** `strips`, `marks`: the file's name and the row in the record. */
  sheet: string;
  paper: StripPaper;
  /** Draws the sheets; the stamp names build, revision and date. */
  draw(stamp: string): Sheet[];
}

/**
 * Prints to a PDF: the build is frozen as a revision on the server, the sheets are stamped with it, the print is
 * written into the record, and the file is handed to the browser.
 */
export function usePrint(): { print(job: PrintJob): void; printing: boolean } {
  const build = useBuild();
  const say = useSay();
  const { busy, attempt } = useAttempt();
  const carryOut = async ({ sheet, paper, draw }: PrintJob) => {
    const { version } = await api.info();
    const { revision } = await build.store.freezeRevision(version);
    const printedAt = new Date();
    const stamp = `${build.title} · revision ${revision} · ${printedAt.toISOString().slice(0, 10)}`;
    const [{ sheetsPdf, missingWords }, { paperFonts }] = await Promise.all([
      import('../../../paper/index.ts'),
      import('./paper-fonts.ts'),
    ]);
    const title = `${build.title}: ${sheet}`;
    const sheets = draw(stamp);
    const { bytes, missing } = await sheetsPdf(sheets, { title, printedAt, fonts: paperFonts });
    handOver(bytes, 'application/pdf', `${fileName(build.title)}-${sheet}-${paper}.pdf`);
    const id = build.newRowId();
    build.write(
      `print:${sheet}`,
      rowChanges('prints', id, {
        sheet,
        paper,
        revision,
        printedAt: printedAt.toISOString(),
        engineVersion: version,
      }),
    );
    const measure = hasRules(sheets) ? ' Print it at actual size, then measure its rules.' : '';
    const kept = `The PDF is kept as revision ${revision}.${measure}`;
    say(`${kept} ${missingWords(missing)}`.trimEnd());
  };
  const print = (job: PrintJob) => void attempt('Nothing was printed', () => carryOut(job));
  return { print, printing: busy };
}
