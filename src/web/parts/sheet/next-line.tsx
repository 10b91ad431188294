import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { Figure } from '../../fields/figure.tsx';

interface NextLineProps {
  children: ReactNode;
  /** Path key of the field where it is done. */
  at?: string;
  /** The step to go on to. */
  goOn?: { href: string; name: string };
}

/** The one plain line at the top of a step: what to do next. It stays in sight while the sheet is scrolled. */
export function NextLine({ children, at, goOn }: NextLineProps) {
  return (
    <div className="next-line screen-only" role="note" aria-label="What to do next">
      <p>
        <span className="next-word">Next</span>{' '}
        {typeof children === 'string' ? <Figure text={children} /> : children}
      </p>
      {at && (
        <Button className="button" data-leads-to={at} onPress={() => goToField(at)}>
          Go there
        </Button>
      )}
      {goOn && (
        <Link className="button" href={goOn.href}>
          {goOn.name}
        </Link>
      )}
    </div>
  );
}

/**
 * Puts the focus into the field of a path, or scrolls to the part that carries it. What keeps it out of sight says so
 * (`data-holds`: beginnings of paths) and is opened first: a fold, or the tab of another set-up.
 */
export function goToField(at: string): void {
  if (wentTo(at)) return;
  // what holds it, and the screen where it stands, come with one of the next frames, on a busy computer late
  const until = performance.now() + 2000;
  let isOpened = openKeeper(at);
  const look = () => {
    if (wentTo(at) || performance.now() > until) return;
    if (!isOpened) isOpened = openKeeper(at);
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

function openKeeper(at: string): boolean {
  const keeper = [...document.querySelectorAll<HTMLElement>('[data-holds]')].find(({ dataset }) =>
    dataset.holds?.split(' ').some((start) => at.startsWith(start)),
  );
  if (keeper instanceof HTMLDetailsElement) keeper.open = true;
  else keeper?.click();
  return keeper !== undefined;
}

/** Whether the field is in the page already. */
function wentTo(at: string): boolean {
  const place = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(at)}"]`);
  if (place) bringIntoSight(place);
  return place !== null;
}

function bringIntoSight(place: HTMLElement): void {
  for (let fold = place.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) {
    fold.open = true;
  }
  place.scrollIntoView({ block: 'center' });
  // a box to tick is found by its label, which takes no focus itself
  const field = (place instanceof HTMLLabelElement && place.control) || place;
  field.focus({ preventScroll: true });
}
