/** A document's number as people read it off a label: short enough to type, and enough to find it by. */
export function shortNumber(id: string): string {
  return id
    .replace(/[^a-z0-9]/gi, '')
    .slice(0, 6)
    .toUpperCase();
}
