import { plainMoney, readMoney } from '../../engine/quote/money.ts';
import type { Path } from '../../record/operation.ts';
import { writeMoney } from '../../words/intl.ts';
import { useCurrency } from '../read/use-currency.ts';
import { DraftField, type Typed } from './draft-field.tsx';
import { useFieldPlace } from './place.ts';

export interface MoneyFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  placeholder?: string;
}

/** An amount in the shop's currency, kept in its smallest unit. */
export function MoneyField({ label, path, labelHidden, placeholder }: MoneyFieldProps) {
  const currency = useCurrency();
  const stored = useFieldPlace().value(path);
  const shown = typeof stored === 'number' ? plainMoney(stored, currency) : '';
  const read = (draft: string): Typed => {
    if (draft.trim() === '') return { ok: true, value: null };
    const value = readMoney(draft, currency);
    const trouble = `“${draft}” is no amount. Write it as ${plainMoney(12_50, currency)}.`;
    return value === undefined ? { ok: false, trouble } : { ok: true, value };
  };
  const echo = (text: string) => {
    const typed = text === shown ? undefined : read(text);
    return typed?.ok && typed.value !== null ? writeMoney(typed.value, currency) : undefined;
  };
  return (
    <DraftField
      label={label}
      path={path}
      labelHidden={labelHidden}
      placeholder={placeholder}
      shown={shown}
      read={read}
      unit={<span>{currency.code}</span>}
      echo={echo}
    />
  );
}
