import { assemblyDe } from './assemblyDe.ts';
import { cautionsDe } from './cautionsDe.ts';
import { compareDe } from './compareDe.ts';
import { drawingsDe } from './drawingsDe.ts';
import { faceBefore } from './facesDe.ts';
import { laterDe } from './laterDe.ts';
import { massDe } from './massDe.ts';
import { purchaseDe } from './purchaseDe.ts';
import { quoteDe } from './quoteDe.ts';
import { stickersDe } from './stickersDe.ts';
import type { PartingCut, Words } from './words.ts';

const sides = { left: 'linken', right: 'rechten', near: 'vorderen', far: 'hinteren' } as const;
const cuts = {
  rip: 'Längsschnitt',
  crosscut: 'Querschnitt',
  recut: 'Nachschnitt',
  part: 'Trennschnitt',
} as const;
const along = { length: 'längs der Platte', width: 'quer zur Platte' } as const;
const edges = { length1: 'Länge 1', length2: 'Länge 2', width1: 'Breite 1', width2: 'Breite 2' } as const;

/** A rip runs along the length and a crosscut across it; other cuts say which way they run. */
function cutInWords(cut: PartingCut, blade: 'length' | 'width'): string {
  const isKnown = (cut === 'rip' && blade === 'length') || (cut === 'crosscut' && blade === 'width');
  return isKnown ? cuts[cut] : `${cuts[cut]} ${along[blade]}`;
}

/** The words of the job book in German. Figures keep the point, as fences and the drawings show them. */
export const de: Words = {
  language: 'de',
  drawings: drawingsDe,
  book: 'Werkbuch',
  contents: 'Inhalt',
  pageOf: (page, pages) => `Seite ${page} von ${pages}`,
  workshopLine: 'Werkstatt: __________________   Datum: ______________   Gesägt von: __________________',
  steps: {
    whole: 'Kein Schnitt: die Platte wird ganz verwendet.',
    trim: (piece, side, take, leaves) =>
      `Stück ${piece}: an der ${sides[side]} Kante ${take} besäumen. Bleibt ${leaves}.`,
    part: (piece, setting, cut, blade, gives, guide, shaved) =>
      `Stück ${piece}: ${guide === 'rail' ? 'Schiene bei' : 'Anschlag'} ${setting}, ${cutInWords(cut, blade)}${shaved === null ? '' : `, nur ${shaved} fällt weg`}. Ergibt ${gives.join(' und ')}.`,
    panel: (piece, number, name, size) => `${piece} ist Teil ${number}, ${name}, ${size}.`,
    offcut: (piece, size) => `${piece} ist ein Reststück fürs Lager, ${size}.`,
    waste: (piece, size) => `${piece} ist Abfall, ${size}.`,
    narrow: { fence: 'Schiebestock.', rail: 'Schiene unterlegen.' },
    goesOn: (step) => `Weiter mit ${step} links unten.`,
    goesOnHere: (step) => `Schritte ab ${step}`,
  },
  title: {
    heading: 'Der Auftrag',
    note: 'Vermerk',
    vehicle: 'Fahrzeug',
    room: 'Raum',
    count: 'Stückzahl',
    units: 'Möbel',
    saw: 'Säge',
    roles: 'Platten und Oberflächen',
    rolesColumns: ['für', 'Platte', 'Oberfläche', 'Kante'],
    raw: 'roh',
    totals: 'Summen',
    totalsColumns: [
      'Platte und Oberfläche',
      'Teile',
      'Platten',
      'Fläche genutzt',
      'gesägt',
      'Platten kosten',
    ],
    sawing: 'An der Säge, gleiche Platten zusammen',
    sawingColumns: (guides) => [
      'Platte und Oberfläche',
      'verschiedene Platten',
      'Durchgänge',
      'Schnitte',
      'gesägt',
      guides.includes('rail')
        ? guides.includes('fence')
          ? 'Anschlag, Schiene gesetzt'
          : 'Schiene gelegt'
        : 'Anschlag gestellt',
      'Wendungen',
      'schwerstes Stück nach dem Teilen',
    ],
    squareMetres: (area) => `${area}\u00a0m²`,
    kilograms: (mass) => `${mass}\u00a0kg`,
    all: 'alles zusammen',
    metres: (metres) => `${metres}\u00a0m`,
  },
  cautions: cautionsDe,
  mass: massDe,
  layout: { heading: 'Wo alles steht' },
  cuttingList: {
    heading: 'Zuschnittliste',
    intro:
      'Maße wie gesägt, das Maß entlang der Maserung zuerst. Die Nummer eines Teils ist im ganzen Buch dieselbe.',
    inches: (finest, mostOff) =>
      `Zoll sind auf das nächste 1/${finest} gerundet, ein Maß kann also um ${mostOff} mm abweichen. Maße in Klammern sind Millimeter: die Säge nach ihnen einstellen, wo es darauf ankommt.`,
    columns: ['Nr.', 'Teil', 'Möbel', 'Zuschnitt', 'Maserung', 'Stück', 'Fertigmaß', 'Pläne', 'erledigt'],
    grain: 'längs',
    none: 'frei',
    doneOf: (count) => `0 von ${count}`,
  },
  plans: {
    heading: 'Schnittpläne',
    plan: (number, of, group) => `Schnittplan ${number} von ${of}, ${group}`,
    alike: (copies) => (copies === 1 ? 'Eine Platte wird so gesägt.' : `${copies} Platten werden so gesägt.`),
    stacked: (sheets, plans) =>
      `${sheets} Platten zusammen sägen: aufeinanderlegen, alle Kanten bündig, gegen Verrutschen gesichert. Jeder Schritt geht durch den ganzen Stapel, und jedes Stück kommt aus jeder Platte darin einmal.${plans.length === 0 ? '' : ` Auch Platten von Schnittplan ${plans.join(', ')} liegen darin: die Stücke jeder Platte getrennt halten, bis sie bezeichnet sind.`}`,
    stackSteps: (sheets) => `Schritte, jeder durch ${sheets} Platten`,
    otherName: (piece, here, plans, there) =>
      `${piece} ist hier ${here}; auf der Platte von Schnittplan ${plans.join(', ')} ist es ${there}.`,
    facts: (stock, size, kerf, guide) =>
      `Platte ${stock}, ${size}, Schnittfuge ${kerf}. ${guide === 'rail' ? 'Maße der Schiene' : 'Anschlagmaße'} gelten ab der linken oder vorderen Kante des Stücks: vorn ist die lange Kante bei Ihnen, links die kurze zu Ihrer Linken.${guide === 'rail' ? ' Den Riss an beiden Enden anzeichnen und die Kante der Schiene daran legen, die Schiene auf der Seite, von der gemessen wird, so dass die Schnittfuge jenseits des Risses liegt. Besäumt wird ab der Kante gemessen, die wegfällt, und die Schiene liegt auf dem, was bleibt. Vor dem Sägen festspannen.' : ''}`,
    rest: (name) => `„${name}+“ ist ${name} mit allem danach, in einem Stück.`,
    span: (first, last) => `„${first}-${last}“ ist ${first} bis ${last}, noch in einem Stück.`,
    steps: 'Schritte',
    pieces: 'Teile aus dieser Platte',
    tick: (number, name, size) => `${number}  ${name}  ${size}`,
    copy: (copy) => `Platte ${copy}`,
  },
  edging: {
    heading: 'Kanten',
    intro:
      'In der Reihenfolge der Arbeit: erst die kürzeren Kanten, dann die längeren, die deren Enden decken. Ein Kantenband nach dem anderen. Etiketten zeigen „Länge 1“ als L1 und „Breite 2“ als B2; in Klammern steht die Seite am Möbel.',
    none: 'Keine Kante dieses Auftrags bekommt ein Kantenband.',
    pass: (pass, edging) =>
      `${pass === 1 ? 'Erst die kürzeren Kanten' : 'Dann die längeren Kanten'}: ${edging}`,
    columns: ['Nr.', 'Teil', 'Kanten', 'Kantenlänge', 'Streifen', 'Stück', 'erledigt'],
    edge: (edge) => edges[edge],
    edgeOn: (edge, side) => `${edge} (${side})`,
    need: 'Bedarf an Kantenband',
    needColumns: [
      'Kantenband',
      'Streifen',
      'Meter netto',
      'Überlänge je Streifen',
      'Meter mit Überlänge',
      'Rollen',
    ],
  },
  cutOuts: {
    heading: 'Ausschnitte',
    intro:
      'Auf dem fertigen Teil, wie es auf der Bank liegt und bei den Teilen zum Bohren gezeichnet ist, mit der genannten Fläche nach oben: längs ab der ersten genannten Kante, quer ab der zweiten. Seiten sind die am Möbel. Innenecken runden und jeden Ausschnitt mit der Schablone des Geräts vergleichen.',
    none: 'Kein Teil dieses Auftrags hat einen Ausschnitt.',
    columns: ['Nr.', 'Teil', 'Ausschnitt', 'Lage', 'längs', 'quer', 'Größe', 'erledigt'],
    fromTo: (from, to) => `${from} bis ${to}`,
    lies: (up, along, across) => `${faceBefore(up)} Fläche; ab ${along}, ${across}`,
  },
  units: {
    heading: 'Möbel',
    outside: (x, y, z) => `Außenmaße: ${x} breit, ${y} tief, ${z} hoch.`,
    panels: 'Teile',
    panelColumns: ['Nr.', 'Teil', 'Stück', 'Fertigmaß', 'Platte', 'eingelassen in', 'kg'],
    into: (panels, depth) => `${panels}: ${depth} tief`,
    fittings: 'Beschläge',
    fittingColumns: ['Beschlag', 'Stück', 'erledigt'],
    noFittings: 'Keine Beschläge.',
    mass: (kg) => `Die Teile wiegen ${kg} kg.`,
    assembly: assemblyDe,
  },
  fittings: {
    heading: 'Alle Beschläge',
    intro: (alike) =>
      alike === 1 ? 'Vor dem Zusammenbau bereitlegen.' : `Für alle ${alike} zusammen bereitlegen.`,
    columns: ['Beschlag', 'Stück', 'Packungen', 'für', 'bereit'],
    packs: (packs, pack) => (pack === 1 ? '' : `${packs} zu ${pack}`),
    unit: (unit, count) => `${unit}:\u00a0${count}`,
  },
  appliances: {
    heading: 'Geräte',
    intro:
      'Für diese Geräte ist Platz. Vor dem Zuschnitt die Anleitung jedes Geräts gegen Öffnungen und Abstände hier halten; sie geht den Angaben der Bibliothek vor.',
    columns: ['Gerät', 'Stück', 'Breite × Tiefe × Höhe', 'kg je Stück', 'in', 'bereit'],
  },
  offcuts: {
    byHand: (panel) => `aus einem Ausschnitt von ${panel}: Tauch- oder Stichsäge, dann winklig schneiden`,
    heading: 'Reststücke fürs Lager',
    intro:
      'Jedes Stück bekommt sein Etikett oder dessen Text, bevor es ins Lager kommt. Maße längs und quer zur Platte, aus der es stammt.',
    none: 'Kein Reststück dieses Auftrags lohnt das Aufheben.',
    columns: ['Etikett', 'Platte und Oberfläche', 'Größe', 'Maserung', 'im Lager'],
    grain: { length: 'längs zum ersten Maß', width: 'längs zum zweiten Maß', none: 'keine' },
  },
  stickers: stickersDe,
  purchase: purchaseDe,
  quote: quoteDe,
  compare: compareDe,
  later: laterDe,
  last: {
    heading: 'Letzte Prüfung',
    items: [
      'Jedes Teil ist abgehakt und trägt seine Nummer.',
      'Der Zuschnitt des ersten Teils jedes Schnittplans wurde nachgemessen.',
      'Die Maserung läuft richtig; zusammengehörige Fronten liegen so beieinander, wie sie hängen werden.',
      'Jede Kante der Liste hat ihr Kantenband, bündig, keine Ecke scharf.',
      'Die Ausschnitte wurden mit dem Gerät oder seiner Schablone geprüft.',
      'Alle Beschläge jedes Möbels sind in seine Kiste gezählt.',
      'Die Möbel wurden trocken zusammengebaut; Türen, Klappen und Schubkästen laufen und rasten ein.',
      'Die Reststücke sind beschriftet und im Lager.',
      'Die Säge ist aus, gereinigt, ihr Blatt geprüft.',
    ],
  },
  page: {
    skip: 'Zum Werkbuch',
    find: 'Teil suchen',
    findHint: 'Nummer, Name oder Möbel',
    found: (count) => `${count} gefunden`,
    dark: 'Dunkel',
    light: 'Hell',
    print: 'Drucken',
    zoomIn: 'Größer',
    zoomOut: 'Kleiner',
    fit: 'Ganze Zeichnung',
    planRegion: (plan) => `Zeichnung: ${plan}`,
    ticked: (done, all) => `${done} von ${all} erledigt`,
    ticksStay: 'Haken bleiben auf diesem Gerät, für diesen Plan.',
    noTicksKept: 'Dieses Gerät merkt sich keine Haken: Sie sind fort, wenn die Seite geschlossen wird.',
    clear: 'Alle Haken löschen',
    reallyClear: 'Nochmals tippen, um alle Haken zu löschen',
    tapPlan: 'Ein Teil auf der Zeichnung antippen oder in der Liste abhaken.',
  },
};
