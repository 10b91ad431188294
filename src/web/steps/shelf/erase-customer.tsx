import { AskFirst } from '../../parts/sheet/ask-first.tsx';
import { api } from '../../store/open-document.ts';

interface EraseCustomerProps {
  id: string;
  customer: string;
  attempt(work: () => Promise<unknown>, done: string): Promise<void>;
}

/** Takes the customer's name and contact out of a build for good, history included; asked once more before. */
export function EraseCustomer({ id, customer, attempt }: EraseCustomerProps) {
  const erase = () =>
    attempt(() => api.eraseCustomer(id), 'Erased, in the history too. Older backups still hold it.');
  const ask = (
    <>
      Erase the customer<span className="visually-hidden"> {customer}</span>
    </>
  );
  return (
    <AskFirst ask={ask} deed="Erase" carryOut={erase}>
      {customer} and the contact will be gone for good, from the history too. This cannot be undone. Backups
      made before still hold them.
    </AskFirst>
  );
}
