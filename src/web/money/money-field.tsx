import { useId, useState } from 'react';
import { plainMoney, readMoney, writeMoney } from '../../engine/quote/money.ts';
import type { Path } from '../../record/operation.ts';
import { FieldLine } from '../fields/field-line.tsx';
import { focusNextField } from '../fields/next-field.ts';
import { useFieldPlace } from '../fields/place.ts';
import { useCurrency } from './use-currency.ts';

export interface MoneyFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  placeholder?: string;
}

/** An amount in the shop's currency, kept in its smallest unit. */
export function MoneyField({ label, path, labelHidden, placeholder }: MoneyFieldProps) {
  const id = useId();
  const currency = useCurrency();
  const place = useFieldPlace();
  const [draft, setDraft] = useState<string>();
  const stored = place.value(path);
  const shown = typeof stored === 'number' ? plainMoney(stored, currency) : '';
  const read = draft === undefined || draft.trim() === '' ? null : readMoney(draft, currency);
  const trouble =
    read === undefined ? `“${draft}” is no amount. Write it as ${plainMoney(12_50, currency)}.` : undefined;
  const keep = (): boolean => {
    if (draft === undefined) return true;
    if (read === undefined) return false;
    if (read !== stored) place.write(label.toLowerCase(), [{ path, value: read }]);
    setDraft(undefined);
    return true;
  };
  const echo = typeof read === 'number' ? writeMoney(read, currency) : '';
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      <span className="field-with-unit">
        <input
          id={id}
          data-field=""
          data-path={path.join('/')}
          data-draft={draft !== undefined}
          className="field-input figures"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="next"
          value={draft ?? shown}
          placeholder={placeholder}
          aria-invalid={trouble !== undefined || undefined}
          aria-describedby={`${id}-line`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft(undefined);
            if (event.key === 'Enter' && keep()) focusNextField(event.currentTarget);
          }}
        />
        <span>{currency.code}</span>
      </span>
      <FieldLine id={`${id}-line`} trouble={trouble ?? place.trouble(path)} echo={echo} />
    </div>
  );
}
