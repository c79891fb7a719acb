import type { DrawingWords } from '../../drawing/index.ts';
import type { CutGuide } from '../../model/stock.ts';
import { faceBeforeDative } from './facesDe.ts';
import { panelsDe } from './panelsDe.ts';

const sides = { left: 'links', right: 'rechts', near: 'vorn', far: 'hinten' } as const;
const many = (count: number, one: string, several: string) => `${count} ${count === 1 ? one : several}`;

const guides = { fence: 'Anschlag', rail: 'Schiene' } as const;

/** Common rules for circular saws, by what guides them; sources are beside the English ones. */
const careAt: Readonly<Record<CutGuide, (sign: string) => string>> = {
  fence: (sign) =>
    `Schiebestock bei Schnitten unter 300 mm, auf den letzten 300 mm längerer und bei weniger als 150 mm am Anschlag (${sign}); Schiebeholz unter 50 mm. Haube, Spaltkeil und Absaugung an.`,
  rail: (sign) =>
    `Schiene auf die Seite legen, von der gemessen wird, ihre Kante am Riss, die Schnittfuge jenseits; beim Besäumen auf das, was bleibt. An beiden Enden festspannen, die Platte auf beiden Seiten des Schnitts auflegen. Unter 200 mm (${sign}) die Schiene mit gleich dicker Platte unterlegen. Haube und Absaugung an.`,
};

/** The words of drawings in German. */
export const drawingsDe: DrawingWords = {
  page: {
    workshop: 'Werkstatt',
    job: 'Auftrag',
    document: 'Dokument',
    date: 'Datum',
    page: 'Blatt',
    scale: 'Maßstab',
    scaleAndUnits: (units) => (units === 'mm' ? 'Maßstab, Maße in mm' : 'Maßstab, in Zoll (mm)'),
    of: (number, all) => `${number} von ${all}`,
    continued: (title) => `${title}, Fortsetzung`,
  },
  cutPlan: {
    document: 'Schnittplan',
    overview: 'Übersicht',
    board: 'Platte und Oberfläche',
    stock: (kind) => (kind === 'sheet' ? 'Platte, Länge × Breite' : 'Reststück, Länge × Breite'),
    label: 'Etikett des Reststücks',
    grain: 'Maserung',
    grainRuns: { length: 'längs', width: 'quer', none: 'keine' },
    saw: 'Säge',
    kerf: (kerf) => `Schnittfuge ${kerf}`,
    trim: {
      none: 'ohne Besäumen',
      all: (trim) => `ringsum ${trim} besäumen`,
      each: ({ left, right, near, far }) =>
        `besäumen: links ${left}, rechts ${right}, vorn ${near}, hinten ${far}`,
    },
    sawRules: {
      longestCut: (length) => `kein Schnitt über ${length}`,
      smallestPart: (width) => `nichts unter ${width} breit`,
    },
    alike: 'So gesägt',
    sheets: (count) => many(count, 'Platte', 'Platten'),
    stack: {
      together: (sheets) => `${sheets} Platten zusammen sägen`,
      withPlans: (together, plans) =>
        `${together}, mit ${plans.length === 1 ? 'Schnittplan' : 'Schnittplänen'} ${plans.join(', ')}`,
      through: (sheets) => `jeder durch ${sheets} Platten`,
      names: {
        title: 'Andere Namen auf anderen Platten des Stapels',
        shortTitle: 'Andere Namen',
        columns: ['Stück', 'auf dieser Platte', 'auf Platten anderer Schnittpläne'],
        onPlans: (plans, panel) => `${plans.length === 1 ? 'Plan' : 'Pläne'} ${plans.join(', ')}: ${panel}`,
      },
    },
    sides,
    offcut: 'RESTSTÜCK',
    waste: 'Abfall',
    piece: (name) => name.replace(/^sheet(?=$| \d+$)/, 'Platte'),
    run: (name, place) => `Reihe ${name}\u00a0${place}`,
    legend: {
      cutNumber: 'Nummer eines Schnitts',
      edged: (edging) => `Kante: ${edging}`,
      anotherEdging: 'Kante: eine andere',
      waste: 'Abfall',
      offcut: 'Reststück fürs Lager',
      trim: 'Besäumen',
      grain: 'Maserung, erstes Maß einer Größe',
      byHand: 'nach dem Sägen von Hand ausschneiden',
      restFrom: (first) => `${first} und alles danach`,
      span: (first, last) => `${first} bis ${last}`,
    },
    care: (sign, narrow, guide) =>
      `${careAt[guide](sign)} Ihre Regeln und die Betriebsanleitung der Säge gehen vor.${narrow === 0 ? '' : ` Hier ${many(narrow, 'solcher Schnitt', 'solche Schnitte')}.`}`,
    steps: {
      title: (lies, through, guide) =>
        `Schnitte der Reihe nach${through === null ? '' : `, ${through}`} · ${guides[guide]} ab der ${lies === 'turned' ? 'rechten oder unteren' : 'linken oder unteren'} Kante im Bild`,
      shortTitle: 'Schnitte',
      columns: (guide) => ['Nr.', 'Schnitt', 'Stück', guides[guide], 'ergibt'],
      cut: { rip: 'längs', crosscut: 'quer', recut: 'nach', part: 'trennen' },
      trim: (side) => `säumen ${sides[side]}`,
      off: (take) => `ab ${take}`,
      shaved: (take) => `nur ${take} fällt weg`,
    },
    unmarked: {
      title: 'Kein Platz für die Zeichen von, ab der linken und vorderen Seite der rohen Platte',
      shortTitle: 'Kein Platz für Zeichen',
      columns: ['Z.', 'wo es liegt'],
      from: (left, near) => `links ${left}, vorn ${near}`,
    },
    unnumbered: { title: 'Kein Platz für die Nummern von', shortTitle: 'Kein Platz', column: 'Schnitte' },
    key: {
      title: 'Schlüssel der Zeichen',
      shortTitle: 'Schlüssel',
      columns: ['Z.', 'Teil', 'Zuschnitt', 'Mas.'],
      yes: 'ja',
      no: 'nein',
    },
    small: {
      plans: 'Schnittpläne',
      sheetsInAll: 'Platten insgesamt',
      panels: 'Teile',
      countOfPanels: (count) => many(count, 'Teil', 'Teile'),
      countOfCuts: (count) => many(count, 'Schnitt', 'Schnitte'),
      countAlike: (count) => (count === 1 ? '1 Platte' : `${count} gleiche Platten`),
      notes: [
        'Gleich gesägte Platten sind einmal gezeichnet, mit ihrer Anzahl.',
        'Nummern sind die der Schnittpläne.',
      ],
    },
    title: (number, all, group) => `Schnittplan ${number} von ${all}, ${group}`,
    description: ({ size, copies, panels, offcuts, cuts, page, pages }) =>
      `Platte von ${size}, ${copies} so gesägt: ${panels} Teile und ${offcuts} Reststücke in ${cuts} Schnitten. Blatt ${page} von ${pages}.`,
    overviewTitle: (group) => `Übersicht von ${group}`,
    overviewDescription: (plans, page, pages) =>
      `${plans} Schnittpläne als kleine Bilder. Blatt ${page} von ${pages}.`,
  },
  furniture: {
    of: 'Von',
    kind: 'Art',
    outsideSize: 'Breite × Tiefe × Höhe',
    insideSize: 'Innen Länge × Breite × Höhe',
    projection: 'Projektion',
    firstAngle: 'Methode 1',
    isometric: 'isometrisch',
    noScale: 'ohne',
    unit: 'Möbel',
    panelsOfUnit: 'Teile',
    layout: 'Grundriss',
    views: { front: 'Vorn', left: 'Von links', plan: 'Von oben' },
    hiddenLeader: 'Eine gestrichelte Linie führt zu einem Teil, das hinter anderen steht.',
    panels: {
      title: 'Teile, Länge entlang der Maserung',
      shortTitle: 'Teile',
      columns: ['Nr.', 'Teil', 'Zuschnitt', 'Fertigmaß', 'Platte und Oberfläche'],
    },
    opening: (name, size) => `Ausschnitt „${name}“ ${size}`,
    faces: { left: 'links', right: 'rechts', front: 'vorn', back: 'hinten', bottom: 'unten', top: 'oben' },
    outlines: {
      title: 'Umrisse an der Wand, auf dem gesägten Teil anzuzeichnen',
      shortTitle: 'Umrisse',
      columns: ['Nr.', 'Teil', 'Ecke', 'entlang Länge', 'entlang Breite'],
      from: (panel, edge, otherEdge) =>
        `${panel}: ab der ${faceBeforeDative(edge)} und der ${faceBeforeDative(otherEdge)} Kante`,
      scribing: (allowance, edge) => `${allowance} Zugabe ${edge} zum Anpassen an die Wand`,
    },
    fittings: { title: 'Beschläge', columns: ['Stück', 'Beschlag'] },
    doorOpening: 'Türöffnung',
    wheelArch: 'Radkasten',
    appliance: 'Gerät',
    obstacle: 'was dort schon steht',
    walkway: (width) => `Gang ${width}`,
    hangsAbove: 'von oben: hängt darüber',
    rightWall: 'Rechte Wand',
    leftWall: 'Linke Wand',
    inside: {
      vehicle: {
        plan: 'Von oben: Fahrerhaus links, rechte Seite des Fahrzeugs oben',
        section: 'Schnitt, Blick zum Fahrerhaus',
      },
      room: {
        plan: 'Von oben: vorderes Ende links, rechte Wand oben',
        section: 'Schnitt, Blick zum vorderen Ende',
      },
    },
    unitTitle: (job, unit) => `${job}: ${unit}`,
    unitDescription: (unit, size) => `${unit} von vorn, von links und von oben, ${size}, mit Maßen.`,
    panelsTitle: (job, unit) => `${job}: Teile von ${unit}`,
    panelsDescription: (unit, panels) =>
      `${unit} auseinandergezogen, mit Nummern, Maßen und Platten der ${panels} Teile.`,
    layoutTitle: (job) => `${job}: Grundriss`,
    layoutDescription: (vehicle, units) =>
      `Aufsicht, Schnitt und beide Wände von ${vehicle} mit ${units} Möbeln.`,
    contactSheet: {
      document: 'Möbel',
      kind: (units) => `${units} Möbel mit den Werten der Bibliothek, etwas auseinandergezogen`,
      underEach: 'unter jedem Möbel',
      title: (library) => `${library}: Möbel`,
      description: (units) =>
        `Möbel, etwas auseinandergezogen, mit Außenmaß und Zahl der Teile: ${units.join(', ')}.`,
    },
  },
  panel: panelsDe,
};
