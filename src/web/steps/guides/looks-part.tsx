import { Button, Checkbox } from 'react-aria-components';
import type { BagGuide } from '../../../engine/guides/bag-sorting.ts';
import { isBoughtSingly } from '../../../engine/kinds/guides.ts';
import type { Writer } from '../../../words/writer.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { flagOf, textOf } from '../../read/values.ts';

const looks = [
  { field: 'platingWhole', words: 'plating whole' },
  { field: 'notTwisted', words: 'not twisted' },
  { field: 'ringSmooth', words: 'ring smooth' },
  { field: 'footRamped', words: 'foot ramped', dressing: true },
  { field: 'footFlat', words: 'underside flat', dressing: true },
  { field: 'noBurr', words: 'no burr', dressing: true },
] as const satisfies { field: string; words: string; dressing?: boolean }[];

interface LookedAt {
  collection: 'bag' | 'guides';
  id: string;
  name: string;
  /** How straight it is, in words. */
  straight: string;
  reject?: string;
}

/** What is looked at and done on every single guide, ticked at the bench; what fails is put aside with its reason. */
export function LooksPart({ bag }: { bag: readonly BagGuide[] }) {
  const { rows } = useBuild();
  const { writer } = useShop();
  const stripping = rows('guides').filter((row) => isBoughtSingly(textOf(row, 'kind')));
  const all: LookedAt[] = [
    ...bag.map((guide, index) => ({
      collection: 'bag' as const,
      id: guide.id,
      name: `${index + 1} · ${guide.size}`,
      straight: straightWords(guide, writer),
      reject: guide.reject,
    })),
    ...stripping.map((row) => ({
      collection: 'guides' as const,
      id: row.id,
      name: `stripping ${textOf(row, 'size') ?? ''}`.trim(),
      straight: '',
    })),
  ];
  if (all.length === 0) return null;
  return (
    <Part
      folded
      title="One by one"
      aside="sort by eye first, then the feet: a ground foot cannot be returned; common practice, no source"
    >
      <Table
        label="Each guide looked at"
        className="looks-table stacked-early"
        heads={['Guide', 'Feet', ...looks.map(({ words }) => words), 'All well, or aside']}
      >
        {all.map((one) => (
          <LookRow key={one.id} one={one} />
        ))}
      </Table>
    </Part>
  );
}

function LookRow({ one }: { one: LookedAt }) {
  const { rows, write } = useBuild();
  const row = rows(one.collection).find(({ id }) => id === one.id);
  if (!row) return null;
  const at = (field: string) => [one.collection, one.id, field] as const;
  const looked = looks.every((look) => 'dressing' in look || flagOf(row, look.field));
  const done = looks.every(({ field }) => flagOf(row, field));
  const allWell = () =>
    write(
      'allWell',
      looks.map(({ field }) => ({ path: at(field), value: true })),
    );
  return (
    <tr>
      <th scope="row">{one.name}</th>
      <td className="quiet" data-label="Feet">
        {one.straight}
      </td>
      {looks.map(({ field, words, ...look }) => (
        <td key={field} data-label={words}>
          <Checkbox
            className="flag"
            aria-label={`${words}, guide ${one.name}`}
            isSelected={flagOf(row, field)}
            isDisabled={one.reject !== undefined || ('dressing' in look && !looked && !flagOf(row, field))}
            onChange={(value) => write('lookAtGuide', [{ path: at(field), value }])}
          >
            <span className="flag-box" aria-hidden="true" />
          </Checkbox>
        </td>
      ))}
      <td className="looks-end" data-label="All well, or aside">
        {!done && !one.reject && (
          <Button className="button" onPress={allWell}>
            All well<span className="visually-hidden"> on guide {one.name}</span>
          </Button>
        )}
        {one.collection === 'bag' && (
          <Field label={`Put guide ${one.name} aside`} labelHidden path={at('reject')} />
        )}
      </td>
    </tr>
  );
}

/** `0.003 in, 1.2°` as measured, or the eye's word. */
function straightWords({ measured, straightness }: BagGuide, writer: Writer): string {
  if (!measured) return straightness ?? 'not looked at';
  return `${writer.calliper(measured.offsetM)}, ${((measured.angleRad * 180) / Math.PI).toFixed(1)}°`;
}
