import { Button } from 'react-aria-components';
import type { Row } from '../../../record/document.ts';
import { expectedPale } from '../../../words/expected-drop.ts';
import type { Reader } from '../../../words/field-text.ts';
import { showQuantity } from '../../../words/quantity-text.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { flagOf, quantityOf, siOf } from '../../read/values.ts';

interface ReadingRowProps {
  reading: Row;
  /** The blank's upper edge is read: at the clamp it lies above the level line, and is measured upwards. */
  upperEdge: boolean;
  /** What should be read, downwards [m]. */
  expected: number | undefined;
  /** The weight as typed. */
  hung: string;
  /** Nothing is read before the ferrules are bound. */
  gated: boolean;
}

/** One drop at its station; the station opens to be moved, set aside or removed. */
export function ReadingRow({ reading, upperEdge, expected, hung, gated }: ReadingRowProps) {
  const { reader } = useShop();
  const { write } = useBuild();
  const station = quantityOf(reading.fields.fromTip);
  const atClamp = flagOf(reading, 'atClamp');
  const place = atClamp
    ? 'clamp'
    : station?.si === 0
      ? 'tip'
      : station
        ? showQuantity(station, 'length', reader.units).text
        : 'where?';
  const aside = flagOf(reading, 'setAside');
  const open = siOf(reading, 'drop') === undefined;
  const path = (field: string) => ['readings', reading.id, field] as const;
  return (
    <div className={aside ? 'reading reading-aside' : 'reading'}>
      <details className="reading-place">
        <summary>
          <Figure text={place} />
        </summary>
        <div className="reading-more">
          {atClamp ? (
            <p className="small">
              Right where the blank leaves the clamp. Nothing bends there: what is read shows another edge
              than stated, or a line that is off.
            </p>
          ) : (
            <Field path={path('fromTip')} passedOver />
          )}
          <Button
            className="plain small"
            onPress={() => write('readingAside', [{ path: path('setAside'), value: !aside }])}
          >
            {aside ? 'Count it again' : 'Set it aside'}
          </Button>
          <Button
            className="plain small"
            onPress={() => write('removeReading', [{ path: path('gone'), value: true }])}
          >
            Remove
          </Button>
        </div>
      </details>
      <Field
        label={labelOf(place, hung, atClamp && upperEdge)}
        turned={atClamp && upperEdge}
        labelHidden
        path={path('drop')}
        pale={open && !aside ? paleWords(atClamp && upperEdge, expected, reader) : undefined}
        disabled={gated && open}
      />
      {aside && <p className="reading-note aside small">set aside, not counted</p>}
    </div>
  );
}

function labelOf(place: string, hung: string, upwards: boolean): string {
  return `${upwards ? 'Height above the level line at the clamp' : `Drop at ${place}`}${hung ? ` under ${hung}` : ''}`;
}

/** `about 4 1/2 in`: it stands pale in the field until something was read. */
function paleWords(upwards: boolean, expected: number | undefined, { writer }: Reader): string {
  if (expected === undefined) return upwards ? 'above' : 'drop';
  return expectedPale(upwards ? -expected : expected, writer);
}
