import { describe, expect, test } from 'vitest';
import { buildSchema, documentSchemas, type Field, shopSchema } from '../record/schema.ts';
import {
  hintText,
  labelOf,
  numberText,
  originText,
  paleText,
  type Reader,
  storedText,
} from './field-text.ts';
import { shopWriter } from './writer.ts';

const readerOf = (units: Reader['units']): Reader => ({
  units,
  writer: shopWriter(units),
  currency: { code: 'EUR', digits: 2 },
});
const inch = readerOf({ system: 'inch' });
const mm = readerOf({ system: 'mm' });

const places = Object.values(documentSchemas).flatMap((schema) =>
  Object.entries(schema).flatMap(([collection, { fields }]) =>
    Object.entries(fields).map(([name, field]) => ({ at: `${collection}/${name}`, field })),
  ),
);
/** Everything that one field says in one shop. */
const said = (field: Field, reader: Reader) =>
  [labelOf(field), hintText(field, reader.writer), paleText(field, reader), originText(field, reader)].filter(
    (text) => text !== undefined,
  );

describe('what stands at a field', () => {
  /** Ring sizes stand in mm everywhere, and the printed rule is 100 mm long on every sheet. */
  const inMm = /^(guides|bag|rack)\/size$|^printers\/rule/;

  test('never says a metric figure in an inch shop', () => {
    const metric = /\d\s?(mm|cm|m|km|kg|°C)(?![a-z/])/;
    const found = places.filter(
      ({ at, field }) => !inMm.test(at) && said(field, inch).some((text) => metric.test(text)),
    );
    expect(found.map(({ at, field }) => [at, said(field, inch)])).toEqual([]);
  });

  test('never says a figure in inches in a millimetre shop', () => {
    const imperial = /[\d⁄]\s?(in|ft|yd|°F)(?![a-z])/;
    const found = places.filter(({ field }) => said(field, mm).some((text) => imperial.test(text)));
    expect(found.map(({ at, field }) => [at, said(field, mm)])).toEqual([]);
  });

  test('is in the shop’s units, with the trade’s range in the same', () => {
    const { startBeforeFoot, spoolLength, reservePercent } = buildSchema.wraps.fields;
    expect(said(startBeforeFoot, inch)).toEqual([
      'Start before the foot',
      '3⁄32 in',
      'typical, 3⁄32 to 1⁄4 in',
    ]);
    expect(said(startBeforeFoot, mm)).toEqual(['Start before the foot', '2.5 mm', 'typical, 2 to 6 mm']);
    expect(paleText(spoolLength, inch)).toBe('100 yd');
    expect(said(reservePercent, mm)).toEqual(['Reserve', '20', 'typical, 12 to 50 %']);
    expect(said(buildSchema.finish.fields.statedAtC, inch)).toEqual([
      'Data-sheet temperature',
      '73 °F',
      'typical, 70 to 81 °F',
    ]);
    expect(originText(buildSchema.finish.fields.brushedPercent, mm)).toBe('our choice');
    expect(paleText(buildSchema.finish.fields.brushedPercent, mm)).toBe('67');
    expect(paleText(buildSchema.handle.fields.gripLength, mm)).toBe('such as 165 mm');
    expect(hintText(buildSchema.handle.fields.keeperAhead, inch.writer)).toMatch(
      /^13⁄32 in to 1 9⁄16 in ahead/,
    );
  });
});

test('a habit typed bare in a millimetre shop says so in an inch shop', () => {
  const { checkWrap, underwrap, ferruleWraps } = buildSchema.wraps.fields;
  expect(storedText(checkWrap, { si: 0.014, text: '14' }, mm)).toBe('14');
  expect(storedText(checkWrap, { si: 0.014, text: '14' }, inch)).toBe('14 mm');
  expect(storedText(underwrap, true, inch)).toBe('yes');
  expect(storedText(ferruleWraps, 'no', inch)).toBe('no');
});

test('a number of the record is written with what it counts', () => {
  const written = (field: Field, value: number, reader: Reader) =>
    field.kind === 'number' && numberText(field, value, reader);
  const { roomC, halvesPerC, densityA } = buildSchema.finish.fields;
  expect(written(roomC, 200 / 9, inch)).toBe('72 °F');
  expect(written(roomC, 22.5, mm)).toBe('22.5 °C');
  expect(written(roomC, 22.5, readerOf({ system: 'mm', temperatureIn: 'F' }))).toBe('72.5 °F');
  expect(written(halvesPerC, 10, inch)).toBe('18 °F');
  expect(written(densityA, 1.1, inch)).toBe('1.1 g/ml');
  expect(written(buildSchema.blank.fields.strainStopPercent, 0.4, inch)).toBe('0.4 %');
  expect(written(shopSchema.rates.fields.hourlyRate, 4550, mm)).toBe('EUR\u00a045.50');
});
