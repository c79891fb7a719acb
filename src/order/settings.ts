import { errorFinding, shownText, unknownWord } from '../basics/findings.ts';
import { PlacedYaml } from '../basics/placedYaml.ts';
import { partsOfSetting, SETTING_EXPECTED } from '../basics/settingText.ts';
import { FieldReader } from '../basics/yamlFields.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { Library } from '../model/library.ts';
import type { VariantFile } from './schema.ts';

/** What a setting says, in the form of a file that stands on an order, with a reader that knows its place. */
export interface SettingLayer {
  readonly reader: FieldReader;
  readonly value: Omit<VariantFile, 'variant of'>;
}

const ROLE_FIELDS = ['board', 'finish', 'edging'];

/**
 * One setting of the command line as a layer on top of an order. What stands before the point is a unit where there is
 * one of that name, and a role otherwise. Its place is the setting itself.
 */
export function layerOfSetting(
  text: string,
  units: readonly string[],
  library: Library,
  findings: Finding[],
): SettingLayer | undefined {
  const place: Place = { file: `--set ${shownText(text)}` };
  const parts = partsOfSetting(text);
  if (parts === undefined) {
    const details = { found: shownText(text), expected: SETTING_EXPECTED };
    findings.push(errorFinding('wrong-form', 'This is not written as a setting.', place, details));
    return undefined;
  }
  const { of, name, value } = parts;
  const named = { [name]: value };
  const own = new Map<object, Place>([[named, place]]);
  const layer = (layered: SettingLayer['value'], ...containers: readonly object[]): SettingLayer => {
    for (const container of [layered, ...containers]) own.set(container, place);
    const yaml = new PlacedYaml(place.file, layered, new Map(), own);
    return { reader: new FieldReader(yaml, findings), value: layered };
  };
  if (of === null) return layer({ choices: named });
  if (units.includes(of)) {
    const change = { unit: of, set: named };
    const changes = [change];
    return layer({ changes }, changes, change);
  }
  if (!library.roles.has(of)) {
    const known = [...units, ...library.roles.keys()];
    findings.push(unknownWord(of, 'a unit of this order or a role of its library', known, place));
    return undefined;
  }
  if (!ROLE_FIELDS.includes(name)) {
    findings.push(unknownWord(name, 'what can be set of a role', ROLE_FIELDS, place));
    return undefined;
  }
  const roles = { [of]: named };
  return layer({ roles }, roles);
}
