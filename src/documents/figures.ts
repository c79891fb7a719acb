import { printMm } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';

/** A length of the plan, in mm, as lists print it: one decimal, with a point. */
export function listMm(mm: number): string {
  return printMm(Math.round(mm * 1000));
}

/** A thickness, which may be finer: as many decimals as it has, up to three. */
export function listThickness(mm: number): string {
  return String(Math.round(mm * 1000) / 1000);
}

/** Metres with three decimals, rounded up, so that never too little is bought. */
export function listMetresUp(um: Um): string {
  return (Math.ceil(um / 1000) / 1000).toFixed(3);
}

/** Minor units of money with two decimals. */
export function listMoney(minor: number): string {
  return (minor / 100).toFixed(2);
}
