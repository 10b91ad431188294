import { useSyncExternalStore } from 'react';

const key = 'fairbend-parts';
const listeners = new Set<() => void>();

/** Whether this device shows every part of a sheet open, for who wants it all before him. */
export function useOpenParts(): { open: boolean; setOpen(on: boolean): void } {
  return { open: useSyncExternalStore(subscribe, isOpen), setOpen };
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function isOpen(): boolean {
  try {
    return localStorage.getItem(key) === 'open';
  } catch {
    return false;
  }
}

function setOpen(on: boolean): void {
  try {
    localStorage.setItem(key, on ? 'open' : 'folded');
  } catch {
    // a browser that keeps nothing shows them folded
  }
  for (const listener of listeners) listener();
}
