/** Draws pictures into a folder to be looked at: `tsx tests/pictures/draw.ts FOLDER [NAME...]`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { toSvg } from '../drawing/drawingTools.ts';
import { fileName, pictures } from './pictures.ts';

const [folder, ...names] = process.argv.slice(2);
if (folder === undefined) throw new Error('name the folder to draw into');
mkdirSync(folder, { recursive: true });
for (const [name, draw] of Object.entries(pictures)) {
  if (names.length > 0 && !names.includes(name)) continue;
  draw().forEach((drawing, index) => {
    writeFileSync(`${folder}/${fileName(name, index + 1)}`, toSvg(drawing));
  });
}
