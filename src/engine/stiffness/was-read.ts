import type { FitRequest } from './request.ts';

/** Whether anything but callipers and scale has told of the stiffness: a drop, a sag, a photograph, a count of swings. */
export function wasRead({ blank, setups }: FitRequest): boolean {
  const swung = (blank.swings ?? []).length > 0;
  return (
    swung ||
    setups.some((setup) =>
      setup.kind === 'span' || setup.kind === 'curve'
        ? setup.tests.length > 0
        : setup.tests.some(({ readings }) => readings.length > 0),
    )
  );
}
