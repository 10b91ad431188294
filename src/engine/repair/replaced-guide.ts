/** A guide replaced: where it stood, how it was bound, and with what, from the record. */
import type { Wrap } from '../wraps/plan-wraps.ts';
import type { ThreadColour, WrapChoices } from '../wraps/wrap-choices.ts';

interface PartNote {
  what: string;
  stage?: string;
  lot?: string;
  dye?: string;
}
interface ReplacedGuide {
  /** The wraps over its feet, tip side first. */
  wraps: Wrap[];
  thread: ThreadColour;
  trim: ThreadColour | undefined;
  threadM: number;
  /** What went into wraps and finish, with lot and dye numbers. */
  materials: PartNote[];
}

/** `guide`: its place from the tip, from 0; `wraps` those of the whole rod. */
export function replacedGuide(
  guide: number,
  wraps: readonly Wrap[],
  { thread, trim, trimTurns }: Pick<WrapChoices, 'thread' | 'trim' | 'trimTurns'>,
  parts: readonly PartNote[],
): ReplacedGuide {
  const own = wraps.filter((wrap) => wrap.guide === guide);
  return {
    wraps: own,
    thread,
    trim: trimTurns > 0 && own.some(({ trimmed }) => trimmed) ? trim : undefined,
    threadM: own.reduce((sum, wrap) => sum + wrap.threadM, 0),
    materials: parts.filter(
      ({ stage, what }) => stage === 'wraps' || stage === 'finish' || /thread|finish/i.test(what),
    ),
  };
}
