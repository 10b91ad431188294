import type { LeadAsked } from '../engine/layout/verdict.ts';

export const unreadInWords =
  'Nothing was read yet, and diameters do not tell which other marks would be better.';

/**
 * `Other marks are better on 73 of 100 blanks that fit your readings. 80 of 100 are wanted. On 11 they are worse by over 3 %.`
 */
export function leadInWords({ better, worse, of, wanted, oneHold }: LeadAsked): string {
  const lead = `Other marks are better on ${better} of ${of} blanks that fit your readings.`;
  const lost = `On ${worse} they are worse by over 3 %`;
  if (100 * better >= wanted * of) return `${lead} ${lost}, and that weighs more.`;
  const asked = `${wanted} of 100 are wanted`;
  return `${lead} ${oneHold ? `With the clamp in one place, ${asked}` : asked}. ${lost}.`;
}
