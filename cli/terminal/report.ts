import type { Finding } from '../../src/model/finding.ts';
import { type ExitCode, exitCodes } from '../exitCodes.ts';
import { fileCodes } from '../files/reader.ts';
import { coloursFor, describeFindings } from './findings.ts';
import { endWith, jsonText, print, printError } from './output.ts';

/** The exit code that findings call for: files that cannot be read or written come before what stands in them. */
export function exitCodeFor(findings: readonly Finding[]): ExitCode {
  const errors = findings.filter((finding) => finding.severity === 'error');
  if (errors.length === 0) return exitCodes.done;
  return errors.some((error) => fileCodes.has(error.code))
    ? exitCodes.cannotReadOrWrite
    : exitCodes.wrongInput;
}

/**
 * Says what stopped the command on standard error and sets the exit code. With `json` standard output gets one document
 * that says the same.
 */
export async function reportFindings(
  findings: readonly Finding[],
  how: { readonly json?: true },
  code: ExitCode = exitCodeFor(findings),
): Promise<void> {
  if (how.json) await print(jsonText({ ok: false, exitCode: code, groups: [], findings }));
  await printError(`${describeFindings(findings, coloursFor(process.stderr))}`);
  endWith(code);
}
