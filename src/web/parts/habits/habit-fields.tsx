import { wrapDefaults } from '../../../engine/wraps/wrap-choices.ts';
import { limitFields } from '../../../record/fields/limit-fields.ts';
import { testWrap } from '../../../record/fields/wraps.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { useFieldPlace } from '../../fields/place.ts';
import { useShop } from '../../read/shop.tsx';

/** Fields that a build and its shop have in common; an empty one says what holds and whose word it is. */

/** The product's data sheet, typed once. */
export function ProductFields() {
  const times = ['potLife', 'turnFor', 'recoatFrom', 'recoatUntil', 'flexAfter', 'fishAfter', 'halvesPerC'];
  return <FieldsRow of="finish" names={['product', 'statedAtC', ...times]} />;
}

/** How one build is mixed, in the room it stands in. */
export function MixFields(by: MixedBy) {
  return (
    <>
      <FieldsRow of="finish" names={['roomC', 'coatsPlanned']} />
      <RatioFields {...by} />
    </>
  );
}

/** Volume or mass, as the fields of these names hold it. */
interface MixedBy {
  mixBy: unknown;
  ratioBy: unknown;
}

/** How this shop mixes. */
export function MixHabitFields(by: MixedBy) {
  return (
    <>
      <RatioFields {...by} />
      <FieldsRow of="finish" names={['coatsPlanned', ...coatDetails]} />
    </>
  );
}

function RatioFields({ mixBy, ratioBy }: MixedBy) {
  const densities = mixBy === 'mass' || ratioBy === 'mass' ? ['densityA', 'densityB'] : [];
  return (
    <FieldsRow
      of="finish"
      names={['partA', 'partB', 'ratioBy', 'mixBy', ...densities, 'measureStep']}
      units={{ measureStep: mixBy === 'mass' ? 'g' : 'ml' }}
    />
  );
}

/** How thick a coat is taken to be, how long it takes, and how near a mix must be. */
export function CoatDetailFields() {
  return <FieldsRow of="finish" names={coatDetails} />;
}
export const coatDetails = [
  'coatThickness',
  'footHeight',
  'minutesPerWrap',
  'ratioErrorPercent',
  'brushedPercent',
  'mixTimes',
];

/** Grip, seat, butt and keeper as bought; each typed once. What a fly rod calls its grip is other rods' foregrip. */
export function HandlePartFields({ foregrip }: { foregrip: boolean }) {
  const grip = ['gripShape', 'gripLength', 'gripBore', 'gripMass'];
  const labels = foregrip ? Object.fromEntries(grip.map((name) => [name, foregripLabels[name]])) : undefined;
  const seat = ['seatLength', 'seatBore', 'seatMass'];
  const rear = ['rearGripLength', 'rearGripBore', 'rearGripMass', 'secondGripLength', 'secondGripMass'];
  const rest = ['fightingButt', 'keeperAhead', 'keeperMass', 'reach'];
  return (
    <FieldsRow
      of="handle"
      names={[...grip, ...(foregrip ? ['gripDiameter'] : []), ...seat, ...rear, ...rest]}
      labels={labels}
    />
  );
}
const foregripLabels: Record<string, string> = {
  gripShape: 'Foregrip’s shape',
  gripLength: 'Foregrip’s length',
  gripBore: 'Foregrip’s bore',
  gripMass: 'Foregrip’s mass',
};

/** How this shop fits and glues. */
export function HandleHabitFields() {
  const arbors = ['arborCount', 'arborWidth', 'glueLine', 'reamShort', 'glueCure', 'arborShort', 'tapedGap'];
  const rooms = ['checkLeast', 'checkMost', 'tubeLeast', 'tubeMost'];
  return <FieldsRow of="handle" names={[...arbors, ...rooms, 'seatLock', 'keeperLength', 'keeperFeet']} />;
}

/** What every layout of the shop is judged by; an empty field leaves what is usual for that rod. */
export function LayoutHabitFields() {
  const limits = Object.values(limitFields).map(({ field }) => field);
  const line = ['buttAngle', 'tautLine', 'frictionLowest', 'frictionHighest', 'knot'];
  return <FieldsRow of="layout" names={[...limits, 'ferruleClear', ...line, 'intervals']} />;
}

/** How straight is straight enough. */
export function SortingFields() {
  const measured = ['ofDiameterPercent', 'mostTolerances', 'usualOffset', 'usualAngle'];
  return <FieldsRow of="sorting" names={[...measured, 'straightOut', 'slightOut', 'bentOut']} />;
}

/** How wraps are laid. */
export function WrapHabitFields() {
  const lengths = ['startBeforeFoot', 'lockTurns', 'trimTurns', 'checkWrap', 'tipWrap'];
  return (
    <>
      <TestWrapFields />
      <FieldsRow of="wraps" names={lengths} />
      <h3>Over a foot, by section</h3>
      <FieldsRow of="wraps" names={['wrapTip', 'wrapMiddle', 'wrapButt', 'wrapStripping']} />
      <h3>Ferrules and underwraps</h3>
      <FieldsRow of="wraps" names={['ferruleWraps', 'ferruleDiameters', 'ferruleEdge', 'underwrapBeyond']} />
      <Field path={['wraps', '-', 'underwrap']} />
      <h3>Spools</h3>
      <FieldsRow of="wraps" names={['spoolLength', 'tagPerWrap', 'reservePercent']} />
    </>
  );
}

/** A count is kept with the width it was made over. */
function TestWrapFields() {
  const place = useFieldPlace();
  const { system } = useShop();
  const [count, width] = [['wraps', '-', 'turnsCounted'] as const, ['wraps', '-', 'turnsOver'] as const];
  const isCounted = place.value(count) !== null;
  const hasWidth = (place.value(width) ?? place.habit?.(width) ?? null) !== null;
  const usual = isCounted && !hasWidth ? testWrap.inch : testWrap[system];
  return (
    <div className="fields-row" data-group="">
      <Field
        path={count}
        usual={Math.round(usual.si / wrapDefaults.laidWidthM)}
        also={isCounted || hasWidth ? undefined : [{ path: width, value: usual }]}
      />
      <Field path={width} usual={usual.si} />
    </div>
  );
}

/** Each thread's colour for the drawing, and its name and lot for the day it has to be matched. */
export function ThreadFields({ underwrap, lots }: { underwrap: boolean; lots: boolean }) {
  const told = ['Colour', 'Name', ...(lots ? ['Lot'] : [])];
  return (
    <>
      {['thread', 'trim'].map((part) => (
        <FieldsRow key={part} of="wraps" names={told.map((what) => `${part}${what}`)} />
      ))}
      {underwrap && <FieldsRow of="wraps" names={['underwrapColour', 'underwrapName']} />}
    </>
  );
}

/** What only this rod has: its writing, and sections that are wrapped in their own way. */
export function RodWrapFields({ sections }: { sections: readonly { id: string; name: string }[] }) {
  return (
    <>
      <div className="fields-row" data-group="">
        {sections.map(({ id, name }) => (
          <Field key={id} label={`Wraps over feet on ${name}`} path={['sections', id, 'wrapLength']} />
        ))}
      </div>
      <FieldsRow of="wraps" names={['signatureFrom', 'signatureLength', 'signatureText']} />
    </>
  );
}
