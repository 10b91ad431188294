import { describe, expect, it } from 'vitest';
import type { Row } from '../../../record/document.ts';
import { changesForLength, changesForPlace, diameterPlaces } from './diameter-places.ts';

const inches = (value: number) => ({ si: value * 0.0254, text: `${value} in` });
const section: Row = { id: 's', fields: { length: inches(27.9) } };
const measured = (id: string, at: number): Row => ({
  id,
  fields: { section: 's', fromOwnTip: inches(at), outside: { si: 0.003, text: '3 mm' } },
});

describe('where diameters are measured', () => {
  it('an unmeasured section is given both ends and the middle, as a tape finds them', () => {
    const places = diameterPlaces(section, [], 'inch');
    expect(places.map(({ fromOwnTip }) => fromOwnTip?.text)).toEqual(['0 in', '14 in', '27.9 in']);
    expect(diameterPlaces(section, [], 'mm').map(({ fromOwnTip }) => fromOwnTip?.text)).toEqual([
      '0 mm',
      '350 mm',
      '27.9 in',
    ]);
  });
  it('a suggested place keeps its row, so that two devices write the same one', () => {
    const ids = () => diameterPlaces(section, [], 'inch').map(({ id }) => id);
    expect(ids()).toEqual(ids());
    expect(diameterPlaces(section, [measured('s-d0', 0)], 'inch').map(({ id }) => id)).toEqual([
      's-d0',
      's-d1',
      's-d2',
    ]);
  });
  it('a place measured near a suggested one takes its stead', () => {
    const places = diameterPlaces(section, [measured('own', 13.5)], 'inch');
    expect(places.map(({ id }) => id)).toEqual(['s-d0', 'own', 's-d2']);
  });
  it('the first value at a place writes its section and station with it, later ones do not', () => {
    const [fresh] = diameterPlaces(section, [], 'inch');
    expect(changesForPlace(section, fresh).map(({ path }) => path[2])).toEqual(['section', 'fromOwnTip']);
    const [kept] = diameterPlaces(section, [measured('s-d0', 0)], 'inch');
    expect(changesForPlace(section, kept)).toEqual([]);
  });
  it('the end of a length typed without its unit has one', () => {
    const length = { si: 35.5 * 0.0254, text: '35 1/2' };
    const places = diameterPlaces({ id: 's', fields: { length } }, [], 'inch');
    expect(places.map(({ fromOwnTip }) => fromOwnTip?.text)).toEqual(['0 in', '18 in', '35 1/2 in']);
  });
  it('half an inch reads as a fraction, as every tape in inches does', () => {
    const [, middle] = diameterPlaces({ id: 's', fields: { length: inches(49) } }, [], 'inch');
    expect(middle.fromOwnTip).toEqual({ si: 24.5 * 0.0254, text: '24 1/2 in' });
  });
  it('a corrected length takes the places it had filled in along, and leaves those set by hand', () => {
    const filled = diameterPlaces(section, [], 'inch').map(({ id, fromOwnTip }): Row => {
      return { id, fields: { section: 's', fromOwnTip: fromOwnTip ?? null } };
    });
    const moved = (rows: Row[]) =>
      changesForLength(section, rows, inches(29)).map(({ path: [, id], value }) => [id, value]);
    expect(moved(filled)).toEqual([
      ['s-d1', { si: 0.3683, text: '14 1/2 in' }],
      ['s-d2', inches(29)],
    ]);
    expect(moved([measured('s-d1', 13), measured('own', 14), measured('s-d2', 27)])).toEqual([]);
    expect(changesForLength(section, filled, null)).toEqual([]);
  });
  it('without a length there is no place', () => {
    expect(diameterPlaces({ id: 's', fields: {} }, [], 'inch')).toEqual([]);
  });
});
