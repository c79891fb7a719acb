import type { Checked } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import { readLibraryTexts } from '../../src/pipeline/prepareOrder.ts';
import { diskReader } from './reader.ts';

/** Reads and checks the library in a folder. */
export async function loadLibrary(folder: string): Promise<Checked<Library>> {
  const texts = await diskReader.library(folder);
  return texts.ok ? readLibraryTexts(texts.value, folder) : texts;
}
