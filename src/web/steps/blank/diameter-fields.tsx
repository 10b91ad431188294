import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import { showQuantity } from '../../../words/quantity-text.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { changesForPlace, type DiameterPlace, diameterPlaces } from './diameter-places.ts';

/** Outside diameters of a section, each with its place from the section's own tip-side end. */
export function DiameterFields({ section, name }: { section: Row; name: string }) {
  const { rows, write, newRowId } = useBuild();
  const { system } = useShop();
  const places = diameterPlaces(section, rows('diameters'), system);
  if (places.length === 0) {
    return <p className="aside small">Diameters: give the length first, the places follow from it.</p>;
  }
  const add = () => {
    const id = newRowId();
    write('addDiameter', [{ path: ['diameters', id, 'section'], value: section.id }]);
  };
  return (
    <fieldset>
      <legend className="visually-hidden">Outside diameters, from this section’s tip-side end</legend>
      <div className="diameter-heads" aria-hidden="true">
        <span>at</span>
        <span>diameter</span>
      </div>
      <div>
        {places.map((place) => (
          <OneDiameter key={place.id} section={section} place={place} name={name} />
        ))}
      </div>
      <Button className="plain small screen-only" onPress={add}>
        Another diameter
      </Button>
    </fieldset>
  );
}

function OneDiameter({ section, place, name }: { section: Row; place: DiameterPlace; name: string }) {
  const { reader } = useShop();
  const at = place.fromOwnTip ? showQuantity(place.fromOwnTip, 'length', reader.units).text : '';
  return (
    <div className="diameter">
      {place.measured ? (
        <Field
          label={`Place of a diameter of ${name}`}
          labelHidden
          path={['diameters', place.id, 'fromOwnTip']}
          passedOver
        />
      ) : (
        <p className="diameter-place">
          <Figure text={at} />
        </p>
      )}
      <Field
        label={`Diameter of ${name} at ${at || 'this place'}`}
        labelHidden
        path={['diameters', place.id, 'outside']}
        also={changesForPlace(section, place)}
      />
    </div>
  );
}
