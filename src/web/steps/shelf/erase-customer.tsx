import { useState } from 'react';
import { Button } from 'react-aria-components';
import { api } from '../../store/open-document.ts';

interface EraseCustomerProps {
  id: string;
  customer: string;
  attempt(work: () => Promise<unknown>, done: string): Promise<void>;
}

/** Takes the customer's name and contact out of a build for good, history included; asked once more before. */
export function EraseCustomer({ id, customer, attempt }: EraseCustomerProps) {
  const [asked, setAsked] = useState(false);
  if (!asked)
    return (
      <Button className="plain" onPress={() => setAsked(true)}>
        Erase the customer<span className="visually-hidden"> {customer}</span>
      </Button>
    );
  const erase = () =>
    attempt(() => api.eraseCustomer(id), 'Erased, in the history too. Older backups still hold it.');
  return (
    <p role="alert">
      {customer} and the contact will be gone for good, from the history too. This cannot be undone. Backups
      made before still hold them.{' '}
      <Button className="button" onPress={() => void erase().then(() => setAsked(false))}>
        Erase
      </Button>{' '}
      <Button className="plain" onPress={() => setAsked(false)}>
        Leave it
      </Button>
    </p>
  );
}
