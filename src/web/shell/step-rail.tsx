import { Link } from 'wouter';
import { steps } from './steps.ts';

/** The steps as a drawn rail: the one at hand underlined strongly, those to come in quiet ink. */
export function StepRail({ build, current }: { build: string; current: string }) {
  return (
    <nav className="rail screen-only" aria-label="Steps of the build">
      <ol>
        {steps.map(({ id, name, notYet }) => (
          <li key={id}>
            {notYet ? (
              <span className="rail-step" aria-disabled="true">
                {name}
                <span className="rail-missing">{notYet}</span>
              </span>
            ) : (
              <Link
                className="rail-step"
                href={`/builds/${build}/${id}`}
                aria-current={id === current ? 'step' : undefined}
              >
                {name}
              </Link>
            )}
          </li>
        ))}
      </ol>
    </nav>
  );
}
