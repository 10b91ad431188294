/** The keys of each step, as the page that `?` opens has them. */
export interface KeyHelp {
  keys: string;
  does: string;
}

const everywhere: readonly KeyHelp[] = [
  { keys: 'Enter', does: 'keeps a value and goes to the next field' },
  { keys: 'Esc', does: 'drops what you typed; closes notices' },
  { keys: 'Ctrl Z', does: 'undoes' },
  { keys: 'Ctrl Shift Z', does: 'does it again' },
  { keys: '?', does: 'shows these keys' },
];

const ofStep: Readonly<Record<string, readonly KeyHelp[]>> = {
  layout: [
    { keys: '← →', does: 'the guide in hand, one tick toward the tip or the butt' },
    { keys: 'Shift ← →', does: 'ten ticks' },
    { keys: 'Home End', does: 'as far as it may move without harm' },
    { keys: 'P', does: 'pins it, or lets it go' },
    { keys: 'Esc', does: 'puts a dragged guide back' },
  ],
  'load-test': [
    { keys: '← → ↑ ↓', does: 'moves the picture, or the point in hand' },
    { keys: '+ −', does: 'zooms' },
    { keys: '0', does: 'shows the whole picture' },
    { keys: 'Delete', does: 'removes the point in hand' },
  ],
  bench: [{ keys: 'Enter', does: 'presses the large button' }],
};

export function keysOf(step: string): readonly KeyHelp[] {
  return [...(ofStep[step] ?? []), ...everywhere];
}
