import type { QuoteUnit } from '../../model/quotation.ts';
import type { QuoteWords } from './quoteWords.ts';

const units: Readonly<Record<QuoteUnit, readonly [one: string, many: string]>> = {
  sheet: ['Platte', 'Platten'],
  share: ['einer Platte', 'Platten'],
  metre: ['m', 'm'],
  roll: ['Rolle', 'Rollen'],
  piece: ['Stück', 'Stück'],
  pack: ['Packung', 'Packungen'],
  cut: ['Schnitt', 'Schnitte'],
  setting: ['Einstellung', 'Einstellungen'],
  turn: ['Drehung', 'Drehungen'],
  edge: ['Kante', 'Kanten'],
  'set-up': ['Wechsel', 'Wechsel'],
  panel: ['Teil', 'Teile'],
  hole: ['Bohrung', 'Bohrungen'],
  opening: ['Ausschnitt', 'Ausschnitte'],
  outline: ['Umriss', 'Umrisse'],
  unit: ['Möbel', 'Möbel'],
  fitting: ['Beschlag', 'Beschläge'],
  order: ['Auftrag', 'Aufträge'],
  each: ['Fahrzeug oder Raum', 'Fahrzeuge oder Räume'],
};

/** Words of the estimate in German. */
export const quoteDe: QuoteWords = {
  heading: 'Kostenvoranschlag',
  notInvoice:
    'Dies ist ein Kostenvoranschlag, gerechnet aus dem Schnittplan des Auftrags. Er ist keine Rechnung, und auf ihn ist nichts zu zahlen.',
  order: 'Auftrag',
  date: 'Datum',
  validUntil: 'Gilt bis',
  alike: (count) => `Gleiche Fahrzeuge oder Räume: ${count}`,
  sums: 'Preis',
  sumColumns: ['was', 'Zeilen', 'Betrag'],
  sum: {
    materialMinor: 'Material',
    workMinor: 'Arbeit',
    extrasMinor: 'Sonstiges',
    markUpMinor: 'Aufschlag',
  },
  net: (withVat) =>
    withVat ? 'Zusammen, ohne Umsatzsteuer' : 'Zusammen; die Umsatzsteuer ist nicht angegeben',
  vat: (percent) => `Umsatzsteuer, ${percent}`,
  total: 'Gesamt',
  lines: 'Zeile für Zeile',
  columns: ['Nr.', 'was', 'Menge', 'Zeit für eins', 'Preis', 'Betrag', 'Menge aus; Preis aus'],
  section: {
    material: 'Material',
    sawing: 'Sägen',
    edging: 'Kanten',
    drilling: 'Bohren',
    'hand work': 'Von Hand geschnitten',
    assembly: 'Zusammenbau',
    extras: 'Sonstiges',
    added: 'Aufschlag und Steuer',
  },
  quantity: (figure, unit, isOne) => `${figure} ${units[unit][isOne ? 0 : 1]}`,
  anHour: (price) => `${price}/h`,
  sheet: (name, size) => `${name}, Platte ${size}`,
  offcut: (name, size) => `${name}, vorhandenes Reststück ${size}`,
  work: {
    sawing: {
      sheet: 'Platten zur Säge gebracht und ihre Stücke fort',
      metre: 'Gesägte Meter',
      cut: 'Schnitte, Besäumen eingeschlossen',
      setting: 'Anschlag oder Schiene gesetzt',
      turn: 'Stücke um ein Viertel gedreht',
    },
    edging: { metre: 'Kante angefahren', edge: 'Kanten begonnen und beendet', 'set-up': 'Wechsel der Kante' },
    drilling: { panel: 'Teile zum Bohren aufgelegt', hole: 'Bohrungen' },
    'hand work': { opening: 'Ausschnitte', outline: 'Teile nach der Wand geschnitten' },
    assembly: { unit: 'Möbel zusammengebaut', panel: 'Teile eingesetzt', fitting: 'Beschläge angebracht' },
  },
  assembled: (unit) => `Zusammengebaut: ${unit}`,
  added: (item, first, last) => {
    const words = {
      'mark-up on material': 'Aufschlag auf Material',
      'mark-up on work': 'Aufschlag auf Arbeit',
      VAT: 'Umsatzsteuer',
    };
    return `${words[item]}, auf die Zeilen ${first} bis ${last}`;
  },
  rules: 'Wie die Zahlen zustande kommen',
  charged: {
    sheets: {
      whole: 'Platten werden ganz berechnet, wie im Schnittplan; was übrig bleibt, gehört zum Auftrag.',
      share:
        'Platten werden nach Anteil berechnet: ohne die Fläche der Reststücke, die ins Lager zurückgehen und der Werkstatt bleiben. Der Anteil ist auf ein Tausendstel einer Platte aufgerundet.',
    },
    edging: {
      metres: 'Kanten werden nach Metern berechnet, mit der Überlänge jedes Streifens.',
      rolls: 'Kanten werden nach ganzen Rollen berechnet, in Metern.',
    },
    fittings: {
      pieces: 'Beschläge werden nach Stück berechnet.',
      packs: 'Beschläge werden nach ganzen Packungen berechnet, in Stück.',
    },
  },
  rounding:
    'Eine Zeile ist Menge × Preis, bei Arbeit Menge × Zeit für eins × Preis einer Stunde, aus den gedruckten Zahlen und auf den Cent gerundet, Halbe aufwärts. Summen sind die der gedruckten Zeilen.',
  listPrices:
    'Preise sind die einer Platte, eines Meters oder Stücks in der Bibliothek, damit die Schätzung nicht davon abhängt, was sonst gekauft wird: was ein Lieferant bei größeren Mengen nachlässt, ist nicht gerechnet. Reststücke vom Lager, die der Plan zuschneidet, kosten nichts.',
  stacked:
    'Platten, die aufeinander gesägt werden, gehen zusammen einmal durch die Säge; gebracht wird jede.',
  hours: (hours) => `Die Arbeit ergibt ${hours} h.`,
  notCharged: (kinds) =>
    `Die Bibliothek hat keinen Satz für ${kinds}: diese Arbeit ist im Voranschlag nicht enthalten.`,
  sources:
    'Dateien mit .csv am Ende und plan.json sind Papiere des Auftrags, solche mit .yaml sind Dateien der Bibliothek.',
  sawing: 'Arbeit an der Säge',
  sawingColumns: ['Platte und Oberfläche', 'Platten', 'gesägt', 'Schnitte', 'Einstellungen', 'Drehungen'],
  all: 'zusammen',
};
