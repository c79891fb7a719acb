import { TENTH_MM_UM } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture, Panel } from '../model/furniture.ts';
import type { Saw } from '../model/library.ts';
import { mm, panelFinding, panelOfUnit } from './names.ts';

/** Smallest part that runs through an edging machine. Common practice, no source. */
const EDGING_MACHINE_LEAST = { lengthUm: 1400 * TENTH_MM_UM, widthUm: 600 * TENTH_MM_UM };

/** Parts that the saw cannot hold, or that must be edged by hand. */
export function checkSawing(furniture: Furniture, saw: Saw): Finding[] {
  const panels = furniture.units.flatMap((unit) => unit.panels);
  return panels.flatMap((panel) => [...tooSmall(panel, saw), ...edgedByHand(panel)]);
}

function tooSmall(panel: Panel, saw: Saw): Finding[] {
  const smaller = Math.min(panel.cutLengthUm, panel.cutWidthUm);
  if (smaller >= saw.smallestPartUm) return [];
  const message = `${panelOfUnit(panel)} is ${mm(smaller)} wide as sawn; ${saw.name} holds nothing narrower than ${mm(saw.smallestPartUm)}`;
  return [
    panelFinding('part-too-small', panel, message, 'make it wider, or cut it from a wider part by hand'),
  ];
}

function edgedByHand(panel: Panel): Finding[] {
  if (panel.edges.every((edge) => edge.edging === null)) return [];
  const longer = Math.max(panel.finishedLengthUm, panel.finishedWidthUm);
  const smaller = Math.min(panel.finishedLengthUm, panel.finishedWidthUm);
  if (longer >= EDGING_MACHINE_LEAST.lengthUm && smaller >= EDGING_MACHINE_LEAST.widthUm) return [];
  const message = `${panelOfUnit(panel)} is ${mm(longer)} × ${mm(smaller)}, small for an edging machine`;
  return [
    { ...panelFinding('edged-by-hand', panel, message, 'plan to edge it by hand'), severity: 'warning' },
  ];
}
