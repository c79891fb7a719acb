import type { AssemblyWords } from './assemblyWords.ts';

const from = {
  left: 'from the left',
  right: 'from the right',
  front: 'from the front',
  back: 'from behind',
  bottom: 'from below',
  top: 'from above',
} as const;

const begin = (panels: string) => `Begin with ${panels}.`;

const them = (pieces: number) => (pieces === 1 ? 'it' : 'them');

export const assemblyEn: AssemblyWords = {
  heading: 'Putting together',
  alone: (panels) => `One panel: set ${panels} in its place.`,
  begin: {
    base: (panels) => `Lay down ${panels}.`,
    upright: (panels) => `Stand up ${panels}.`,
    between: begin,
    back: begin,
    top: (panels) => `Lay ${panels} on the bench, upside down.`,
    front: begin,
  },
  put: {
    base: (panels) => `Put ${panels} to it.`,
    upright: (panels) => `Put ${panels} to it, upright.`,
    between: (panels) => `Put in ${panels}.`,
    back: (panels) => `Put ${panels} to the back.`,
    top: (panels) => `Lay ${panels} on top.`,
    front: (panels) => `Put ${panels} to the front.`,
  },
  slide: (panels, side) => `Slide ${panels} into the grooves ${from[side]}.`,
  joints: (screws) => `All joints: ${screws}.`,
  square: 'Compare the diagonals: where they are alike it is square.',
  wall: 'Offer it up to the wall, scribe and trim the edges that have something left on for that, and fix it.',
  fronts: (panels) => `Hang or fix ${panels} on the front, and set the gaps alike.`,
  held: (panels) => `Fix ${panels} in its place.`,
  apart: (pieces) =>
    pieces.length === 1
      ? `Put together on its own and put in: ${pieces[0]}.`
      : `Put together each on its own and put in: ${pieces.join('; ')}.`,
  written: {
    put: (panels) => `Put ${panels} to it.`,
    slideIn: (panels) => `Slide ${panels} into the grooves.`,
    apart: (pieces) => `Put together ${pieces.length === 1 ? '' : 'each '}on its own: ${pieces.join('; ')}.`,
    set: {
      liftIn: (pieces) => `Set ${them(pieces)} in place in one piece.`,
      toTheBody: (pieces) => `Fix ${them(pieces)} to the wall or the body behind.`,
      layLoose: (pieces) => `Lay ${them(pieces)} in place, loose, to be lifted out again.`,
    },
    toTheBody: (panels) => `Fix ${panels} to the wall or the body behind.`,
    toItsNeighbours: (panels) => `Fix ${panels} to the units beside this one.`,
    hang: (panels) => `Hang ${panels}, free to move.`,
    layLoose: (panels) => `Lay ${panels} in place, loose, to be lifted out again.`,
  },
  fittings: (list) => `Fit ${list}.`,
  firstFittings: (list) => `Before anything else fit ${list}.`,
  lastFittings: (list) => `Last, with all in its place: ${list}.`,
};
