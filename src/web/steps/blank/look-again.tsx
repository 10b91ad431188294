import { Button } from 'react-aria-components';
import { goToField } from '../../parts/sheet/next-line.tsx';
import { useBench } from '../../read/bench.tsx';
import { useSentence } from '../../read/use-sentence.ts';

/** Everything that looks odd, in one place, each with the way to its field. */
export function LookAgain() {
  const sentence = useSentence();
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
      <ul>
        {odd
          .map((one) => [one.path, sentence(one)] as const)
          .map(([path, message]) => (
            <li key={path + message}>
              {message}{' '}
              <Button className="inline" onPress={() => goToField(path)}>
                Go there
              </Button>
            </li>
          ))}
      </ul>
    </details>
  );
}
