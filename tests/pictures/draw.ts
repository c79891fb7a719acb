/** Draws pictures into a folder to be looked at: `tsx tests/pictures/draw.ts FOLDER [NAME...]`. */
import { writeFileSync } from 'node:fs';
import { toSvg } from '../drawing/drawingTools.ts';
import { pictures } from './pictures.ts';

const [folder, ...names] = process.argv.slice(2);
for (const [name, draw] of Object.entries(pictures)) {
  if (names.length > 0 && !names.includes(name)) continue;
  draw().forEach((drawing, index) => {
    writeFileSync(`${folder}/${name}-${index + 1}.svg`, toSvg(drawing));
  });
}
