import { expect, test } from 'vitest';
import { blankBends, blankStrains, blankThirds } from '../../../reference/cases/blanks.ts';
import { assertGroup } from '../../../reference/cases/check.ts';
import {
  elasticaDead,
  elasticaFollower,
  elasticaMoment,
  elasticaPrinted,
} from '../../../reference/cases/elastica.ts';
import { greenhill, heavyRods } from '../../../reference/cases/heavy.ts';
import { excessDrop, lineThroughRings } from '../../../reference/cases/line.ts';
import { taperLarge, taperSmall } from '../../../reference/cases/taper.ts';
import { refined } from '../../../reference/cases/unit-rod.ts';

const groups = {
  'dead load at the tip': elasticaDead,
  'a printed elastica table': elasticaPrinted,
  'a force that follows the tip': elasticaFollower,
  'an end moment bends a circle': elasticaMoment,
  'heavy cantilevers': heavyRods,
  'the upright rod falls at Greenhill’s weight': greenhill,
  'tapers under large loads': taperLarge,
  'tapers under small loads': taperSmall,
  'line through rings': lineThroughRings,
  'two invented blanks': blankBends,
  'the weight for a third of the length': blankThirds,
  'overload strain': blankStrains,
};

// as shipped they are asserted with the report: verification.test.ts
test.each(Object.entries(groups))(
  '%s: with eleven times the elements, within a hundredth of that',
  (_, group) => {
    assertGroup(group(refined));
  },
);

test('with ever more rings on the axis the line becomes the dead tip force, second order in spacing', () => {
  const drops = [4, 8, 16, 32].map((rings) => excessDrop(rings, refined));
  expect(drops[0]).toBeCloseTo(0.002925, 6);
  for (let k = 1; k < drops.length; k++) expect(drops[k - 1] / drops[k]).toBeCloseTo(4, 0);
});
