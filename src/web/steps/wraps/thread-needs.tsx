import type { ColourNeed } from '../../../engine/wraps/plan-wraps.ts';
import { threadLetters } from '../../../sheets/wrap-sheet.ts';
import { threadCalled } from '../../../words/colour-words.ts';
import { useShop } from '../../read/shop.tsx';

const partWords = { thread: 'Thread', trim: 'Trim', underwrap: 'Underwrap' } as const;

/** Thread to have at hand, per colour, tags and reserve in it; the letters stand on the printed sheet too. */
export function ThreadNeeds({ colours }: { colours: readonly ColourNeed[] }) {
  const { writer } = useShop();
  return (
    <ul className="thread-needs" aria-label="Thread needed">
      {colours.map(({ part, threadM, spools, lot, ...thread }) => (
        <li key={part}>
          <span className="thread-swatch" style={{ background: thread.colour }} aria-hidden="true" />
          {threadLetters[part]} {partWords[part]}, {threadCalled(thread)}
          {lot && `, lot ${lot}`}: {writer.run(threadM)} with tags and reserve,{' '}
          {spools === 1 ? '1 spool' : `${spools} spools`}
        </li>
      ))}
    </ul>
  );
}
