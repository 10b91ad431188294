import { Button } from 'react-aria-components';
import { documentSchemas, type habitCollections } from '../../record/schema.ts';
import { useBuild } from '../read/build-context.ts';
import { useSay } from '../read/messages.tsx';
import { useShop } from '../read/shop.tsx';

/** What this build says of its own becomes what the shop does in every build that says nothing. */
export function KeepHabit({ collection }: { collection: (typeof habitCollections)[number] }) {
  const { single } = useBuild();
  const { write } = useShop();
  const say = useSay();
  const known = documentSchemas.shop[collection].fields;
  const own = Object.entries(single(collection).fields).filter(([field]) => field in known);
  const keep = () => {
    const [finding] = write(
      'keepHabit',
      own.map(([field, value]) => ({ path: [collection, '-', field], value })),
    );
    say(
      finding
        ? `Nothing was kept: ${finding.message}`
        : `${own.length} ${own.length === 1 ? 'value is' : 'values are'} now the shop’s default; see Settings.`,
    );
  };
  return (
    <div>
      <Button className="button" isDisabled={own.length === 0} onPress={keep}>
        Use as the shop’s default
      </Button>
    </div>
  );
}
