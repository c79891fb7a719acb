import type { Library } from '../../src/model/library.ts';
import type { ListKind, ListOptions } from '../commands/list.ts';
import { listKinds } from '../commands/list.ts';
import { librariesOfCommand } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';
import { jsonText, print } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { counted } from '../terminal/text.ts';
import { describeLayout, describeUnit, libraryTable } from './libraryTables.ts';

/** Prints what a library holds; one after another where there are several and none is named. */
export async function printList(kind: ListKind, options: ListOptions): Promise<void> {
  const libraries: Library[] = [];
  for (const folder of await librariesOfCommand(options.library)) {
    const library = folder.ok ? await loadLibrary(folder.value) : folder;
    if (!library.ok) return reportFindings(library.findings, options);
    libraries.push(library.value);
  }
  const [first, ...more] = libraries;
  if (options.json) {
    const all = libraries.map((library) => asData(library, kind));
    return print(jsonText(more.length === 0 ? all[0] : { libraries: all }, mapsToObjects));
  }
  if (first !== undefined && more.length === 0) return print(asText(first, kind));
  const texts = libraries.map((library) =>
    kind === 'library'
      ? asText(library, kind)
      : `${library.title} (${library.id})\n\n${asText(library, kind)}`,
  );
  await print(texts.join('\n'));
}

function mapsToObjects(_: string, value: unknown): unknown {
  return value instanceof Map ? Object.fromEntries(value) : value;
}

function asData(library: Library, kind: ListKind): unknown {
  if (kind !== 'library') return { library: library.id, [kind]: library[kind] };
  const { id, title, note, currency } = library;
  const counts = Object.fromEntries(
    listKinds.flatMap((k) => {
      if (k === 'library') return [];
      const held = library[k];
      return [[k, 'size' in held ? held.size : held.length]];
    }),
  );
  return { library: id, title, note, currency, counts };
}

function asText(library: Library, kind: ListKind): string {
  switch (kind) {
    case 'library': {
      const rows = listKinds.flatMap((k) => {
        if (k === 'library') return [];
        const held = library[k];
        const names = 'size' in held ? [...held.keys()] : held.map((sheet) => sheet.id);
        return [[k, String(names.length), names.slice(0, 3).join(', ') + (names.length > 3 ? ', …' : '')]];
      });
      return [
        `${library.title} (${library.id}, prices in ${library.currency})`,
        library.note,
        '',
        plainTable(['kind', 'how many', ''], rows, 'lrl'),
        '',
        `'plywright list KIND' prints one kind in full.`,
        '',
      ].join('\n');
    }
    case 'units':
      return `${[...library.units.values()].map(describeUnit).join('\n\n')}\n\n${counted(library.units.size, 'unit')}\n`;
    case 'layouts':
      return `${[...library.layouts.values()].map((layout) => describeLayout(layout, library)).join('\n\n')}\n`;
    default:
      return `${libraryTable(library, kind)}\n`;
  }
}
