import type { Bench, Joint, Setup } from '../../engine/bench/bench.ts';
import { rows, singleRow } from '../../record/document.ts';
import type { DocumentState } from '../../record/operation.ts';
import { flagOf, numberOf, siOf, textOf } from './values.ts';

/** The bench from the record's rows, until the record has its own reader. */
export function interimBench(document: DocumentState): Bench {
  const secs = rows(document, 'sections');
  return {
    material: (textOf(singleRow(document, 'blank'), 'material') ?? 'unknown') as Bench['material'],
    massKg: siOf(singleRow(document, 'blank'), 'mass'),
    ferrulesBound: flagOf(singleRow(document, 'blank'), 'ferrulesBound'),
    sections: secs.every((s) => siOf(s, 'length') !== undefined)
      ? secs.map((s, i) => ({
          id: s.id,
          name: textOf(s, 'name') ?? `section ${i + 1}`,
          lengthM: siOf(s, 'length') ?? 0,
          massKg: siOf(s, 'mass'),
          balanceFromOwnTipM: siOf(s, 'balanceFromOwnTip'),
          diameters: rows(document, 'diameters')
            .filter((d) => d.fields.section === s.id && siOf(d, 'outside') !== undefined)
            .map((d) => ({
              id: d.id,
              fromOwnTipM: siOf(d, 'fromOwnTip') ?? 0,
              outsideM: siOf(d, 'outside') ?? 0,
            })),
          joint:
            i < secs.length - 1
              ? ({
                  kind: textOf(s, 'joint') ?? 'sleeve',
                  overlapM: siOf(s, 'overlap') ?? 0,
                  gapM: siOf(s, 'spigotGap') ?? 0,
                  plugM: siOf(s, 'spigotLength') ?? 0,
                  stiffnessRatio: numberOf(s, 'jointStiffness'),
                } as Joint)
              : undefined,
        }))
      : [],
    setups: rows(document, 'setups').map(
      (s) =>
        ({
          kind: 'clamp',
          id: s.id,
          name: textOf(s, 'name') ?? '',
          nominalAngleRad: siOf(s, 'nominalAngle') ?? 0,
          clampFromTipM: siOf(s, 'clampFromTip') ?? 0,
          clampHeightM: siOf(s, 'clampHeight'),
          turnedRad: siOf(s, 'turned') ?? 0,
          edge: textOf(s, 'edge') ?? 'axis',
          sigmaM: siOf(s, 'sigma') ?? 0.002,
          tiltSigmaRad: 0.0175,
          tests: rows(document, 'tests')
            .filter((t) => t.fields.setup === s.id)
            .map((t) => ({
              id: t.id,
              hungKg: siOf(t, 'hung') ?? 0,
              hungFromTipM: siOf(t, 'hungFromTip') ?? 0,
              readings: rows(document, 'readings')
                .filter(
                  (r) =>
                    r.fields.test === t.id && siOf(r, 'drop') !== undefined && r.fields.setAside !== true,
                )
                .map((r) => ({ id: r.id, fromTipM: siOf(r, 'fromTip') ?? 0, dropM: siOf(r, 'drop') ?? 0 })),
            })),
        }) as Setup,
    ),
    handle: {
      gripFrontFromButtM: siOf(singleRow(document, 'handle'), 'gripFront') ?? 0.26,
      reelFromButtM: siOf(singleRow(document, 'handle'), 'reelFromButt') ?? 0.06,
      reelOffsetM: siOf(singleRow(document, 'handle'), 'reelOffset') ?? 0.05,
    },
  };
}
