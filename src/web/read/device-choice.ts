import { useSyncExternalStore } from 'react';

interface DeviceChoice {
  useOn(): boolean;
  set(on: boolean): void;
}

/**
 * A choice of this device, off until it is made, kept in its browser; one that keeps nothing has it until the page
 * is loaded again.
 */
export function deviceChoice(key: string): DeviceChoice {
  const listeners = new Set<() => void>();
  let unkept: boolean | undefined;
  const read = () => {
    try {
      return unkept ?? localStorage.getItem(key) === 'on';
    } catch {
      return false;
    }
  };
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    useOn: () => useSyncExternalStore(subscribe, read),
    set(on) {
      try {
        localStorage.setItem(key, on ? 'on' : 'off');
      } catch {
        unkept = on;
      }
      for (const listener of listeners) listener();
    },
  };
}
