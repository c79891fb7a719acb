import type { MassWords } from './massWords.ts';

const persons = (count: number) => `${count} ${count === 1 ? 'Person' : 'Personen'}`;
const sides = { left: 'links', right: 'rechts', middle: '' } as const;

/** Words about mass in German. */
export const massDe: MassWords = {
  heading: 'Masse',
  intro:
    'Platten mit ihren Kanten, die Beschläge jedes Möbels und die Geräte darin in kg, aus den Angaben der Bibliothek gerechnet und nicht gewogen. Geräte, deren Masse dort fehlt, Polster und Ladung sind nicht dabei.',
  byUnit: 'Je Möbel',
  columns: [
    'Möbel',
    'Platten',
    'Kanten',
    'Beschläge',
    'Geräte',
    'zusammen',
    'links',
    'rechts',
    'vorn',
    'hinten',
  ],
  all: 'alles zusammen',
  centre: (fromFront, fromMiddle, side, above) => {
    const across = side === 'middle' ? 'auf der Mittellinie' : `${fromMiddle} ${sides[side]} der Mittellinie`;
    return `Schwerpunkt: ${fromFront} vom vorderen Ende, ${across}, ${above} über dem Boden.`;
  },
  account: 'Zuladung',
  accountColumns: ['wohin sie geht', 'kg'],
  payload: (vehicle) => `Zuladung von ${vehicle}, wie die Bibliothek sie angibt`,
  furniture: 'abzüglich Möbel: Platten, Kanten und Beschläge',
  appliances: 'abzüglich Geräte, soweit die Bibliothek ihre Masse nennt',
  passengers: (count, eachKg) =>
    count === 0
      ? 'abzüglich Mitfahrer: keine (wer fährt, zählt zum Fahrzeug)'
      : `abzüglich Mitfahrer: ${count} × ${eachKg} kg (wer fährt, zählt zum Fahrzeug)`,
  left: 'bleibt für den übrigen Ausbau und für Ladung',
  least: (count, lengthM, eachKg) =>
    `davon für Ladung freizuhalten: ${eachKg} kg × (${persons(count)} + ${lengthM} m Länge)`,
  rest: 'bleibt für Batterie, Tanks, Dämmung, Polster, weitere Geräte, alles andere',
  persons: (count, from) => {
    switch (from) {
      case 'order':
        return `Nach dem Auftrag fahren ${persons(count)}, Fahrer oder Fahrerin mitgezählt.`;
      case 'choices':
        return `Nach der Wahl zum Grundriss fahren ${persons(count)}, Fahrer oder Fahrerin mitgezählt.`;
      case 'seats':
        return `Der Grundriss hat Sitze für ${persons(count)}, Fahrer oder Fahrerin mitgezählt.`;
      case 'driver alone':
        return 'Weder Auftrag noch Grundriss sagen, wer mitfährt; gezählt ist nur, wer fährt: schreiben Sie `persons` in den Auftrag.';
      default:
        throw new Error(`nobody counts persons by ${from satisfies never}`);
    }
  },
  uneven: (heavy, percent, aside, evenedByKg) => {
    const side = heavy === 'left' ? 'linke' : 'rechte';
    const where = heavy === 'left' ? 'links' : 'rechts';
    return `Die ${side} Seite trägt ${percent} % von Möbeln und Geräten; der Schwerpunkt liegt ${aside} ${where} der Mittellinie. ${evenedByKg} kg auf der anderen Seite, auf halbem Weg zu deren Wand, gleichen das aus: Wassertank, Batterie und anderes Schwere dorthin.`;
  },
  tooLittle:
    'Die Möbel lassen weniger übrig, als frei zu halten ist. Möbel weglassen, leichtere Platten nehmen oder weniger Personen mitnehmen.',
  source:
    'Regel für Wohnmobile: (EU) 1230/2012, Anhang I, Teil A, 2.6.4.1.2, inzwischen ersetzt durch (EU) 2021/535. Es entscheiden die Waage und wer das Fahrzeug zulässt.',
};
