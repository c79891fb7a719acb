import type { AssemblyWords } from './assemblyWords.ts';

const from = {
  left: 'von links',
  right: 'von rechts',
  front: 'von vorn',
  back: 'von hinten',
  bottom: 'von unten',
  top: 'von oben',
} as const;

const begin = (panels: string) => `Beginnen mit ${panels}.`;

export const assemblyDe: AssemblyWords = {
  heading: 'Zusammenbau',
  alone: (panels) => `Ein Teil: ${panels} an seinen Platz setzen.`,
  begin: {
    base: (panels) => `${panels} hinlegen.`,
    upright: (panels) => `${panels} aufstellen.`,
    between: begin,
    back: begin,
    top: (panels) => `${panels} mit der Oberseite nach unten auf die Bank legen.`,
    front: begin,
  },
  put: {
    base: (panels) => `${panels} ansetzen.`,
    upright: (panels) => `${panels} aufrecht ansetzen.`,
    between: (panels) => `${panels} einsetzen.`,
    back: (panels) => `${panels} hinten ansetzen.`,
    top: (panels) => `${panels} auflegen.`,
    front: (panels) => `${panels} vorn ansetzen.`,
  },
  slide: (panels, side) => `${panels} ${from[side]} in die Nuten schieben.`,
  joints: (screws) => `Alle Verbindungen: ${screws}.`,
  square: 'Diagonalen vergleichen: Sind sie gleich, ist es im Winkel.',
  wall: 'An die Wand halten, die Kanten mit Zugabe anreißen und anpassen, dann befestigen.',
  fronts: (panels) => `${panels} vorn anschlagen oder befestigen, Fugen gleichmäßig einstellen.`,
  held: (panels) => `${panels} an ihrem Platz befestigen.`,
  apart: (pieces) =>
    pieces.length === 1
      ? `Für sich zusammenbauen und einsetzen: ${pieces[0]}.`
      : `Jedes für sich zusammenbauen und einsetzen: ${pieces.join('; ')}.`,
  written: {
    put: (panels) => `${panels} ansetzen.`,
    slideIn: (panels) => `${panels} in die Nuten schieben.`,
    apart: (pieces) =>
      `${pieces.length === 1 ? 'Für sich' : 'Jedes für sich'} zusammenbauen: ${pieces.join('; ')}.`,
    set: {
      liftIn: () => 'Im Ganzen einsetzen.',
      toTheBody: () => 'An der Wand oder Karosserie dahinter befestigen.',
      layLoose: () => 'Lose einlegen, herausnehmbar.',
    },
    toTheBody: (panels) => `${panels} an der Wand oder Karosserie dahinter befestigen.`,
    toItsNeighbours: (panels) => `${panels} an den Möbeln daneben befestigen.`,
    hang: (panels) => `${panels} leichtgängig anschlagen.`,
    layLoose: (panels) => `${panels} lose einlegen, herausnehmbar.`,
  },
  fittings: (list) => `Beschläge anbringen: ${list}.`,
  firstFittings: (list) => `Zuerst Beschläge anbringen: ${list}.`,
  lastFittings: (list) => `Zuletzt, wenn alles an seinem Platz ist, Beschläge anbringen: ${list}.`,
};
