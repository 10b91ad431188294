import { Button } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { Finding } from '../../../engine/finding.ts';
import { sectionName } from '../../../record/row-names.ts';
import { Figure } from '../../fields/figure.tsx';
import { goToField } from '../../parts/sheet/next-line.tsx';
import { type Screen, useScreen } from '../../parts/sheet/screens.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useOpenParts } from '../../read/open-parts.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { screenOf, screens } from './blank-screens.ts';

/** Everything that looks odd, in one place, screen by screen, with one way to each screen's first. */
export function LookAgain() {
  const { findings, stiffness } = useBench();
  const odd = [...findings.filter(({ severity }) => severity === 'doubt'), ...stiffness.findings];
  if (odd.length === 0) return null;
  return (
    <details className="look-again screen-only">
      <summary>
        <span className="attention" aria-hidden="true">
          ▲{' '}
        </span>
        {odd.length === 1 ? 'One thing looks odd' : `${odd.length} things look odd`}
      </summary>
      {screens.map((screen) => (
        <OddOnScreen
          key={screen.id}
          screen={screen}
          odd={odd.filter(({ path }) => screenOf(path) === screen)}
        />
      ))}
    </details>
  );
}

/** What looks odd on one screen; each is said again at its field. */
function OddOnScreen({ screen, odd }: { screen: Screen; odd: readonly Finding[] }) {
  const sentence = useSentence();
  const goTo = useGoTo();
  const nameOf = useSectionName();
  if (odd.length === 0) return null;
  return (
    <section aria-label={screen.name}>
      <p>
        {screen.name}{' '}
        <Button className="inline" onPress={() => goTo(odd[0].path)}>
          Go there
        </Button>
      </p>
      <ul>
        {odd
          .map((one) => [one.path, `${nameOf(one.path)}${sentence(one)}`] as const)
          .map(([path, message]) => (
            <li key={path + message}>
              <Figure text={message} />
            </li>
          ))}
      </ul>
    </section>
  );
}

function useGoTo(): (path: string) => void {
  const { id } = useBuild();
  const { open: all } = useOpenParts();
  const screen = useScreen(screens);
  const [, navigate] = useLocation();
  return (path) => {
    const on = screenOf(path);
    if (!all && on !== screen) navigate(`/builds/${id}/blank/${on.id}`);
    goToField(path);
  };
}

/** Several sections may be odd in one way: `butt: `; empty where the field is no weight or balance point of one. */
function useSectionName(): (path: string) => string {
  const { rows } = useBuild();
  return (path) => {
    const [, id] = /^sections\/([^/]+)\/(?:mass|balanceFromOwnTip)$/.exec(path) ?? [];
    const sections = rows('sections');
    const index = sections.findIndex((row) => row.id === id);
    return index < 0 ? '' : `${sectionName(sections[index], index)}: `;
  };
}
