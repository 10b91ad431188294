import { Button } from 'react-aria-components';
import type { Conflict } from '../../record/conflicts.ts';
import { deviceFamily, type Operation } from '../../record/operation.ts';
import { fieldName, shownValue } from '../history/history-words.ts';
import { useCurrency } from '../money/use-currency.ts';
import { useBuild } from '../read/build-context.ts';
import { useShop } from '../read/shop.tsx';

/** Where two devices changed one field apart: both values with their times, until somebody chooses. */
export function ConflictNotices() {
  const { conflicts } = useBuild();
  return conflicts.map((conflict) => (
    <ConflictNotice key={`${conflict.standing.id} ${conflict.other.id}`} conflict={conflict} />
  ));
}

function ConflictNotice({ conflict }: { conflict: Conflict }) {
  const { path, standing, other } = conflict;
  return (
    <fieldset aria-label={`Two values of ${fieldName(path)}`}>
      <p>Two devices changed “{fieldName(path)}”, neither knowing of the other. Both are kept. Choose one:</p>
      {[standing, other].map((operation) => (
        <Choice key={operation.id} conflict={conflict} operation={operation} />
      ))}
    </fieldset>
  );
}

function Choice({ conflict, operation }: { conflict: Conflict; operation: Operation }) {
  const { document, store } = useBuild();
  const { system } = useShop();
  const currency = useCurrency();
  const { path, value, device, at } = operation;
  const here = deviceFamily(device) === deviceFamily(store.device);
  return (
    <p>
      <Button className="button" onPress={() => store.choose(conflict, value)}>
        {shownValue(path, value, { document, system, currency })}
      </Button>{' '}
      <span className="quiet">
        {here ? 'written here' : 'written on another device'}, {new Date(at).toLocaleString()} by its own
        clock
      </span>
    </p>
  );
}
