/**
 * How one reader writes quantities: a shop in inches or millimetres, or the door, which speaks SI. Every sentence takes
 * its figures from here, so that one quantity has one unit and one rounding wherever it is read.
 */

import { fixedDecimals, trimZeros } from '../engine/units/format-decimal.ts';
import { formatInches, type InchDenominator } from '../engine/units/format-inches.ts';
import { formatGrams, formatOunces } from '../engine/units/format-quantity.ts';
import { formatOnTape, type TapeStep } from '../engine/units/tape-step.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';

export interface Writer {
  readonly units: UnitSystem | 'si';
  /** As a tape reads it: `27 1⁄8 in`, `688 mm`, `4.2 mm`. */
  length(lengthM: number): string;
  /** As a rule held to it reads: `13⁄32 in`, `10.3 mm`. */
  fine(lengthM: number): string;
  /** Where a clamp, a flag or a support goes: to half an inch or 5 mm. */
  place(lengthM: number): string;
  /** As a pencil marks it on a wall: to an eighth of an inch or a millimetre. */
  tick(lengthM: number): string;
  /** A mark, on the ticks of the chosen tape. */
  mark(lengthM: number): string;
  /** A diameter or another length that callipers read: `0.272 in`, `6.91 mm`. */
  calliper(lengthM: number): string;
  /** A turn of thread: `0.006 in`, `0.15 mm`. */
  thread(lengthM: number): string;
  /** Long runs, such as thread: `31 yd`, `28 m`. */
  run(lengthM: number): string;
  /** As a scale shows it: `72 g`, `0.3 g`; ounces where the shop weighs in them. */
  mass(massKg: number): string;
  /** A weight to hang: `204 g`. */
  load(massKg: number): string;
  /** To half a degree: `14.5°`. */
  angle(angleRad: number): string;
  /** Of the line in a ring, beside its limit: `14.7°`, `15°`. */
  lineAngle(angleRad: number): string;
  /** A moment that a hand holds: `0.38 in·lb`, `0.043 N·m`. */
  torque(torqueNm: number): string;
  /** `73 °F`, `23 °C`. */
  temperature(celsius: number): string;
  /** A difference of temperatures: `18 °F`, `10 °C`. */
  warmer(celsius: number): string;
  /** `12 ml`. */
  volume(ml: number): string;
  /** `20 min`, `6 h`, `5 d`. */
  duration(seconds: number): string;
  /** A share of one, in whole percent: `7 %`. */
  percent(share: number): string;
}

export interface ShopUnits {
  system: UnitSystem;
  tapeStep?: TapeStep;
  /** Grams in both systems unless the shop weighs in ounces. */
  weighsIn?: 'g' | 'oz';
  /** Fahrenheit in an inch shop unless it says otherwise. */
  temperatureIn?: 'C' | 'F';
}

export interface ShopWriter extends Writer {
  readonly units: UnitSystem;
}

export function shopWriter({ system, tapeStep, weighsIn = 'g', temperatureIn }: ShopUnits): ShopWriter {
  const fahrenheit = (temperatureIn ?? (system === 'inch' ? 'F' : 'C')) === 'F';
  const inches = (denominator: InchDenominator) => (lengthM: number) =>
    formatInches(lengthM, { denominator }).text;
  const inch = system === 'inch';
  return {
    units: system,
    length: inch ? (m) => inches(Math.abs(m) < 0.0254 ? 32 : 16)(m) : (m) => millimetres(m, decimalsFor(m)),
    fine: inch ? inches(32) : (m) => millimetres(m, 1),
    place: inch ? inches(2) : (m) => millimetres(Math.round(m * 200) / 200, 0),
    tick: inch ? inches(8) : (m) => millimetres(m, 0),
    mark: (m) => formatOnTape(m, tapeStep ?? (inch ? '1/8 in' : '1 mm')),
    calliper: inch ? (m) => `${fixedDecimals(m / 0.0254, 3)} in` : (m) => millimetres(m, 2),
    thread: inch ? (m) => `${fixedDecimals(m / 0.0254, 4)} in` : (m) => millimetres(m, 3),
    run: inch
      ? (m) => `${trimZeros(m / 0.9144, m < 10 ? 1 : 0)} yd`
      : (m) => `${trimZeros(m, m < 10 ? 1 : 0)} m`,
    mass:
      weighsIn === 'oz'
        ? (kg) => formatOunces(kg, kg < 0.1 ? 2 : 1)
        : (kg) => formatGrams(kg, kg < 0.1 ? 1 : 0),
    load: weighsIn === 'oz' ? (kg) => formatOunces(kg, 1) : (kg) => formatGrams(kg, 0),
    angle: halfDegrees,
    lineAngle: (rad) => `${trimZeros((rad * 180) / Math.PI, 1)}°`,
    // 1 lbf·in is 0.112984829 N·m: NIST SP 811, appendix B.8
    torque: inch
      ? (nm) => `${threeFigures(nm / 0.112984829, 2)} in·lb`
      : (nm) => `${threeFigures(nm, 3)} N·m`,
    temperature: (c) => (fahrenheit ? `${Math.round(c * 1.8 + 32)} °F` : `${trimZeros(c, 0)} °C`),
    warmer: (c) => (fahrenheit ? `${Math.round(c * 1.8)} °F` : `${trimZeros(c, 0)} °C`),
    ...common,
  };
}

/** What the door and its refusals speak. */
export const siWriter: Writer = {
  units: 'si',
  length: metres,
  fine: metres,
  place: metres,
  tick: metres,
  mark: metres,
  calliper: metres,
  thread: metres,
  run: metres,
  mass: (kg) => `${plain(kg)} kg`,
  load: (kg) => `${plain(kg)} kg`,
  angle: (rad) => `${plain(rad)} rad`,
  lineAngle: (rad) => `${plain(rad)} rad`,
  torque: (nm) => `${plain(nm)} N m`,
  temperature: (c) => `${plain(c)} °C`,
  warmer: (c) => `${plain(c)} °C`,
  ...{ volume: (ml: number) => `${plain(ml)} ml` },
  duration: (s) => `${plain(s)} s`,
  percent: (share) => `${trimZeros(100 * share, 1)} %`,
};

const common = {
  volume: (ml: number) => `${trimZeros(ml, ml < 10 ? 1 : 0)} ml`,
  duration: (seconds: number) => {
    if (seconds < 5400) return `${Math.round(seconds / 60)} min`;
    if (seconds < 172_800) return `${trimZeros(seconds / 3600, 1)} h`;
    return `${trimZeros(seconds / 86_400, 1)} d`;
  },
  percent: (share: number) => `${Math.round(100 * share)} %`,
};

/** So many decimals below one, fewer above: a hand tells no more. */
function threeFigures(value: number, decimals: number): string {
  const whole = Math.abs(value) < 1 ? 0 : Math.floor(Math.log10(Math.abs(value)) + 1e-9) + 1;
  return fixedDecimals(value, Math.max(0, Math.min(decimals, 3 - whole)));
}

/** A tape shows no tenths of a millimetre over a hand's width. */
function decimalsFor(lengthM: number): number {
  const size = Math.abs(lengthM);
  return size < 0.002 ? 2 : size < 0.1 ? 1 : 0;
}

function millimetres(lengthM: number, decimals: number): string {
  return `${trimZeros(lengthM * 1000, decimals)} mm`;
}

/** `14.5°`: the same in every shop. */
export function halfDegrees(angleRad: number): string {
  return `${trimZeros(Math.round((angleRad * 360) / Math.PI) / 2, 1)}°`;
}

function metres(lengthM: number): string {
  return `${plain(lengthM)} m`;
}

/** Six digits: what was typed comes back as typed. */
function plain(value: number): string {
  return `${Number(value.toPrecision(6))}`;
}
