import type { QuoteUnit } from '../../model/quotation.ts';
import type { QuoteWords } from './quoteWords.ts';

const units: Readonly<Record<QuoteUnit, readonly [one: string, many: string]>> = {
  sheet: ['sheet', 'sheets'],
  share: ['of a sheet', 'sheets'],
  metre: ['m', 'm'],
  roll: ['roll', 'rolls'],
  piece: ['piece', 'pieces'],
  pack: ['pack', 'packs'],
  cut: ['cut', 'cuts'],
  setting: ['setting', 'settings'],
  turn: ['turn', 'turns'],
  edge: ['edge', 'edges'],
  'set-up': ['set-up', 'set-ups'],
  panel: ['panel', 'panels'],
  hole: ['hole', 'holes'],
  opening: ['opening', 'openings'],
  outline: ['outline', 'outlines'],
  unit: ['unit', 'units'],
  fitting: ['fitting', 'fittings'],
  order: ['order', 'orders'],
  each: ['vehicle or room', 'vehicles or rooms'],
};

/** Words of the estimate in English. */
export const quoteEn: QuoteWords = {
  heading: 'Estimate of price',
  notInvoice:
    'This is an estimate of the price, worked out from the plan of the order. It is not an invoice, and nothing is to be paid on it.',
  order: 'Order',
  date: 'Date',
  validUntil: 'Holds until',
  alike: (count) => `Vehicles or rooms alike: ${count}`,
  sums: 'Price',
  sumColumns: ['what', 'lines', 'amount'],
  sum: {
    materialMinor: 'Material',
    workMinor: 'Work',
    extrasMinor: 'Anything else',
    markUpMinor: 'Mark-up',
  },
  net: (withVat) => (withVat ? 'Together, without VAT' : 'Together; VAT is not stated'),
  vat: (percent) => `VAT, ${percent}`,
  total: 'Total',
  lines: 'Line by line',
  columns: ['no.', 'what', 'quantity', 'time of one', 'price', 'amount', 'quantity from; price from'],
  section: {
    material: 'Material',
    sawing: 'Sawing',
    edging: 'Edging',
    drilling: 'Drilling',
    'hand work': 'Cut by hand',
    assembly: 'Assembly',
    extras: 'Anything else',
    added: 'Mark-up and tax',
  },
  quantity: (figure, unit, isOne) => `${figure} ${units[unit][isOne ? 0 : 1]}`,
  anHour: (price) => `${price}/h`,
  sheet: (name, size) => `${name}, sheet ${size}`,
  offcut: (name, size) => `${name}, offcut on hand ${size}`,
  work: {
    sawing: {
      sheet: 'Sheets brought to the saw, and their pieces away',
      metre: 'Metres sawn',
      cut: 'Passes of the blade, trims included',
      setting: 'Settings of the fence or rail',
      turn: 'Pieces turned by a quarter',
    },
    edging: { metre: 'Edging put on', edge: 'Edges begun and ended', 'set-up': 'Changes to another edging' },
    drilling: { panel: 'Panels laid down to be drilled', hole: 'Holes' },
    'hand work': { opening: 'Openings cut out', outline: 'Panels cut to the wall' },
    assembly: { unit: 'Units put together', panel: 'Panels put in their place', fitting: 'Fittings put on' },
  },
  assembled: (unit) => `Put together: ${unit}`,
  added: (item, first, last) =>
    `${item === 'VAT' ? item : `M${item.slice(1)}`}, on lines ${first} to ${last}`,
  rules: 'How the figures come about',
  charged: {
    sheets: {
      whole: 'Sheets are charged whole, as nested; what is left of them belongs to the order.',
      share:
        'Sheets are charged by share: without the area of the offcuts that go back to the rack, which stay the workshop’s. The share is rounded up to a thousandth of a sheet.',
    },
    edging: {
      metres: 'Edging is charged by the metre, the overlength of every strip included.',
      rolls: 'Edging is charged by whole rolls, in metres.',
    },
    fittings: {
      pieces: 'Fittings are charged by the piece.',
      packs: 'Fittings are charged by whole packs, in pieces.',
    },
  },
  rounding:
    'A line is quantity × price, or for work quantity × time of one × price of an hour, from the figures as printed, rounded to the cent, halves up. Sums are those of the printed lines.',
  listPrices:
    'Prices are those of one sheet, metre or piece in the library, so that the estimate does not depend on what else is bought: what a supplier takes off for larger numbers is not counted. Offcuts on hand that the plan cuts cost nothing.',
  stacked: 'Sheets that are sawn on each other count as one way through the saw, but each is brought to it.',
  hours: (hours) => `Work adds up to ${hours} h.`,
  notCharged: (kinds) => `The library has no rate for ${kinds}: that work is not in this estimate.`,
  sources:
    'Files ending in .csv and plan.json are papers of the order, those ending in .yaml are files of the library.',
  sawing: 'Work at the saw',
  sawingColumns: ['stock group', 'sheets', 'sawn', 'cuts', 'settings', 'turns'],
  all: 'together',
};
