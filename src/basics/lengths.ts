import type { Um } from '../model/geometry.ts';

export const UM_PER_MM = 1000;
/** Cut sizes are kept to this grid: what is nested is what is printed. */
export const TENTH_MM_UM = 100;
/** 1 in = 25.4 mm exactly (international inch). */
export const UM_PER_INCH = 25_400;

/** Millimetres, as evaluated or read, to whole µm: half away from zero. */
export function mmToUm(mm: number): Um {
  return mm < 0 ? -Math.round(-mm * UM_PER_MM) : Math.round(mm * UM_PER_MM);
}

/** To millimetres for a file that keeps whole µm: 412300 → 412.3. Exact to the third decimal. */
export function umToMm(um: Um): number {
  return um / UM_PER_MM;
}

/** As printed for people: one decimal, `412.3`. */
export function printMm(um: Um): string {
  return (Math.round(um / TENTH_MM_UM) / 10).toFixed(1);
}

/** As printed where a whole number reads better: `412` or `412.3`. */
export function printMmShort(um: Um): string {
  return String(Math.round(um / TENTH_MM_UM) / 10);
}

/** To the nearest 0.1 mm, half up. */
export function roundToTenth(um: Um): Um {
  return Math.round(um / TENTH_MM_UM) * TENTH_MM_UM;
}

/** Up to the next 0.1 mm: for kerf and trim, where too much is the safe side. */
export function roundUpToTenth(um: Um): Um {
  return Math.ceil(um / TENTH_MM_UM) * TENTH_MM_UM;
}

/** Down to 0.1 mm: for usable sheet sizes. */
export function roundDownToTenth(um: Um): Um {
  return Math.floor(um / TENTH_MM_UM) * TENTH_MM_UM;
}
