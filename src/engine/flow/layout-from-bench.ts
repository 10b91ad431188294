/** The layout asked for straight from a bench: fit, marks that help, and how sure all of it is. */
import { freeRod } from '../bench/free-rod.ts';
import type { Finding } from '../finding.ts';
import type { LayoutFound, LayoutRefused } from '../layout/layout.ts';
import { layoutFound } from '../layout/layout-kinds.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import { howRead } from '../stiffness/how-read.ts';
import type { FitRequest } from '../stiffness/request.ts';
import { marksThatHelp } from '../sureness/marks-that-help.ts';
import { readSureness } from '../sureness/sureness.ts';
import { blanksThatFit, markSureness } from './build-sureness.ts';

interface BenchLayoutRequest extends Omit<LayoutRequest, 'rod'> {
  bench: FitRequest;
  /** Tip to the grip's front. */
  freeM: number;
}
interface LayoutSureness {
  /** Largest ratio to a limit over the blanks that fit: half of them below `expected`, and where 95 of 100 lie. */
  worst: { expected: number; low: number; high: number };
  /** Share of blanks on which the answer's worst lies below the start's; 0 where it is the start. */
  betterThanStart: number;
  /** On 95 of 100 blanks the marks' worst is at most this share above each blank's own best. */
  costOfKeeping: number;
  /** One standard deviation of each mark's best place: its 95 % reach over 1.96. */
  markSigmaM: number[];
}
type BenchLayoutAnswer = (LayoutFound & { sureness: LayoutSureness }) | LayoutRefused;

export function layoutFromBench({ bench, freeM, ...asked }: BenchLayoutRequest): BenchLayoutAnswer {
  const { lengthM } = bench.blank;
  if (freeM > lengthM) {
    return {
      status: 'refused',
      findings: [layoutFound('freeM', 'layout/free-beyond-blank', { freeM, lengthM })],
    };
  }
  const { answer, posterior } = fitStiffness(bench);
  if (answer.status === 'refused' || !posterior) {
    return { status: 'refused', findings: answer.findings.map(inBench) };
  }
  const request = { ...asked, rod: freeRod(answer, freeM) };
  const blanks = blanksThatFit(posterior);
  const marks = marksThatHelp(request, { howRead: howRead(bench), blanks });
  if (!('layout' in marks)) return marks;
  const { ladder, limits, fromTipM, start } = marks.layout;
  const question = { ...request, ladder, limits };
  const { proposed, better } = readSureness(
    {
      proposed: { ladder: question, fromTipM },
      start: { ladder: question, fromTipM: start.fromTipM },
    },
    blanks,
  );
  const placed = markSureness({ request: question, proposedFromTipM: fromTipM }, posterior);
  const likeliest = marks.layout.score.worst;
  const { low, high, expected } = proposed?.blanks ? proposed.worst : everywhere(likeliest);
  return {
    ...marks.layout,
    findings: [...marks.layout.findings, ...answer.findings.map(inBench)],
    sureness: {
      worst: { expected, low, high },
      betterThanStart: better && better.of > 0 ? better.count / better.of : 0,
      costOfKeeping: placed.costOfKeeping,
      markSigmaM: placed.plusMinusM.map((m) => m / 1.96),
    },
  };
}

/** Where no drawn blank bends under every load. */
function everywhere(worst: number): LayoutSureness['worst'] {
  return { expected: worst, low: worst, high: worst };
}

function inBench(found: Finding): Finding {
  return { ...found, path: found.path === '' ? 'bench' : `bench.${found.path}` };
}
