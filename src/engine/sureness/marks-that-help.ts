/**
 * Which marks to make: those placed on the likeliest blank where they beat the start on most blanks that fit
 * the readings and gain far more on them than they lose, else the start's. The best layout of one blank flatters
 * itself, most where little was read, so a bare majority is not enough (docs/calibration.md).
 */
import type { BlankTables } from '../bench/free-rod.ts';
import type { Finding } from '../finding.ts';
import {
  keepStart,
  type LayoutAnswer,
  type LayoutFound,
  type LayoutProgress,
  layout,
} from '../layout/layout.ts';
import { layoutFound } from '../layout/layout-kinds.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { LayoutVerdict, LeadCounts } from '../layout/verdict.ts';
import type { HowRead } from '../stiffness/how-read.ts';
import { countLeads, helps, leadAsked, leadOn } from './lead.ts';

export interface MarksThatHelp {
  layout: LayoutFound;
  /** Whether they are other marks than the start's. */
  moved: boolean;
  /** Blanks on which the marks placed on the likeliest one beat the start, and on which they lose much. */
  counts: LeadCounts;
  /** Where the start stays for want of sureness: the marks that may be better. */
  insteadFromTipM?: readonly number[];
}
export type MarksAnswer = MarksThatHelp | Extract<LayoutAnswer, { status: 'refused' }>;

/** What the bench tells of the blank. */
export interface Told {
  howRead: HowRead;
  /** Drawn from what the readings leave. */
  blanks: readonly BlankTables[];
}

/** `request` on the likeliest blank. */
export function marksThatHelp(
  request: LayoutRequest,
  { howRead, blanks }: Told,
  progress?: (soFar: LayoutProgress) => void,
): MarksAnswer {
  const start = keepStart(request);
  if (start.status === 'refused') return start;
  if (howRead === 'nothing') {
    return { layout: kept(start, 'unread', startUnread), moved: false, counts: countLeads([]) };
  }
  const placed = layout(request, progress);
  if (placed.status === 'refused') return placed;
  const leads = leadsOn(request, blanks, placed, start);
  const counts = countLeads(leads);
  if (helps(leads, howRead) || !isMoved(placed, start))
    return { layout: placed, moved: isMoved(placed, start), counts };
  const asked = leadAsked(counts, howRead);
  const layoutKept = kept(start, asked, layoutFound('start', 'layout/start-stays', { ...asked }));
  return { layout: layoutKept, moved: false, counts, insteadFromTipM: placed.fromTipM };
}

function kept(start: LayoutFound, startKept: LayoutVerdict['startKept'], finding: Finding): LayoutFound {
  const verdict = { ...start.verdict, startIsAsGood: false, startKept };
  return { ...start, verdict, findings: [...start.findings, finding] };
}

function isMoved(placed: LayoutFound, { start }: LayoutFound): boolean {
  return placed.fromTipM.some((at, guide) => Math.abs(at - start.fromTipM[guide]) > 1e-6);
}

function leadsOn(
  request: LayoutRequest,
  blanks: readonly BlankTables[],
  placed: LayoutFound,
  start: LayoutFound,
): number[] {
  const { ladder, limits } = placed;
  const marks = { ours: placed.fromTipM, theirs: start.fromTipM };
  return blanks.flatMap((blank) => leadOn({ ...request, ladder, limits }, blank, marks) ?? []);
}

const startUnread = layoutFound('start', 'layout/start-stays-unread', {});
