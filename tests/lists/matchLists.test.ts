import { describe, expect, test } from 'vitest';
import { matchLists, readPanelList, readSheetList } from '../../src/lists/index.ts';

const files = { panels: 'p.csv', sheets: 's.csv' };

function match(panels: readonly string[], sheets: readonly string[]) {
  const parts = readPanelList(panels.join('\n'), files.panels);
  const supplies = readSheetList(sheets.join('\n'), files.sheets);
  if (!parts.ok || !supplies.ok) throw new Error('the lists of a test are wrong');
  return matchLists(parts.value, supplies.value, files);
}

function boards(read: ReturnType<typeof match>): string[][] {
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const words = (each: { board: string; finish: string; thicknessUm: number }) =>
    `${each.board}|${each.finish}|${each.thicknessUm}`;
  return [read.value.parts.map(words), read.value.sheets.map(words)];
}

describe('lists that go together', () => {
  test('neither says what the boards are', () => {
    expect(boards(match(['name,length,width', 'a,1,1'], ['length,width', '9,9', '8,8']))).toEqual([
      ['||0'],
      ['||0', '||0'],
    ]);
  });

  test('both say the same, in other cases and spaces', () => {
    const read = match(
      ['name,length,width,board,finish,thickness', 'a,1,1,BIRCH  ply,Oak,15', 'b,1,1,mdf,,"3/4"""'],
      ['length,width,board,finish,thickness', '9,9,birch ply,oak,15 mm', '9,9,MDF,,19.05'],
    );
    expect(boards(read)).toEqual([
      ['birch ply|oak|15000', 'MDF||19050'],
      ['birch ply|oak|15000', 'MDF||19050'],
    ]);
  });

  test('what the panels leave out is taken from the only sheets', () => {
    expect(
      boards(
        match(
          ['name,length,width', 'a,1,1'],
          ['length,width,board,thickness', '9,9,birch,15', '8,8,Birch,15'],
        ),
      ),
    ).toEqual([['birch||15000'], ['birch||15000', 'birch||15000']]);
  });

  test('what the sheets leave out is taken from the only panels', () => {
    expect(
      boards(
        match(['name,length,width,board,finish', 'a,1,1,birch,oak'], ['length,width,thickness', '9,9,15']),
      ),
    ).toEqual([['birch|oak|15000'], ['birch|oak|15000']]);
  });

  test('sheets of boards that no panel needs do not matter', () => {
    const read = match(
      ['name,length,width,board', 'a,1,1,birch'],
      ['length,width,board', '9,9,birch', '9,9,oak'],
    );
    expect(boards(read)).toEqual([['birch||0'], ['birch||0', 'oak||0']]);
  });
});

describe('lists that do not', () => {
  test('a board that no sheet is of', () => {
    const read = match(
      [
        'name,length,width,board,thickness',
        'a,1,1,birch,15',
        'b,1,1,brich,15',
        'c,1,1,brich,15',
        'd,1,1,birch,18',
      ],
      ['length,width,board,thickness', '9,9,birch,15'],
    );
    expect(read.findings).toMatchObject([
      {
        code: 'no-sheets',
        place: { file: 'p.csv', line: 3 },
        found: '15 mm, brich',
        nearest: '15 mm, birch',
      },
      { code: 'no-sheets', place: { file: 'p.csv', line: 5 }, found: '18 mm, birch' },
    ]);
    expect(read.findings[0]?.message).toContain('s.csv');
  });

  test('panels that could be of several boards', () => {
    const read = match(['name,length,width', 'a,1,1'], ['length,width,board', '9,9,birch', '9,9,oak']);
    expect(read.findings).toMatchObject([
      {
        code: 'unclear-board',
        place: { line: 2 },
        expected: '(birch) or (oak)',
        advice: expect.stringContaining('board'),
      },
    ]);
  });

  test('sheets that could be of several boards', () => {
    const read = match(['name,length,width,board', 'a,1,1,birch', 'b,1,1,oak'], ['length,width', '9,9']);
    expect(read.findings).toMatchObject([
      { code: 'unclear-board', advice: expect.stringContaining('board') },
      { code: 'unclear-board', place: { line: 3 } },
    ]);
  });
});
