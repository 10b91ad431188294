import type { ReactNode } from 'react';
import { Checkbox } from 'react-aria-components';
import type { Path } from '../../record/operation.ts';
import { useFieldPlace } from './place.ts';

/** The builder's word on something: yes or not. */
export function FlagField({ path, gesture, children }: { path: Path; gesture: string; children: ReactNode }) {
  const place = useFieldPlace();
  return (
    <Checkbox
      className="flag"
      isSelected={(place.value(path) ?? place.habit?.(path)) === true}
      onChange={(value) => place.write(gesture, [{ path, value }])}
    >
      <span className="flag-box" aria-hidden="true" />
      <span>{children}</span>
    </Checkbox>
  );
}
