import type { RotationRequest } from '../../../engine/rotation/request.ts';
import { unrolled } from '../../../engine/rotation/unrolled.ts';
import { bare } from '../../../words/places.ts';
import { degrees } from '../../../words/turning.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** The drawing in figures: what was read at each step beside the fitted curve there. */
export function TurnsTable({ request, name }: { request: RotationRequest; name: string }) {
  const { writer, system } = useShop();
  const unit = system === 'mm' ? 'mm' : 'in';
  const curves = unrolled(request, Math.PI / 180);
  if (!curves) return null;
  const written = (lengthM: number) => bare(writer.calliper(lengthM));
  return (
    <details className="figures-twin">
      <summary>The drawing in figures</summary>
      <Table
        label={`Turns of ${name} in figures`}
        spoken={`Bow and stiffness of ${name} by angle, ${unit}`}
        heads={['facing down', `bow, ${unit}`, 'curve ±', `second less first load, ${unit}`, 'curve ±']}
        rows={curves.points.map(({ turnRad, bowM, differenceM, odd }) => {
          const at = Math.round((turnRad * 180) / Math.PI);
          const place = ((at % 360) + 360) % 360;
          const [bow, difference] = [curves.bow[place], curves.difference[place]];
          return [
            `${degrees(turnRad)}${odd ? ' left out' : ''}`,
            written(bowM),
            `${written(bow.valueM)} ±${written(bow.plusMinusM)}`,
            written(differenceM),
            `${written(difference.valueM)} ±${written(difference.plusMinusM)}`,
          ];
        })}
      />
    </details>
  );
}
