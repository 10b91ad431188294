import type { LeadCounts } from '../engine/sureness/lead.ts';

/** `Other marks are better on 83 of 100 blanks that fit your readings, and worse by over 3 % on 11.` */
export function leadInWords({ better, worse, of }: LeadCounts): string {
  return `Other marks are better on ${better} of ${of} blanks that fit your readings, and worse by over 3 % on ${worse}.`;
}
