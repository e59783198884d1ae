/** Field names as words: `fieldWords(['chamberVolume', 'gasketBore'])` is `chamber volume and gasket bore`. */
export function fieldWords(fields: readonly string[]): string {
  const names = fields.map((field) => field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  return names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : (names[0] ?? '');
}
