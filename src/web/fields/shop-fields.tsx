import { type ReactNode, useMemo } from 'react';
import { useShop } from '../read/shop.tsx';
import { type FieldPlace, FieldPlaceContext } from './place.ts';

/** The fields below show and write what holds for every build of the shop. */
export function ShopFields({ children }: { children: ReactNode }) {
  const { value, write } = useShop();
  const place = useMemo<FieldPlace>(
    () => ({ kind: 'shop', value, trouble: () => undefined, write }),
    [value, write],
  );
  return <FieldPlaceContext value={place}>{children}</FieldPlaceContext>;
}
