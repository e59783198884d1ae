/** A sheet to start from: what decides most, each unknown until it is known. */
export function blankSheet(name: string): string {
  return `schemaVersion: 1
name: ${JSON.stringify(name)}
shortBlock:
  configuration: unknown
  cylinders: unknown
  bore: unknown
  stroke: unknown
  compressionRatio: unknown
cam:
  profile: unknown
intake:
  manifold: unknown
fuel:
  name: unknown
`;
}

/** The same sheet under another name. */
export function renamedSheet(sheetText: string, name: string): string {
  return sheetText.replace(/^name:.*$/m, () => `name: ${JSON.stringify(name)}`);
}
