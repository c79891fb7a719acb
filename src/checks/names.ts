import { printMm } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';

/** `shelf 2` or `the left side`. */
export function panelPhrase(panel: Panel): string {
  return /\d/.test(panel.name) ? panel.name : `the ${panel.name}`;
}

/** `shelf 2 of the fridge housing`. */
export function panelOfUnit(panel: Panel): string {
  return `${panelPhrase(panel)} of the ${panel.unit}`;
}

export function mm(um: Um): string {
  return `${printMm(um)} mm`;
}

/** A finding about a panel, at the place where its box is written. */
export function panelFinding(code: string, panel: Panel, message: string, advice?: string): Finding {
  return {
    code,
    severity: 'error',
    message,
    ...(panel.place === undefined ? {} : { place: panel.place }),
    ...(advice === undefined ? {} : { advice }),
  };
}

/** A finding about a unit, at the place where it is placed. */
export function unitFinding(code: string, unit: PlacedUnit, message: string, advice?: string): Finding {
  return {
    code,
    severity: 'error',
    message,
    ...(unit.place === undefined ? {} : { place: unit.place }),
    ...(advice === undefined ? {} : { advice }),
  };
}
