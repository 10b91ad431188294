import { Button } from 'react-aria-components';
import type { BagGuide, Straightness } from '../../../engine/guides/bag-sorting.ts';
import { rowChanges } from '../../../record/operation.ts';
import { straightnesses } from '../../../record/read-guide-set.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';

const classWords: Record<Straightness, string> = {
  straight: 'straight',
  slight: 'slightly out',
  bent: 'bent',
};

/** One tap per guide: its size and how straight its feet look along the bore. */
export function BagPart({ bag, sizes }: { bag: readonly BagGuide[]; sizes: readonly string[] }) {
  const { write, newRowId } = useBuild();
  const add = (size: string, straightness: Straightness, reject?: string) => {
    const id = newRowId();
    write('addToBag', [
      ...rowChanges('bag', id, { order: bag.length, size, straightness }),
      ...(reject ? [{ path: ['bag', id, 'reject'] as const, value: reject }] : []),
    ]);
  };
  const takeBack = () => {
    const last = bag.at(-1);
    if (last) write('removeFromBag', [{ path: ['bag', last.id, 'gone'], value: true }]);
  };
  return (
    <Part
      folded
      holds={['bag']}
      title="The bag"
      aside="by eye: look along the bore, tap what you see, lay it down in order"
      tools={
        <Button className="plain" isDisabled={bag.length === 0} onPress={takeBack}>
          Take the last one back
        </Button>
      }
    >
      <Table
        label="Guides in the bag"
        at="bag"
        className="stacked"
        heads={['Size', ...straightnesses.map((one) => classWords[one]), 'cracked, twisted, rough']}
      >
        {sizes.map((size) => (
          <tr key={size}>
            <th scope="row">{size}</th>
            {straightnesses.map((one) => (
              <td key={one} data-label={classWords[one]}>
                <Button className="button" onPress={() => add(size, one)}>
                  + <span className="visually-hidden">{`${classWords[one]}, size ${size}`}</span>
                </Button>{' '}
                {numbersOf(
                  bag,
                  (guide) =>
                    guide.size === size && guide.straightness === one && !guide.measured && !guide.reject,
                )}
              </td>
            ))}
            <td data-label="cracked, twisted, rough">
              <Button
                className="button"
                onPress={() => add(size, 'bent', 'cracked plating, a twist or a rough ring')}
              >
                + <span className="visually-hidden">put aside, size {size}</span>
              </Button>{' '}
              {numbersOf(bag, (guide) => guide.size === size && guide.reject !== undefined)}
            </td>
          </tr>
        ))}
      </Table>
    </Part>
  );
}

/** `1, 4`: numbers in the bag of those that fit. */
function numbersOf(bag: readonly BagGuide[], fits: (guide: BagGuide) => boolean): string {
  return bag.flatMap((guide, index) => (fits(guide) ? [index + 1] : [])).join(', ');
}
