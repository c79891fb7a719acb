import type { Command } from 'commander';
import { partsOfSetting, SETTING_EXPECTED } from '../../src/basics/settingText.ts';
import type { Units } from '../../src/pipeline/makePapers.ts';
import { lengthUnits, paperLanguages } from '../papers/kinds.ts';
import { oneOf } from './paperOptions.ts';

/** What `plywright draw` was asked for. */
export interface DrawOptions {
  readonly out?: string;
  readonly unit?: string;
  readonly set?: readonly string[];
  readonly allUnits?: true;
  readonly library?: string;
  readonly json?: true;
  readonly replace?: true;
  readonly language: string;
  readonly lengths: Units;
}

const more = `
Drawings of an order go to DIR/<name of the order>/drawings/: layout.svg with
the plan, the body's section and both walls, and for each unit a page with
front, side and plan and a page with the unit drawn apart, its panels and its
fittings.

With --unit one unit of the library is drawn by itself. Boards are those of
ORDER; without one, those of the first order in the library's orders/. Panels
that follow a wall stay straight: alone it stands at none.

--set tries an order with something otherwise, as 'plywright cut --help' says;
with --unit it gives the unit's parameters values.

With --all-units every unit of the library is drawn on pages with twelve each,
with its outside size and how many panels it has, into
DIR/<name of the library>/drawings/.

Examples:
  plywright draw parts-libraries/demo-van/orders/demo-long.yaml
  plywright draw my-order.yaml --out jobs
  plywright draw my-order.yaml --set bed_width=1300
  plywright draw --unit wardrobe --library demo-van
  plywright draw --all-units --library demo-van
  plywright draw my-order.yaml --unit wardrobe --set width=450 --set hand=right

Exit codes: as in 'plywright --help'.
`;

/** Of a unit by itself only a parameter can be set, and it needs no unit before it. */
function isSetting(text: string, ofUnit: boolean): boolean {
  return ofUnit ? /^[^=\s]+=\S/.test(text) : partsOfSetting(text) !== undefined;
}

function collect(text: string, earlier: readonly string[] = []): readonly string[] {
  return [...earlier, text];
}

/** Adds `plywright draw`. */
export function addDrawCommand(program: Command): void {
  program
    .command('draw')
    .description('Draws every unit of an order and all of them in the vehicle, or one unit alone (SVG).')
    .argument('[ORDER]', 'order file (YAML)')
    .option('--out <DIR>', 'folder in which each job gets its folder (default: "out")')
    .option('--unit <UNIT>', 'draw only this unit of the library, by itself')
    .option('--all-units', 'draw every unit of the library, small, side by side')
    .option(
      '--set <NAME=VALUE>',
      'with --unit a parameter of it, else as for cut; may be given again',
      collect,
    )
    .option('--language <TAG>', 'language of the drawings: en or de', oneOf(paperLanguages), 'en')
    .option('--lengths <UNIT>', 'print lengths in mm, inches or inches-32', oneOf(lengthUnits), 'mm')
    .option('--json', 'print one JSON document instead of the list of files')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--replace', 'write over drawings that were changed by hand')
    .addHelpText('after', more)
    .action(async (order: string | undefined, options: DrawOptions, command: Command) => {
      if (order === undefined && options.unit === undefined && !options.allUnits) {
        command.error('error: give an order, or a unit with --unit, or --all-units');
      }
      if (options.unit !== undefined && options.allUnits) {
        command.error('error: --unit draws one unit and --all-units all of them: give one of the two');
      }
      if (options.set !== undefined && options.unit === undefined && order === undefined) {
        command.error('error: --set belongs to an order or a unit: give one as well');
      }
      const wrong = options.set?.find((text) => !isSetting(text, options.unit !== undefined));
      if (wrong !== undefined) {
        const wanted =
          options.unit === undefined ? SETTING_EXPECTED : 'a name and a value, as in --set width=700';
        command.error(`error: --set wants ${wanted}; found: ${wrong}`);
      }
      const { draw } = await import('../printing/draw.ts');
      await draw(order, options);
    });
}
