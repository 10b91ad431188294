/** What to say of letters that no font has; empty where there are none. */
export function missingWords(missing: readonly string[]): string {
  if (missing.length === 0) return '';
  const [shown, more] = [missing.slice(0, 12).join(' '), missing.length > 12 ? ' …' : ''];
  return `Fairbend has no font for ${shown}${more}. Empty boxes stand in their places: write it with other letters, or add a font (README, “Any alphabet”), and print again.`;
}
