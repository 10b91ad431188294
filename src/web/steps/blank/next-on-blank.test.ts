import { describe, expect, it } from 'vitest';
import { doubtAt, stopAt } from '../../../engine/bench/bench-finding.ts';
import type { Row } from '../../../record/document.ts';
import type { FieldValue } from '../../../record/schema.ts';
import { type BlankState, nextOnBlank } from './next-on-blank.ts';

const m = (si: number) => ({ si, text: `${si * 1000} mm` });
const row = (id: string, fields: Record<string, FieldValue> = {}): Row => ({ id, fields });
const whole = (id: string, name: string, joint: Record<string, FieldValue> = {}) =>
  row(id, { name, length: m(1.1), mass: { si: 0.01, text: '10 g' }, ...joint });
const complete: BlankState = {
  sections: [whole('a', 'tip', { joint: 'sleeve', overlap: m(0.03) }), whole('b', 'butt')],
  diameters: ['a', 'b'].map((section) => row(`d${section}`, { section, outside: m(0.004) })),
  weighedWhole: false,
  stands: [],
  setups: [
    {
      setup: row('s', { name: 'Whole blank level', clampFromTip: m(2.5) }),
      tests: [
        {
          test: row('t', { hung: { si: 0.05, text: '50 g' } }),
          readings: [row('r', { fromTip: m(0.3), drop: m(0.2) })],
        },
      ],
    },
  ],
  findings: [],
  waits: () => false,
  show: (_, field) => (field === 'fromTip' ? '12 in' : '98 1/2 in'),
};
const without = (index: number, field: string): BlankState => ({
  ...complete,
  sections: complete.sections.map((section, at) =>
    at === index ? row(section.id, { ...section.fields, [field]: null }) : section,
  ),
});

describe('what to do next on the bench', () => {
  it('is done when nothing is missing and nothing is odd', () => {
    expect(nextOnBlank(complete).done).toBe(true);
  });
  it('begins with the sections', () => {
    expect(nextOnBlank({ ...complete, sections: [] }).words).toMatch(/how many sections/);
  });
  it.each([
    [1, 'length', 'sections/b/length', /whole length of butt/],
    [0, 'overlap', 'sections/a/overlap', /how deep tip and butt go together/],
    [1, 'mass', 'sections/b/mass', /Weigh butt/],
  ])('section %i without its %s is sent to that field', (index, field, at, words) => {
    const next = nextOnBlank(without(index, field));
    expect(next.at).toBe(at);
    expect(next.words).toMatch(words);
  });
  it('a spigot is asked for its gap, not for an overlap', () => {
    const [tip, butt] = complete.sections;
    const spigot = row('a', { ...tip.fields, joint: 'spigot', overlap: null });
    expect(nextOnBlank({ ...complete, sections: [spigot, butt] }).at).toBe('sections/a/spigotGap');
  });
  it('a blank weighed whole needs no section on the scale', () => {
    expect(nextOnBlank({ ...without(1, 'mass'), weighedWhole: true }).done).toBe(true);
  });
  it('names the weight and the station of the first drop still to be read', () => {
    const [{ setup, tests }] = complete.setups;
    const open = row('r2', { fromTip: m(0.3) });
    const setups = [{ setup, tests: [{ test: tests[0].test, readings: [...tests[0].readings, open] }] }];
    const next = nextOnBlank({ ...complete, setups });
    expect(next.words).toBe(
      'Whole blank level. Hang 50 g and wait until it is still, then read the drop at 12 in.',
    );
    expect(next.at).toBe('readings/r2/drop');
  });
  it('says where to clamp before the first reading of a set-up, and not again', () => {
    const [{ setup, tests }] = complete.setups;
    const open = (id: string) => row(id, { fromTip: m(0.3) });
    const nextWith = (readings: Row[]) =>
      nextOnBlank({ ...complete, setups: [{ setup, tests: [{ ...tests[0], readings }] }] }).words;
    expect(nextWith([open('r1'), open('r2')])).toMatch(
      /^Whole blank level. Clamp it 98 1\/2 in from the tip. Hang/,
    );
    expect(nextWith([tests[0].readings[0], open('r2')])).toMatch(/^Whole blank level. Hang/);
  });
  it('a weight that waits for bound ferrules leads to their tick', () => {
    const [{ setup, tests }] = complete.setups;
    const open = row('r2', { fromTip: m(0.3) });
    const setups = [{ setup, tests: [{ test: tests[0].test, readings: [open] }] }];
    const next = nextOnBlank({ ...complete, setups, waits: (test) => test.id === 't' });
    expect(next.words).toMatch(/Bind the sleeve ferrules .* before you hang 50 g/);
    expect(next.at).toBe('blank/-/ferrulesBound');
    expect(nextOnBlank({ ...complete, waits: () => true }).done).toBe(true);
  });
  it('a reading set aside is not asked for', () => {
    const [{ setup, tests }] = complete.setups;
    const aside = row('r2', { fromTip: m(0.3), setAside: true });
    expect(
      nextOnBlank({ ...complete, setups: [{ setup, tests: [{ ...tests[0], readings: [aside] }] }] }).done,
    ).toBe(true);
  });
  it('what stops comes before what is only missing on the bench, a doubt comes last', () => {
    const deep = stopAt('sections/a/overlap', 'bench/overlap-over-section', {
      upper: 'tip',
      lower: 'butt',
      overlapM: 2,
      shorterM: 1,
    });
    const odd = doubtAt('readings/r/drop', 'bench/drops-jump', { upperM: 0, lowerM: 0.1, dropM: 0.2 });
    expect(nextOnBlank({ ...complete, setups: [], findings: [deep] }).at).toBe('sections/a/overlap');
    expect(nextOnBlank({ ...complete, findings: [odd] })).toMatchObject({
      words: 'Look again:',
      finding: odd,
    });
  });
});
