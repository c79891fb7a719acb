import { describe, expect, it } from 'vitest';
import { de } from '../../src/documents/words/de.ts';

describe('faces and edges in German', () => {
  const { faces, outlines } = de.drawings.furniture;
  const adjectives = {
    left: 'linke',
    right: 'rechte',
    front: 'vordere',
    back: 'hintere',
    bottom: 'untere',
    top: 'obere',
  } as const;

  it.each(Object.entries(adjectives))(
    'are named before their noun as people say it: %s',
    (face, adjective) => {
      const word = faces[face as keyof typeof faces];
      expect(de.drawings.panel.faceUp(word)).toBe(`oben liegt die ${adjective} Fläche`);
      expect(de.cutOuts.lies(word, faces.bottom, faces.left)).toBe(`${adjective} Fläche; ab unten, links`);
      expect(outlines.from('side', word, faces.front)).toBe(
        `side: ab der ${adjective}n und der vorderen Kante`,
      );
      expect(de.drawings.panel.marksFromSawn(word, '9 mm')).toContain(`die ${adjective} Kante`);
    },
  );
});
