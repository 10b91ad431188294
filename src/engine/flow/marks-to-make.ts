import type { LayoutProgress } from '../layout/layout.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { howRead } from '../stiffness/how-read.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import type { FitRequest } from '../stiffness/request.ts';
import { type MarksAnswer, marksThatHelp } from '../sureness/marks-that-help.ts';
import { blanksThatFit } from './build-sureness.ts';

/** The marks that help, as the bench was read and fitted; the start's where nothing was read. */
export function marksToMake(
  request: LayoutRequest,
  fitted?: { fit: FitRequest; posterior: Posterior },
  progress?: (soFar: LayoutProgress) => void,
): MarksAnswer {
  const told = fitted
    ? { howRead: howRead(fitted.fit), blanks: blanksThatFit(fitted.posterior) }
    : { howRead: 'nothing' as const, blanks: [] };
  return marksThatHelp(request, told, progress);
}
