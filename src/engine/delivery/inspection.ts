/**
 * What is looked at before a rod leaves, with tolerances a customer would hold it to. Common practice, no source:
 * every line can be changed or struck.
 */
export const inspectionPoints = [
  'straight',
  'guides-line',
  'length',
  'mass',
  'balance',
  'joints',
  'wraps',
  'finish',
  'rings',
  'seat',
  'grip',
  'load',
  'name',
] as const;
export type InspectionPoint = (typeof inspectionPoints)[number];

/** What may be off by how much; a tape in inches is held to its own ticks. */
export function inspectionTolerances(system: 'mm' | 'inch') {
  const inch = 0.0254;
  return {
    guidesLineRad: (2 * Math.PI) / 180,
    lengthM: system === 'mm' ? 0.005 : inch / 4,
    massKg: 0.005,
    balanceM: system === 'mm' ? 0.015 : (5 * inch) / 8,
    wrapsM: 0.0005,
    gripGapM: 0.0002,
  };
}
