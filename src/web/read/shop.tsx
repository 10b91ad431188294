import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import type { UnitSystem } from '../../engine/units/unit-table.ts';
import { type Row, rows, singleRow, valueAt } from '../../record/document.ts';
import type { Change, DocumentState, Objection, Operation, Path } from '../../record/operation.ts';
import { oneOf } from '../../record/read-values.ts';
import type { FieldValue } from '../../record/schema.ts';
import type { DeedId } from '../../words/deeds.ts';
import type { Reader } from '../../words/field-text.ts';
import { type ShopUnits, type ShopWriter, shopWriter } from '../../words/writer.ts';
import { ApiError } from '../store/api.ts';
import type { DocumentStore } from '../store/document-store.ts';
import { api } from '../store/open-document.ts';
import { useBenchView, useColours } from './colours.ts';
import { currencyOf } from './currency.ts';
import { reasonOf, useOpenStore, useSnapshot } from './open-store.ts';
import { textOf } from './values.ts';

export type TapeStep = '1 mm' | '1/8 in' | '1/16 in' | '1/32 in';
export type Paper = 'a4' | 'letter';

/** What holds for every build of the shop. */
export interface Shop {
  /** Decides what a bare number means and how a length is shown; never a stored value. */
  system: UnitSystem;
  /** Writes every quantity as this shop does. */
  writer: ShopWriter;
  /** With what a bare number means here, and its money. */
  reader: Reader;
  tapeStep: TapeStep;
  paper: Paper;
  settings: Row;
  printers: readonly Row[];
  /** The guides in its drawers. */
  rack: readonly Row[];
  document: DocumentState;
  /** Its whole history in the order of arrival. */
  operations(): readonly Operation[];
  value(path: Path): FieldValue;
  newRowId(): string;
  write(deed: DeedId, changes: readonly Change[]): Objection[];
}

const ShopContext = createContext<Shop | undefined>(undefined);

export function useShop(): Shop {
  const shop = useContext(ShopContext);
  if (!shop) throw new Error('useShop needs a ShopProvider above it');
  return shop;
}

/** Opens the shop's own document. */
export function ShopProvider({ children }: { children: ReactNode }) {
  const [id, setId] = useState<string>();
  const [failure, setFailure] = useState<string>();
  const opening = useOpenStore(id);
  useEffect(() => {
    api.shop().then(
      (summary) => setId(summary.id),
      (error: unknown) => {
        if (error instanceof ApiError && error.status === 401) location.assign('/pair');
        else setFailure(reasonOf(error));
      },
    );
  }, []);
  const reason = failure ?? (opening.kind === 'failed' ? opening.reason : undefined);
  if (reason !== undefined) return <Unreachable reason={reason} />;
  if (opening.kind !== 'open') return null;
  return <OpenShop store={opening.store}>{children}</OpenShop>;
}

function OpenShop({ store, children }: { store: DocumentStore; children: ReactNode }) {
  const { document } = useSnapshot(store);
  const shop = useMemo<Shop>(() => {
    const settings = singleRow(document, 'settings');
    const system = textOf(settings, 'unitSystem') === 'mm' ? 'mm' : 'inch';
    const tapeStep = (textOf(settings, 'tapeStep') ?? (system === 'mm' ? '1 mm' : '1/8 in')) as TapeStep;
    const units: ShopUnits = {
      system,
      tapeStep,
      weighsIn: textOf(settings, 'weighsIn') === 'oz' ? 'oz' : 'g',
      temperatureIn: oneOf(textOf(settings, 'temperatureIn'), ['C', 'F']),
    };
    const writer = shopWriter(units);
    return {
      settings,
      system,
      writer,
      reader: { units, writer, currency: currencyOf(textOf(singleRow(document, 'rates'), 'currency')) },
      tapeStep,
      paper: (textOf(settings, 'paper') ?? (system === 'mm' ? 'a4' : 'letter')) as Paper,
      printers: rows(document, 'printers'),
      rack: rows(document, 'rack'),
      document,
      operations: () => store.operations(),
      value: (path) => valueAt(document, path),
      newRowId: () => store.newRowId(),
      write: (deed, changes) => store.write(deed, changes),
    };
  }, [document, store]);
  useBenchView();
  useColours(textOf(shop.settings, 'colours') ?? 'auto');
  return <ShopContext value={shop}>{children}</ShopContext>;
}

function Unreachable({ reason }: { reason: string }) {
  return (
    <main className="sheet">
      <h1>Fairbend</h1>
      <p className="attention" role="alert">
        {reason}. Start it with “npm start”, then load this page again; what was typed here waits in this
        browser.
      </p>
    </main>
  );
}

/** The currency the shop reckons in; euro until it chose one. */
export function useCurrency(): Reader['currency'] {
  return useShop().reader.currency;
}
