import { Button } from 'react-aria-components';
import { Link } from 'wouter';

export interface BenchBarProps {
  /** Where what cannot be undone is done, instead of here. */
  gate: string | undefined;
  done: boolean;
  tick(): void;
  untick(): void;
  back: (() => void) | undefined;
  /** To the next piece, this one left as it is. */
  on(): void;
}

/** Always in sight, at the foot of the screen: one large button, two small ones under it. */
export function BenchBar({ gate, done, tick, untick, back, on }: BenchBarProps) {
  return (
    <fieldset className="bench-bar">
      <legend className="visually-hidden">This piece of work</legend>
      {gate && !done ? (
        <Link className="button button-main bench-main" href={gate}>
          To its gate
        </Link>
      ) : (
        <Button className="button button-main bench-main" onPress={done ? on : tick}>
          {done ? 'Next piece' : 'Done'}
        </Button>
      )}
      <div className="bench-small">
        <Button className="button" isDisabled={!back} onPress={back}>
          Back
        </Button>
        {done ? (
          <Button className="button" onPress={untick}>
            Not done after all
          </Button>
        ) : (
          <Button className="button" onPress={on}>
            Skip
          </Button>
        )}
      </div>
    </fieldset>
  );
}
