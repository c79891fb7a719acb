import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A plain list of panels and one of sheets, as a joiner would write them. */
export const panelList = `name,length,width,count,grain
side,720,560,8,length
shelf,564,540,6,width
door,716,296,7,length
back,600,568,3,none
`;

export const sheetList = `length,width,grain,count,price
2500,1250,length,,80
2440,1220,length,2,60
`;

/** Writes files by path into a folder. */
export function writeFiles(folder: string, files: Readonly<Record<string, string>>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

export const cutLists = ['cut', '--panels', 'panels.csv', '--sheets', 'sheets.csv'] as const;
