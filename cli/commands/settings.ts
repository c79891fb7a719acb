import { type Command, InvalidArgumentError } from 'commander';
import { partsOfSetting, SETTING_EXPECTED } from '../../src/basics/settingText.ts';

/** What is to be otherwise than in the order, as written. */
export interface SettingOptions {
  readonly set?: readonly string[];
}

function setting(text: string, earlier: readonly string[] = []): readonly string[] {
  if (partsOfSetting(text) === undefined) {
    throw new InvalidArgumentError(`It must be ${SETTING_EXPECTED}.`);
  }
  return [...earlier, text];
}

/** Adds `--set`, which tries an order with something otherwise. */
export function withSettings(command: Command): Command {
  return command.option(
    '--set <NAME=VALUE>',
    "try it otherwise: a choice, UNIT.PARAMETER, or a role's finish; may be given again",
    setting,
  );
}

/** What the help of a command says of `--set`. */
export const settingsInWords = `
--set tries the order with something otherwise and leaves its file alone, as in
--set bed_width=1300, --set 'base cupboard.width=400' or
--set front.finish=slate.
It is then another order, called after this one with -what-if.`;
