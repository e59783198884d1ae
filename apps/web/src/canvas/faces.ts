import { FACES, FONT_FILES } from '@pullbook/charts';

/**
 * Waits until the faces that pictures are set in can be painted with. A canvas asked too early would paint another face and
 * never mend it. A page has them from its stylesheet; a worker has none and loads them.
 */
export async function facesReady(fonts: FontFaceSet, areDeclared: boolean): Promise<void> {
  await Promise.all(
    FACES.map(async (face) => {
      const { family, weight, url } = FONT_FILES[face];
      if (areDeclared) await fonts.load(`${weight} 16px "${family}"`);
      else fonts.add(await new FontFace(family, `url("${url.href}")`, { weight: String(weight) }).load());
    }),
  );
}
