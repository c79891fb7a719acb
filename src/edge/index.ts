/**
 * What the program needs from the world around it, as types, and the loop of a nesting thread. Node's versions live in
 * `cli/`; a page in a browser can bring its own.
 */
export type { ExistingFiles, FolderOfPapers, Papers, Reader, ReadKind, Writer } from './files.ts';
export type { NestProgress, NestReply, NestRequest } from './nestMessages.ts';
