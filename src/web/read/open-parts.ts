import { deviceChoice } from './device-choice.ts';

const openParts = deviceChoice('fairbend-open-parts');

/** Whether this device shows every part of a sheet open, for who wants it all before him. */
export function useOpenParts(): { open: boolean; setOpen(on: boolean): void } {
  return { open: openParts.useOn(), setOpen: openParts.set };
}
