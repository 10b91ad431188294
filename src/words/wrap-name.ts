/** A wrap's place by its id: `Guide 3, tip side`, `Ferrule of Upper middle`, `Winding check`. */
export function wrapName(id: string): string {
  const [kind, ...of] = id.split('/');
  if (kind === 'ferrule') return `Ferrule of ${of.join('/')}`;
  const [guide, side] = kind === 'foot' ? of : [undefined, of[0]];
  const name = guide === undefined ? (plain[kind] ?? kind) : `Guide ${guide}`;
  return side ? `${name}, ${side} side` : name;
}

const plain: Record<string, string> = { 'tip-top': 'Tip-top', check: 'Winding check', keeper: 'Keeper' };

/** `Guide 8, tip side (120° left)`; `round`: where each guide stands, from the tip down. */
export function roundWrapName(id: string, round: readonly (string | undefined)[] = []): string {
  const words = roundOfWrap(id, round);
  return words ? `${wrapName(id)} (${words})` : wrapName(id);
}

/** Where the guide of a foot's wrap stands round the blank. */
export function roundOfWrap(id: string, round: readonly (string | undefined)[]): string | undefined {
  const [kind, guide] = id.split('/');
  return kind === 'foot' ? round[Number(guide) - 1] : undefined;
}
