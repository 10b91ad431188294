import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { steps } from '../parts/sheet/steps.ts';
import { type BenchReading, useBench } from '../read/bench.tsx';

/** The steps as a drawn rail: the one at hand underlined strongly, those that wait in quiet ink with what for. */
export function StepRail({ build, current }: { build: string; current: string }) {
  const bench = useBench();
  const rail = useRef<HTMLElement>(null);
  // Where the rail is wider than the screen, the step at hand is brought into it.
  useEffect(() => {
    rail.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }, [current]);
  return (
    <nav ref={rail} className="rail screen-only" aria-label="Steps of the build">
      <ol>
        {steps.map(({ id, name, notYet }) => (
          <li key={id}>
            {notYet ? (
              <span className="rail-step" aria-disabled="true">
                <span className="rail-name">{name}</span> <Waiting words={notYet} />
              </span>
            ) : (
              <Link
                className="rail-step"
                href={`/builds/${build}/${id}`}
                aria-current={id === current ? 'step' : undefined}
              >
                <span className="rail-name">{name}</span> <Waiting words={waitsFor(id, bench)} />
              </Link>
            )}
          </li>
        ))}
      </ol>
    </nav>
  );
}

function Waiting({ words }: { words: string | undefined }) {
  return words && <span className="rail-missing">{words}</span>;
}

/** What a step still waits for; undefined when it can be worked on. */
function waitsFor(step: string, { bench, choices, profile }: BenchReading): string | undefined {
  if (step !== 'layout' && step !== 'marks') return undefined;
  if (!bench || bench.sections.length === 0) return 'needs the sections';
  if (profile.length === 0) return 'needs a diameter';
  const placed = choices?.guides.every(({ stationM }) => stationM !== undefined) ?? false;
  return step === 'marks' && !placed ? 'needs a layout' : undefined;
}
