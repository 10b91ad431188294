/** Short enough for a label, and enough to find it by. */
export function ticketNumber(id: string): string {
  return id
    .replace(/[^a-z0-9]/gi, '')
    .slice(0, 6)
    .toUpperCase();
}
