import { Link, useRoute } from 'wouter';

export interface Screen {
  id: string;
  name: string;
}

/** Which of a step's screens the address names; the first where it names none. */
export function useScreen(screens: readonly Screen[]): Screen {
  const [, params] = useRoute('/builds/:id/:step/:screen');
  return screens.find(({ id }) => id === params?.screen) ?? screens[0];
}

interface ScreenRailProps {
  /** `/builds/<id>/blank`. */
  at: string;
  label: string;
  screens: readonly Screen[];
  current: Screen;
}

/** The screens of a step that is more than one sheet, side by side. */
export function ScreenRail({ at, label, screens, current }: ScreenRailProps) {
  return (
    <nav className="screen-rail screen-only" aria-label={label}>
      {screens.map(({ id, name }) => (
        <Link key={id} href={`${at}/${id}`} aria-current={id === current.id ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
