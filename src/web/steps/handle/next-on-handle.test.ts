import { expect, test } from 'vitest';
import { type HandleState, nextOnHandle } from './next-on-handle.ts';

const set: HandleState = {
  stopped: undefined,
  assumedGripFront: undefined,
  sided: true,
  open: [],
  glued: false,
  tipTopGlued: false,
  tested: true,
};

test('until the rod was loaded the handle leads to the layout', () => {
  expect(nextOnHandle({ ...set, assumedGripFront: '10 in' })).toMatchObject({
    at: 'handle/-/gripFront',
    goOn: 'layout',
  });
  expect(nextOnHandle({ ...set, tested: false }).goOn).toBe('layout');
});

test('then it asks for line side, the points before glue, the glue, and leads to the wraps', () => {
  const open = ['guidesOnLine', 'tipTopOnLine'];
  expect(nextOnHandle({ ...set, sided: false, open }).goOn).toBe('blank/spine');
  expect(nextOnHandle({ ...set, open }).at).toBe('handle/-/guidesOnLine');
  expect(nextOnHandle(set).at).toBe('handle/-/gluedAt');
  const glued = nextOnHandle({ ...set, glued: true });
  expect(glued).toMatchObject({ words: expect.stringMatching(/tip-top/), goOn: 'wraps' });
  expect(nextOnHandle({ ...set, glued: true, tipTopGlued: true }).words).not.toMatch(/tip-top/);
});
