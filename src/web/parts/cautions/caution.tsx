import { Children, type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { Figure } from '../../fields/figure.tsx';

interface CautionProps {
  /** What it warns of; once read on this device it folds to a line. */
  about: string;
  /** How grave it is just now: another word than the one that was read opens it again. */
  grade?: string;
  /** The one line that stays when it is folded. */
  brief: string;
  /** The line says a danger that is there now. */
  grave?: boolean;
  source: string;
  children: ReactNode;
}

/** A short caution at the step where the work can hurt, with where it comes from. It is never gone. */
export function Caution({ about, grade = '', brief, grave = false, source, children }: CautionProps) {
  const [read, setRead] = useState(() => wasRead(about) === grade);
  const fold = () => {
    keepRead(about, grade);
    setRead(true);
  };
  const isFolded = read && wasRead(about) === grade;
  return (
    <div className="caution" role="note">
      <details open={!isFolded} key={`${isFolded}${grade}`}>
        <summary>
          <strong>Caution.</strong>{' '}
          <span className={grave ? 'attention' : undefined}>
            <Figure text={brief} />
          </span>
          {isFolded && <span className="caution-read"> ✓ read</span>}
        </summary>
        <p>{told(children)}</p>
        <details className="caution-source">
          <summary>Source</summary>
          <p>{source}</p>
        </details>
        {!isFolded && (
          <Button className="plain small screen-only" onPress={fold}>
            I have read it
          </Button>
        )}
      </details>
    </div>
  );
}

/** Words alone are told with each figure beside its unit. */
function told(children: ReactNode): ReactNode {
  const pieces = Children.toArray(children);
  return pieces.every((piece) => typeof piece === 'string') ? <Figure text={pieces.join('')} /> : children;
}

const key = (about: string) => `fairbend-caution-${about}`;

/** The grade it was read at on this device; null where it was not, or where the browser keeps nothing. */
function wasRead(about: string): string | null {
  try {
    return localStorage.getItem(key(about));
  } catch {
    return null;
  }
}

function keepRead(about: string, grade: string): void {
  try {
    localStorage.setItem(key(about), grade);
  } catch {
    // then it stays open: nothing is lost by that
  }
}
