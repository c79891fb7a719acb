import type { Checked, Finding } from '../model/finding.ts';
import type { TextFiles } from '../model/library.ts';

/** What kind of file is read; each has its own greatest size. */
export type ReadKind = 'order' | 'list' | 'plan';

/** Reads what a person wrote. Whatever stands in the way comes back as findings that name the file. */
export interface Reader {
  /** The text of one file, without a byte order mark. */
  text(path: string, kind: ReadKind): Promise<Checked<string>>;
  /** Every text of a library folder (a path without a final slash), by its path with the folder before it. */
  library(folder: string): Promise<Checked<TextFiles>>;
}

/** Papers of one job: text or bytes by path inside the job's folder, `/` between folders. */
export type Papers = ReadonlyMap<string, string | Uint8Array>;

/** What becomes of files in the job's folder that a person changed or put there since the papers were last written. */
export type ExistingFiles = 'keep edited' | 'replace edited';

/** The papers of one job with the folder that they go into. */
export interface FolderOfPapers {
  readonly folder: string;
  readonly papers: Papers;
}

/** Writes the papers of jobs, all of them or none. */
export interface Writer {
  /** What would stand in the way of writing papers into the folder, as far as can be told without them. */
  look(folder: string, existing: ExistingFiles): Promise<readonly Finding[]>;
  /** Findings are empty when every paper is in place; with any finding nothing was changed. */
  papers(folder: string, papers: Papers, existing: ExistingFiles): Promise<readonly Finding[]>;
  /** The same for several folders together: with any finding no folder was changed, or the finding says which is. */
  allPapers(folders: readonly FolderOfPapers[], existing: ExistingFiles): Promise<readonly Finding[]>;
}
