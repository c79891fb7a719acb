/**
 * Lower case, letters and digits of any script kept, all else to single hyphens; at most 60 characters. Accents go,
 * so that the name survives any file system.
 */
function fileSafe(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
  const joined = plain.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  return [...joined].slice(0, 60).join('').replace(/-+$/, '');
}

/** What a board is called of which a list says nothing at all. */
const NAMELESS = 'board';

function wantedName(base: string, shared: boolean, thicknessUm: number): string {
  // A plain list may leave the thickness out; 0 mm would say something that is not so.
  if (thicknessUm === 0) return base === '' ? NAMELESS : base;
  // 6.5 mm must not read like 65 mm.
  const thickness = `${String(thicknessUm / 1000).replace('.', '_')}-mm`;
  if (base === '') return thickness;
  return shared ? `${base}-${thickness}` : base;
}

/**
 * One id per group, in order: board and finish joined, the thickness added where they do not tell groups apart, safe
 * as part of a file name on any system and unique whatever the case; `board` where a list states none of the three. Groups of the same parts get the same ids.
 */
export function nameGroups(
  groups: readonly { readonly board: string; readonly finish: string; readonly thicknessUm: number }[],
): string[] {
  const bare = groups.map((group) => fileSafe(`${group.board} ${group.finish}`));
  const taken = new Set<string>();
  return groups.map((group, index) => {
    const base = bare[index]!;
    const shared = bare.filter((other) => other === base).length > 1;
    const wanted = wantedName(base, shared, group.thicknessUm);
    let id = wanted;
    for (let again = 2; taken.has(id); again++) id = `${wanted}-${again}`;
    taken.add(id);
    return id;
  });
}
