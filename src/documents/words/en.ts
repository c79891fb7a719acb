import { assemblyEn } from './assemblyEn.ts';
import { cautionsEn } from './cautionsEn.ts';
import { compareEn } from './compareEn.ts';
import { drawingsEn } from './drawingsEn.ts';
import { laterEn } from './laterEn.ts';
import { massEn } from './massEn.ts';
import { purchaseEn } from './purchaseEn.ts';
import { quoteEn } from './quoteEn.ts';
import { stickersEn } from './stickersEn.ts';
import type { PartingCut, Words } from './words.ts';

const sides = { left: 'left', right: 'right', near: 'near', far: 'far' } as const;
const cuts = { rip: 'rip', crosscut: 'crosscut', recut: 'recut', part: 'part' } as const;
const along = { length: 'along the length', width: 'across the length' } as const;
const edges = { length1: 'length 1', length2: 'length 2', width1: 'width 1', width2: 'width 2' } as const;

/** A rip runs along the length and a crosscut across it; other cuts say which way they run. */
function cutInWords(cut: PartingCut, blade: 'length' | 'width'): string {
  const isKnown = (cut === 'rip' && blade === 'length') || (cut === 'crosscut' && blade === 'width');
  return isKnown ? cuts[cut] : `${cuts[cut]} ${along[blade]}`;
}

/** The words of the job book in English. */
export const en: Words = {
  language: 'en',
  drawings: drawingsEn,
  book: 'Job book',
  contents: 'Contents',
  pageOf: (page, pages) => `page ${page} of ${pages}`,
  workshopLine: 'Workshop: ____________________   Date: ______________   Sawn by: ____________________',
  steps: {
    whole: 'No cut: the sheet is used as it is.',
    trim: (piece, side, take, leaves) =>
      `Piece ${piece}: trim ${take} off the ${sides[side]} edge. Leaves ${leaves}.`,
    part: (piece, setting, cut, blade, gives, guide, shaved) =>
      `Piece ${piece}: ${guide === 'rail' ? 'rail at' : 'fence'} ${setting}, ${cutInWords(cut, blade)}${shaved === null ? '' : `, only ${shaved} comes off`}. Gives ${gives.join(' and ')}.`,
    panel: (piece, number, name, size) => `${piece} is panel ${number}, ${name}, ${size}.`,
    offcut: (piece, size) => `${piece} is an offcut to keep, ${size}.`,
    waste: (piece, size) => `${piece} is waste, ${size}.`,
    narrow: { fence: 'Push stick.', rail: 'Support the rail.' },
    goesOn: (step) => `Goes on with ${step} at the lower left.`,
    goesOnHere: (step) => `Steps from ${step} on`,
  },
  title: {
    heading: 'The order',
    note: 'Note',
    vehicle: 'Vehicle',
    room: 'Room',
    count: 'How many alike',
    units: 'Units',
    saw: 'Saw',
    roles: 'Boards and finishes',
    rolesColumns: ['for', 'board', 'finish', 'edging'],
    raw: 'raw',
    totals: 'Totals',
    totalsColumns: ['board and finish', 'panels', 'sheets', 'of the area used', 'sawn', 'sheets cost'],
    sawing: 'At the saw, equal sheets cut together',
    sawingColumns: (guides) => [
      'board and finish',
      'different sheets',
      'ways through',
      'cuts',
      'sawn',
      guides.includes('rail') ? (guides.includes('fence') ? 'fence or rail set' : 'rail laid') : 'fence set',
      'turns',
      'heaviest piece once parted',
    ],
    squareMetres: (area) => `${area}\u00a0m²`,
    kilograms: (mass) => `${mass}\u00a0kg`,
    all: 'all together',
    metres: (metres) => `${metres}\u00a0m`,
  },
  cautions: cautionsEn,
  mass: massEn,
  layout: { heading: 'Where everything stands' },
  cuttingList: {
    heading: 'Cutting list',
    intro:
      'Sizes are as sawn, the figure along the grain first. The number of a panel is the same everywhere in this book.',
    inches: (finest, mostOff) =>
      `Inches are rounded to the nearest 1/${finest}, so a figure may be ${mostOff} mm off. Figures in brackets are millimetres: set the saw by them where it matters.`,
    columns: ['no.', 'panel', 'unit', 'cut size', 'grain', 'count', 'finished size', 'cut plans', 'done'],
    grain: 'along',
    none: 'free',
    doneOf: (count) => `0 of ${count}`,
  },
  plans: {
    heading: 'Cut plans',
    plan: (number, of, group) => `Cut plan ${number} of ${of}, ${group}`,
    alike: (copies) => (copies === 1 ? 'One sheet is cut this way.' : `${copies} sheets are cut this way.`),
    stacked: (sheets, plans) =>
      `Cut ${sheets} sheets together: lay them on each other, all edges flush and held so that none can slip. Every step goes through the whole stack, and each piece comes out once from every sheet in it.${plans.length === 0 ? '' : ` Sheets of cut plan ${plans.join(', ')} lie in it too: keep the pieces of each sheet apart until they are marked.`}`,
    stackSteps: (sheets) => `Steps, each through ${sheets} sheets`,
    otherName: (piece, here, plans, there) =>
      `${piece} is ${here} here; on the sheet of cut plan ${plans.join(', ')} it is ${there}.`,
    facts: (stock, size, kerf, guide) =>
      `Sheet ${stock}, ${size}, kerf ${kerf}. ${guide === 'rail' ? 'Rail' : 'Fence'} figures are from the left or near edge of the piece: “near” is the long edge next to you, “left” the short edge at your left.${guide === 'rail' ? ' Mark the line at both ends and lay the edge of the rail on it, the rail on the side measured from, so that the kerf falls beyond the line. A trim is measured from the edge it takes off, and the rail lies on what stays. Clamp it before you saw.' : ''}`,
    rest: (name) => `“${name}+” is ${name} and all after it, in one piece.`,
    span: (first, last) => `“${first}-${last}” is ${first} to ${last}, still in one piece.`,
    steps: 'Steps',
    pieces: 'Panels from this sheet',
    tick: (number, name, size) => `${number}  ${name}  ${size}`,
    copy: (copy) => `sheet ${copy}`,
  },
  edging: {
    heading: 'Edging',
    intro:
      'In working order: shorter edges first, then the longer ones, which cover their ends. One edging after the other. Labels show “length 1” as L1 and “width 2” as W2; the side in brackets is the one in the unit.',
    none: 'No edge of this job gets edging.',
    pass: (pass, edging) => `${pass === 1 ? 'First the shorter edges' : 'Then the longer edges'}: ${edging}`,
    columns: ['no.', 'panel', 'edges', 'edge length', 'strip', 'count', 'done'],
    edge: (edge) => edges[edge],
    edgeOn: (edge, side) => `${edge} (${side})`,
    need: 'Edging needed',
    needColumns: ['edging', 'strips', 'metres net', 'overlength each', 'metres with overlength', 'rolls'],
  },
  cutOuts: {
    heading: 'Cut-outs',
    intro:
      'On the finished panel as it lies on the bench, and as it is drawn among the panels to be drilled, with the side named up: along its length from the first edge named, across from the second. Sides are those of the unit. Round inner corners, and check each against the appliance’s own template.',
    none: 'No panel of this job has a cut-out.',
    columns: ['no.', 'panel', 'cut-out', 'lies', 'along the length', 'across', 'size', 'done'],
    fromTo: (from, to) => `${from} to ${to}`,
    lies: (up, along, across) => `${up} up; from ${along}, ${across}`,
  },
  units: {
    heading: 'Units',
    outside: (x, y, z) => `Outside: ${x} wide, ${y} deep, ${z} high.`,
    panels: 'Panels',
    panelColumns: ['no.', 'panel', 'count', 'finished size', 'board', 'let into', 'kg'],
    into: (panels, depth) => `${panels}: ${depth} deep`,
    fittings: 'Fittings',
    fittingColumns: ['fitting', 'count', 'done'],
    noFittings: 'No fittings.',
    mass: (kg) => `Panels weigh ${kg} kg.`,
    assembly: assemblyEn,
  },
  fittings: {
    heading: 'All fittings',
    intro: (alike) =>
      alike === 1
        ? 'What to have in hand before putting together.'
        : `What to have in hand for all ${alike}.`,
    columns: ['fitting', 'count', 'packs', 'for', 'in hand'],
    packs: (packs, pack) => (pack === 1 ? '' : `${packs} of ${pack}`),
    unit: (unit, count) => `${unit}:\u00a0${count}`,
  },
  appliances: {
    heading: 'Appliances',
    intro:
      'The furniture has room for these. Hold the manual of each against the openings and distances here before anything is cut; it goes before what the library says.',
    columns: ['appliance', 'count', 'width × depth × height', 'kg each', 'in', 'in hand'],
  },
  offcuts: {
    byHand: (panel) => `out of a cut-out of ${panel}: plunge saw or jigsaw, then square it up`,
    heading: 'Offcuts to put back',
    intro:
      'Each has its label, or its text written on it, before it goes to the rack. Sizes along and across the length of the sheet it came from.',
    none: 'No offcut of this job is worth keeping.',
    columns: ['label', 'board and finish', 'size', 'grain', 'back'],
    grain: { length: 'along the first', width: 'along the second', none: 'none' },
  },
  stickers: stickersEn,
  purchase: purchaseEn,
  quote: quoteEn,
  compare: compareEn,
  later: laterEn,
  last: {
    heading: 'Last checks',
    items: [
      'Every panel is ticked, and each has its number on it.',
      'Cut sizes of the first panel of each cut plan were measured against the list.',
      'Grain runs the right way; matched fronts lie beside each other as they will hang.',
      'Edging is on every edge in the list, trimmed flush, no corner sharp.',
      'Cut-outs were checked with the appliance or its template in hand.',
      'All fittings of each unit are counted into its box.',
      'Units were put together dry; doors, flaps and drawers move and lock.',
      'Offcuts are marked and in the rack.',
      'The saw is off, cleaned and its blade checked.',
    ],
  },
  page: {
    skip: 'Skip to the book',
    find: 'Find a panel',
    findHint: 'number, name or unit',
    found: (count) => `${count} found`,
    dark: 'Dark',
    light: 'Light',
    print: 'Print',
    zoomIn: 'Larger',
    zoomOut: 'Smaller',
    fit: 'Whole drawing',
    planRegion: (plan) => `Drawing: ${plan}`,
    ticked: (done, all) => `${done} of ${all} done`,
    ticksStay: 'Ticks stay on this device, for this plan.',
    noTicksKept: 'This device does not keep ticks: they are gone when the page is closed.',
    clear: 'Clear all ticks',
    reallyClear: 'Tap again to clear all ticks',
    tapPlan: 'Tap a panel on the drawing, or its box in the list, to tick it off.',
  },
};
