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

/** Metres rounded up to three decimals, so that never too little is bought. */
export function metresUp(um: Um): number {
  return Math.ceil(um / 1000) / 1000;
}

/** The same as lists print them. */
export function listMetresUp(um: Um): string {
  return metresUp(um).toFixed(3);
}

/** Minor units of money with two decimals. */
export function listMoney(minor: number): string {
  return (minor / 100).toFixed(2);
}
