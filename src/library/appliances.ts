import { errorFinding, unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Appliance, ApplianceUse } from '../model/library.ts';
import { readCautionUses } from './cautions.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import type { Defined } from './materials.ts';
import { type ApplianceUseField, appliancesFile } from './schemas.ts';

/** `appliances.yaml`; undefined when there is none or it cannot be used. */
export function readAppliances(
  files: LibraryFiles,
  cautions: readonly string[],
): Defined<Appliance> | undefined {
  const read = files.read('appliances.yaml', appliancesFile, 'optional');
  if (read === undefined) return undefined;
  const { reader, value, yaml } = read;
  const appliances = new Map<string, Appliance>();
  for (const [id, written] of Object.entries(value)) {
    const { clear, air, opening } = written;
    const clearUm = (side: keyof NonNullable<typeof clear>) =>
      clear?.[side] === undefined ? 0 : reader.lengthUm(clear, side, 'allowance');
    const brings = readCautionUses(reader, written.cautions, cautions).map(({ caution }) => caution);
    appliances.set(id, {
      id,
      title: written.title,
      widthUm: reader.lengthUm(written, 'width', 'size'),
      depthUm: reader.lengthUm(written, 'depth', 'size'),
      heightUm: reader.lengthUm(written, 'height', 'size'),
      ...(opening === undefined ? {} : { openingUm: readOpening(reader, written, opening) }),
      clearUm: {
        left: clearUm('left'),
        right: clearUm('right'),
        front: clearUm('front'),
        back: clearUm('back'),
        above: clearUm('above'),
        below: clearUm('below'),
      },
      door: written.door ?? null,
      airCm2: { in: air?.in ?? 0, out: air?.out ?? 0 },
      massKg: written.mass ?? null,
      ...(brings.length === 0 ? {} : { cautions: brings }),
    });
  }
  return { values: appliances, names: yaml.namesIn(value) };
}

/** A rim that is no wider than the opening holds nothing. */
function readOpening(
  reader: FieldReader,
  body: { readonly width: unknown; readonly depth: unknown },
  opening: { readonly width: unknown; readonly depth: unknown },
): NonNullable<Appliance['openingUm']> {
  for (const side of ['width', 'depth'] as const) {
    const wideUm = reader.lengthUm(opening, side, 'size');
    if (wideUm < reader.lengthUm(body, side, 'size')) continue;
    const message = `The ${side} of the opening must be less than that of the appliance, which hangs in it by its rim.`;
    const advice = 'Take both figures from its manual: the size over the rim, and that of the opening.';
    reader.report(errorFinding('bad-opening', message, reader.yaml.placeOf(opening, side), { advice }));
  }
  return {
    width: reader.lengthUm(opening, 'width', 'size'),
    depth: reader.lengthUm(opening, 'depth', 'size'),
  };
}

/** What a unit has room for; panels that it names are panels of its own. */
export function readApplianceUses(
  reader: FieldReader,
  uses: Readonly<Record<string, ApplianceUseField>> | undefined,
  panelNames: readonly string[],
): ApplianceUse[] {
  const known = (panel: string, place: ApplianceUse['place']) => {
    if (!panelNames.includes(panel)) {
      reader.report(unknownWord(panel, 'a panel of this unit', panelNames, place));
    }
    return { panel, place };
  };
  const way = (openings: Readonly<Record<string, string>> | undefined) =>
    Object.keys(openings ?? {}).map((panel) => ({
      ...known(panel, reader.yaml.placeOfKey(openings!, panel)),
      cutOut: openings![panel]!,
    }));
  return Object.entries(uses ?? {}).map(([name, use]) => ({
    name,
    place: reader.yaml.placeOfKey(uses!, name),
    appliance: reader.formula(use, 'appliance'),
    at: { x: reader.formula(use.at, 'x'), y: reader.formula(use.at, 'y'), z: reader.formula(use.at, 'z') },
    when: reader.optionalFormula(use, 'when'),
    through: (use.through ?? []).map((panel, index) =>
      known(panel, reader.yaml.placeOf(use.through!, index)),
    ),
    air: { in: way(use['air in']), out: way(use['air out']) },
  }));
}
