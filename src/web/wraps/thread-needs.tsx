import type { ColourNeed } from '../../engine/wraps/plan-wraps.ts';

/** Thread to have at hand, per colour, tags and reserve in it. */
export function ThreadNeeds({ colours }: { colours: readonly ColourNeed[] }) {
  return (
    <ul className="thread-needs" aria-label="Thread needed">
      {colours.map(({ colour, threadM, spools }, index) => (
        <li key={`${index === 0 ? 'thread' : 'trim'}${colour}`}>
          <span className="thread-swatch" style={{ background: colour }} aria-hidden="true" />
          {index === 0 ? 'Thread' : 'Trim'}: {threadM.toFixed(1)} m with tags and reserve,{' '}
          {spools === 1 ? '1 spool' : `${spools} spools`}
        </li>
      ))}
    </ul>
  );
}
