import type { DeliveredRod } from '../../../sheets/delivery-sheets.ts';
import { dayWords } from '../../../words/intl.ts';
import { rodFacts } from '../../../words/rod-facts.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';

/** What the papers that go with a rod say of it; the revision is added when it is frozen. */
export function useDeliveredRod(): () => Omit<DeliveredRod, 'revision'> {
  const { single, title } = useBuild();
  const { system, value } = useShop();
  const { blank } = useBench();
  return () => {
    const about = single('about');
    const shopName = value(['rates', '-', 'shopName']);
    return {
      title,
      customer: textOf(about, 'customer') ?? '',
      shop: typeof shopName === 'string' ? shopName : '',
      facts: rodFacts(blank, textOf(about, 'lineWeight') ?? '', system),
      date: dayWords(textOf(single('delivery'), 'deliveredAt') ?? new Date().toISOString()),
    };
  };
}
