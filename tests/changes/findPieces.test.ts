import { describe, expect, it } from 'vitest';
import { findPieces, type NamedPiece } from '../../src/changes/findPieces.ts';

function pieces(number: number, unit: string, name: string, count = 1): NamedPiece[] {
  return Array.from({ length: count }, (_, index) => ({
    code: `PW1/VAN/GREY/${number}/${index + 1}`,
    number,
    piece: index + 1,
    id: unit === '' ? name : `${unit}/${name}`,
    name,
    unit,
  }));
}

const all = [
  ...pieces(1, 'sink', 'left side'),
  ...pieces(2, 'bed', 'left side'),
  ...pieces(3, 'bed', 'slat', 3),
  ...pieces(4, '', '7'),
];

function found(...words: string[]): string {
  const read = findPieces(
    all,
    words.map((text, index) => ({ text, file: 'labels.txt', line: index + 1 })),
  );
  if (!read.ok) return read.findings.map(({ code, place }) => `${code} ${place?.line}`).join(', ');
  return read.value.map(({ number, piece }) => `${number}/${piece}`).join(' ');
}

describe('pieces as people name them', () => {
  it.each([
    [['1'], '1/1'],
    [['Sink/Left Side'], '1/1'],
    [['left side, bed'], '2/1'],
    [['bed left side'], '2/1'],
    [[' pw1/van/grey/3/2 '], '3/2'],
    [['3/2', 'slat/3'], '3/2 3/3'],
    [['slat/all'], '3/1 3/2 3/3'],
    [['bed/slat/1'], '3/1'],
    // The number of a panel comes before a panel with that name.
    [['4'], '4/1'],
    [['2', '1', '2'], '1/1 2/1'],
  ])('%j are %s', (words, expected) => {
    expect(found(...words)).toBe(expected);
  });

  it.each([
    [['left side'], 'panel-unclear 1'],
    [['slat'], 'piece-unclear 1'],
    [['3/4'], 'piece-unclear 1'],
    [['1', 'shelf', '99'], 'panel-unknown 2, panel-unknown 3'],
    [['PW1/VAN/GREY/9/1'], 'panel-unknown 1'],
    [['PW1/VAN/GREY/OFF/1/A/1'], 'panel-unknown 1'],
  ])('%j are refused: %s', (words, expected) => {
    expect(found(...words)).toBe(expected);
  });
});
