/** What can be unknown about a guide's size, and what says it: ids and sizes as they are written. */
export interface SizeKinds {
  'kinds/size-unknown': { kind: string; size: string; example: string };
  /** Its ring's height was measured, its feet and mass were not. */
  'kinds/size-by-height': { kind: string; size: string; like: string };
}
