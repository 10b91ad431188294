import { fewestMarks } from '../../../record/read-walls.ts';
import type { PhotoReading } from '../photo/photo-request.ts';
import type { Tool } from '../photo/tool-choice.tsx';

/** What is still missing is what a tap sets: marks where the printed ones were not found, then the ends. */
export function wantedTap({ marks, butt, tip }: PhotoReading): Tool {
  if (marks.length < fewestMarks && !butt) return 'mark';
  if (!butt) return 'butt';
  return tip ? 'look' : 'tip';
}

export const tapWords: Record<Tool, string | undefined> = {
  mark: 'a mark',
  butt: 'the butt',
  tip: 'the tip',
  via: 'a point between',
  ring: undefined,
  look: undefined,
};
