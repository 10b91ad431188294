import { Figure } from './figure.tsx';

export interface FieldLineProps {
  id: string;
  /** Why what is written was not kept, or what is odd about what is kept; names value and remedy. */
  trouble?: string;
  echo?: string;
  /** Takes no room while it is empty. */
  folds?: boolean;
}

/** The line under a field: what was understood, or what is wrong with it. Its place is kept when it is empty. */
export function FieldLine({ id, trouble, echo, folds }: FieldLineProps) {
  const look = ['field-line', trouble ? 'field-trouble' : '', folds ? 'field-line-folds' : ''];
  return (
    <span id={id} className={look.filter((name) => name !== '').join(' ')}>
      {/* Only trouble is spoken by itself; the echo changes with every key and is read on demand. */}
      <span aria-live="polite">
        {trouble && (
          <>
            <span aria-hidden="true">▲ </span>
            {trouble}
          </>
        )}
      </span>
      {!trouble && echo && <Figure text={echo} />}
    </span>
  );
}
