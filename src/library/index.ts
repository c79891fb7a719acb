import { checkedValue, unknownWord } from '../basics/findings.ts';
import { placeWord } from '../basics/vehicleSection.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Library, TextFiles } from '../model/library.ts';
import { readAppliances } from './appliances.ts';
import { checkAssemblies } from './assembly.ts';
import { cautionWords, readCautionTexts } from './cautions.ts';
import { checkCircularUnits, settleUses } from './crossReferences.ts';
import { readDrilling } from './drilling.ts';
import { readLayout } from './layouts.ts';
import { LibraryFiles } from './libraryFiles.ts';
import { readBoards, readEdgings, readFinishes, readFittings, readSaws, readSheets } from './materials.ts';
import { readRates } from './rates.ts';
import { libraryFile } from './schemas.ts';
import { readFreeDays, readSuppliers } from './suppliers.ts';
import { readUnit } from './units.ts';
import { readVehicle } from './vehicles.ts';

/**
 * A library of parts from its texts: `library.yaml`, `boards.yaml`, `finishes.yaml`, `edgings.yaml`, `fittings.yaml`,
 * `drilling.yaml`, `appliances.yaml`, `sheets.yaml`, `suppliers.yaml`, `saws.yaml`, `rates.yaml` and the folders `vehicles/`, `units/` and `layouts/` under `root`, a path without a final
 * slash (empty when the paths begin at the library). Its id is the last folder of `root`. Every error of every file
 * comes back at once, with its place; what one file names in another is there; no unit contains itself. Formulas are
 * taken as text with their place and not read.
 */
export function readLibrary(files: TextFiles, root: string): Checked<Library> {
  const findings: Finding[] = [];
  const source = new LibraryFiles(files, root, findings);
  const head = source.read('library.yaml', libraryFile, 'needed', { title: '?', currency: 'XXX', roles: {} });
  // What the other files of a library of another version mean nobody here can know.
  if (findings.some(({ code }) => code === 'other-version'))
    return checkedValue<Library>(undefined, findings);
  const roles = new Map(Object.entries(head?.value.roles ?? {}));
  const roleNames = head?.yaml.isWritten(head.value, 'roles')
    ? head.yaml.namesIn(head.value.roles)
    : undefined;
  const loads = new Map(Object.entries(head?.value.loads ?? {}));
  for (const role of roleNames === undefined ? [] : loads.keys()) {
    if (roleNames?.includes(role) || head === undefined) continue;
    const place = head.yaml.placeOfKey(head.value.loads!, role);
    findings.push(unknownWord(role, 'a role of this library', roleNames ?? [], place));
  }
  const finishes = readFinishes(source);
  const boards = readBoards(source);
  const suppliers = readSuppliers(source);
  const edgings = readEdgings(source, finishes?.names, suppliers.names);
  const cautions = readCautionTexts(head);
  const fittings = readFittings(source, cautionWords(head), suppliers.names);
  const drilling = readDrilling(source);
  const appliances = readAppliances(source, cautionWords(head));
  const sheets = readSheets(source, boards?.names, finishes, suppliers.names);
  const saws = readSaws(source);
  const rates = readRates(source, source.idsIn('units'));
  const vehicles = source.readFolder('vehicles', readVehicle);
  const known = {
    roles: roleNames,
    fittings: fittings === undefined && source.has('fittings.yaml') ? undefined : (fittings?.names ?? []),
    drilling: drilling === undefined && source.has('drilling.yaml') ? undefined : (drilling?.names ?? []),
    units: source.idsIn('units'),
    cautions: cautionWords(head),
    place: placeWord(vehicles.values()),
  };
  const units = source.readFolder('units', (files, path) => readUnit(files, path, known));
  const layouts = source.readFolder('layouts', (files, path) => readLayout(files, path, known));
  source.warnOfStrangeFiles();
  const library: Library = {
    id: root.split('/').at(-1) || 'library',
    title: head?.value.title ?? '',
    note: head?.value.note ?? '',
    currency: head?.value.currency ?? '',
    roles,
    ...(loads.size === 0 ? {} : { loadsKgPerM2: loads }),
    ...(cautions.size === 0 ? {} : { cautions }),
    boards: boards?.values ?? new Map(),
    finishes: finishes?.values ?? new Map(),
    edgings: edgings?.values ?? new Map(),
    fittings: fittings?.values ?? new Map(),
    drilling: drilling?.values ?? new Map(),
    ...(appliances === undefined ? {} : { appliances: appliances.values }),
    sheets: sheets ?? [],
    suppliers: suppliers.values,
    freeDays: readFreeDays(head),
    saws: saws?.values ?? new Map(),
    vehicles,
    ...(rates === undefined ? {} : { rates }),
    units,
    layouts,
  };
  const settled = settleUses(library, source.flawed);
  findings.push(
    ...settled.findings,
    ...checkCircularUnits(library),
    ...checkAssemblies(library, source.flawed),
  );
  return checkedValue({ ...library, units: settled.units, layouts: settled.layouts }, findings);
}
