/** Short enough for a label, and enough to find it by. */
export function ticketNumber(id: string): string {
  return id.slice(0, 6);
}
