/**
 * What a region measures with, prints on and pays in; from Unicode CLDR 47 (supplemental data: measurement system,
 * paper size, currency). Bulgaria pays in euro since January 2026.
 */
import type { UnitSystem } from '../engine/units/unit-table.ts';

export interface RegionHabits {
  unitSystem: UnitSystem;
  paper: 'a4' | 'letter';
  /** Left out where the region is unknown. */
  currency?: string;
}

/** Of the first of these languages that names or implies a region: `de` is most often written in Germany. */
export function habitsOfLanguages(languages: readonly string[]): RegionHabits {
  const region = languages.map(regionOf).find((found) => found !== undefined) ?? 'US';
  const currency = currencyOfRegion(region);
  return {
    unitSystem: inInches.has(region) ? 'inch' : 'mm',
    paper: onLetter.has(region) ? 'letter' : 'a4',
    ...(currency ? { currency } : {}),
  };
}

function regionOf(language: string): string | undefined {
  try {
    return new Intl.Locale(language).maximize().region;
  } catch {
    // no language tag, as some browsers' settings allow
    return undefined;
  }
}

/** Where the inch is the everyday measure, or, as in Britain, one of two and the one rods are sold by. */
const inInches = new Set(['US', 'LR', 'MM', 'GB']);
const onLetter = new Set('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '));

export function currencyOfRegion(region: string): string | undefined {
  const shared = Object.entries(sharedCurrencies).find(([, regions]) => regions.split(' ').includes(region));
  return shared?.[0] ?? namedByRegion.split(' ').find((code) => code.startsWith(region));
}

/** Codes that begin with the region's own. */
const namedByRegion =
  'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BHD BIF BMD BND BOB BRL BSD BWP BYN BZD CAD CDF CHF CLP CNY ' +
  'COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ' +
  'ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LYD MAD MDL MGA MKD MMK ' +
  'MNT MOP MRU MUR MVR MWK MXN MYR MZN NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF ' +
  'SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU ' +
  'UZS VES VND VUV WST YER ZAR ZMW';

const sharedCurrencies: Readonly<Record<string, string>> = {
  AUD: 'CC CX HM KI NF NR TV',
  CHF: 'LI',
  DKK: 'FO GL',
  EUR: 'AD AT AX BE BG BL CY DE EE ES FI FR GF GP GR HR IE IT LT LU LV MC ME MF MQ MT NL PM PT RE SI SK SM TF VA XK YT',
  GBP: 'GG GS IM JE',
  ILS: 'PS',
  INR: 'BT',
  MAD: 'EH',
  NOK: 'BV SJ',
  NZD: 'CK NU PN TK',
  USD: 'AS BQ EC FM GU IO MH MP PR PW SV TC TL UM VG VI ZW',
  XAF: 'CF CG CM GA GQ TD',
  XCD: 'AG AI DM GD KN LC MS VC',
  XOF: 'BF BJ CI GW ML NE SN TG',
  XPF: 'NC PF WF',
  ZAR: 'LS NA',
};
